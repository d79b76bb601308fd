/**
 * Reproducible chance for tests: a linear congruential generator (Numerical Recipes' constants, from memory).
 */
export interface Chance {
  /** A whole number from 0 to `below`, `below` not included. */
  readonly below: (below: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly shuffled: <T>(all: readonly T[]) => T[];
}

export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const below = (limit: number) => Math.floor(next() * limit);
  return {
    below,
    pick: (from) => from[below(from.length)]!,
    shuffled: (all) => {
      const mixed = [...all];
      for (let last = mixed.length - 1; last > 0; last--) {
        const other = below(last + 1);
        [mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!];
      }
      return mixed;
    },
  };
}
