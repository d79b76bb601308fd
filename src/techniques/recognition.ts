/** How a recogniser answers, and how answers for several conclusions become one. */
import type { Conclusion } from '../grid/terms.ts';
import type { Recognition, Shape } from './technique.ts';

export const fits = { kind: 'fits' } as const;

/** It fits, except for this. */
export function loosely(warning: string): { readonly kind: 'loosely'; readonly warning: string } {
  return { kind: 'loosely', warning };
}

/** The worst answer over all conclusions of the shape: undefined if one of them has none. */
export function forEachConclusion(shape: Shape, answer: (conclusion: Conclusion) => Recognition): Recognition {
  return worstOf(shape.conclusions, answer);
}

/** The worst answer over all of these, asked in turn until one has none. */
export function worstOf<T>(all: readonly T[], answer: (each: T) => Recognition): Recognition {
  let worst: Recognition = fits;
  for (const each of all) {
    const recognition = answer(each);
    if (recognition === undefined) return undefined;
    if (worst.kind === 'fits') worst = recognition;
  }
  return worst;
}

/** The best answer over all of these, asked in turn until one fits. */
export function bestOf<T>(all: Iterable<T>, answer: (each: T) => Recognition): Recognition {
  let best: Recognition;
  for (const each of all) {
    const recognition = answer(each);
    if (recognition?.kind === 'fits') return recognition;
    best ??= recognition;
  }
  return best;
}
