/**
 * What may be concluded, and what may be called deadly, as types. Plain data; nothing here is proved.
 */

import type { Cell, Digit } from './board.ts';
import type { Candidate, Candidates } from './candidates.ts';

/** What may be concluded: `r1c7<>7` is impossible, `r8c4=8` is one-of one, `either 7r1c5 7r2c8` is one-of several. */
export type Conclusion =
  | { readonly kind: 'impossible'; readonly candidate: Candidate }
  | { readonly kind: 'one-of'; readonly candidates: Candidates };

/** Cells and the digits that they would share between them, as written after `deadly`. */
export interface PatternPart {
  readonly digits: readonly Digit[];
  readonly cells: readonly Cell[];
}

/** What stands after `deadly`: a pattern of cells, or the whole grid, with its extra candidates named or left to be found. */
export type Deadly =
  | { readonly kind: 'pattern'; readonly parts: readonly PatternPart[] }
  | { readonly kind: 'grid'; readonly without: Candidates | undefined };
