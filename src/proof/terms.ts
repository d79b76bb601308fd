/**
 * What the kernel deals in, as types: they are gone before anything runs. `kernel.ts` alone makes the values, freezes
 * them, and knows them again.
 */
import type { Candidate, Candidates } from '../grid/candidates.ts';
import type { Conclusion, Deadly } from '../grid/conclusion.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';

declare const made: unique symbol; // not exported: nobody can write one of these down

/** What the kernel fills in before it calls the thing its own. */
export type Made<Kind> = Omit<Kind, typeof made>;

/** What must hold for a position or a proof to be right. */
export interface Assumptions {
  readonly assumesOneSolution: boolean;
  /** What entered without proof, in order. */
  readonly takenAsRead: readonly Conclusion[];
}

export interface Position extends Assumptions {
  readonly [made]: true;
  readonly grid: Grid;
  /** The candidates still possible, the placed ones among them. */
  readonly possible: Candidates;
  readonly placed: Candidates;
  readonly givens: Candidates;
  /** Those that would still be possible if nothing had assumed that the puzzle has one solution. */
  readonly goneByOneSolution: Candidates;
  /** Whether an argument may assume that the puzzle has one solution. */
  readonly mayAssumeOneSolution: boolean;
}

export type SetSource =
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'places'; readonly digit: Digit; readonly house: HouseShape }
  | { readonly kind: 'guardians'; readonly deadly: Deadly }
  | { readonly kind: 'either'; readonly candidates: Candidates };

/** At least one of `members` is true in every solution that the position allows. */
export interface OneOf {
  readonly [made]: Position;
  readonly members: Candidates;
  readonly source: SetSource;
  /** Whether its promise assumes one solution by itself, whatever its position assumes. */
  readonly assumesOneSolution: boolean;
}

/** The conclusion is true in every solution that the position allows in which it was proved. */
export interface Proof extends Assumptions {
  readonly [made]: Position;
  readonly conclusion: Conclusion;
}

/** What a deadly pattern is judged by. */
export type Board = Pick<Position, 'grid' | 'possible' | 'placed' | 'givens'>;

/** Names the extra candidates of a whole grid, or says why there are none. Whoever does need not be trusted. */
export type FindExtras = (
  board: Board,
  named: Candidates | undefined,
) => { readonly extras: Candidates } | { readonly refused: string };

export type Guardians = { readonly members: Candidates } | { readonly refused: string };

export type Outcome =
  | { readonly kind: 'proved'; readonly proof: Proof; readonly cases: number }
  /** Nothing to conclude: the candidate is gone already, or one of them stands on the board. */
  | { readonly kind: 'spent' }
  /** The choice that escaped: one from every set, free of conflicts, and at odds with the conclusion. */
  | { readonly kind: 'not-shown'; readonly counterexample: readonly Candidate[]; readonly cases: number }
  | { readonly kind: 'too-large' };
