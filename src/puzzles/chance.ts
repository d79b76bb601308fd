/**
 * Reproducible random numbers: the same seed gives the same numbers on every machine.
 *
 * The generator is the 32-bit xorshift with the shifts 13, 17, 5 of G. Marsaglia, "Xorshift RNGs", Journal of
 * Statistical Software 8(14), 2003. It is good enough to shuffle boards; nothing here is secret.
 */
export interface Chance {
  /** A whole number from 0 to `below`, `below` excluded. */
  readonly below: (below: number) => number;
  readonly pick: <T>(from: readonly T[]) => T;
  readonly shuffled: <T>(all: readonly T[]) => T[];
  /** An independent generator, seeded from this one's state: drawing from it does not advance this one. */
  readonly branch: () => Chance;
}

/** `seed`: any whole number; seeds that differ in their lower 32 bits give different sequences. */
export function chanceFrom(seed: number): Chance {
  let state = spread(seed);
  const next = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  const below = (limit: number) => Math.floor((next() / 2 ** 32) * limit);
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
    branch: () => chanceFrom(next()),
  };
}

/**
 * Neighbouring seeds start far apart: each is multiplied by 2^32 over the golden ratio (an odd number, so that no two
 * seeds coincide) and folded. The state must not be 0, which xorshift never leaves.
 */
function spread(seed: number): number {
  const mixed = Math.imul((seed | 0) + 1, 0x9e3779b1);
  return (mixed ^ (mixed >>> 15)) | 0 || 0x9e3779b1;
}
