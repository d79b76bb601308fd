/**
 * New random puzzles: a filled board from which givens are removed as long as the requested means solve what is left.
 *
 * Givens are removed in two passes over the board. In the first the easy part must still fill it, which is fast to
 * test; in the second the requested hard arguments may be needed, none more often than requested. Most boards fail, and
 * the next is tried: each has its own branch of the random numbers, so that the n-th board of a seed is always the
 * same.
 */

import type { Digit, Grid } from '../grid/grid.ts';
import { countSolutions, possibleFrom } from '../grid/solutions.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { Chance } from './chance.ts';
import { filledBoard } from './filled-board.ts';
import { type Givens, hardArguments, isEasy } from './hard-part.ts';
import { cellsTogether, type Symmetry } from './symmetry.ts';

export interface Wish {
  readonly grid: Grid;
  /**
   * The hard arguments, by canonical name; one that is required twice is listed twice. If empty, the easy part fills
   * the board.
   */
  readonly needs: readonly ArgumentName[];
  /** Whether locked candidates belong to the easy part, in addition to singles. */
  readonly locked: boolean;
  readonly symmetry: Symmetry;
  /** Whether no given may be left out without allowing a second solution. */
  readonly minimal: boolean;
}

/** What the easy part uses in addition to singles, if locked candidates belong to it. */
export const lockedNames: readonly ArgumentName[] = ['pointing pair', 'pointing triple', 'claiming'];

/** The names of the hard arguments of the least plan; undefined if that is not known. */
export type LeastPlan = (givens: Givens) => readonly ArgumentName[] | undefined;

export type Attempt =
  | { readonly kind: 'found'; readonly givens: Givens; readonly solution: readonly Digit[] }
  /** The board could not be reduced to what is required. */
  | { readonly kind: 'rejected' }
  /** It could, but a plan of other arguments costs less. */
  | { readonly kind: 'less costly otherwise' };

/** One attempt a board, endlessly; the boards, and the outcome of each, are fixed by the random numbers. */
export function* attempts(wish: Wish, chance: Chance, leastPlan: LeastPlan): Generator<Attempt> {
  for (;;) yield attempt(wish, chance.branch(), leastPlan);
}

function attempt(wish: Wish, chance: Chance, leastPlan: LeastPlan): Attempt {
  const { grid, needs } = wish;
  const solution = filledBoard(grid, chance);
  const givens = reducedGivens(wish, solution, chance);
  if (givens === undefined) return { kind: 'rejected' };
  if (wish.minimal && !isMinimal(grid, givens)) return { kind: 'rejected' };
  if (needs.length > 0 && !sameNames(leastPlan(givens), needs)) return { kind: 'less costly otherwise' };
  return { kind: 'found', givens, solution };
}

/** The remaining givens; undefined if not everything required is needed. */
function reducedGivens(wish: Wish, solution: readonly Digit[], chance: Chance): Givens | undefined {
  const { grid, needs, locked } = wish;
  const groups = cellsTogether(grid, wish.symmetry);
  const means = { names: [...new Set(needs)], locked };
  let givens: Givens = solution;
  let used: readonly ArgumentName[] = [];
  const without = (cells: readonly number[]) => givens.map((given, cell) => (cells.includes(cell) ? undefined : given));
  for (const cells of chance.shuffled(groups)) {
    if (isEasy(grid, without(cells), wish)) givens = without(cells);
  }
  if (needs.length === 0) return givens;
  for (const cells of chance.shuffled(groups.filter(([first]) => givens[first!] !== undefined))) {
    const needed = hardArguments(grid, without(cells), means);
    if (needed === undefined || !isAmong(needed, needs)) continue;
    givens = without(cells);
    used = needed;
  }
  const isOfLocked = needs.some((name) => lockedNames.includes(name));
  const isSolvedOtherwise = !locked && !isOfLocked && isEasy(grid, givens, { locked: true });
  return sameNames(used, needs) && !isSolvedOtherwise ? givens : undefined;
}

/**
 * A puzzle with one solution of which no given can be left out (with `none`; else no two that are paired), however hard
 * it is to solve.
 */
export function anyPuzzle(grid: Grid, symmetry: Symmetry, chance: Chance): Givens {
  let givens: Givens = filledBoard(grid, chance);
  for (const cells of chance.shuffled(cellsTogether(grid, symmetry))) {
    const fewer = givens.map((given, cell) => (cells.some((each) => each === cell) ? undefined : given));
    if (hasOneSolution(grid, fewer)) givens = fewer;
  }
  return givens;
}

/** The next such puzzle that singles and locked candidates do not solve: the benchmark of a planner. */
export function hardPuzzle(grid: Grid, symmetry: Symmetry, chance: Chance): Givens {
  for (;;) {
    const givens = anyPuzzle(grid, symmetry, chance.branch());
    if (!isEasy(grid, givens, { locked: true })) return givens;
  }
}

/** The givens as one symbol a cell, `.` for a blank one. */
export function printGivens(givens: Givens): string {
  return givens.map((given) => given ?? '.').join('');
}

function isMinimal(grid: Grid, givens: Givens): boolean {
  return grid.cells.every(
    (cell) =>
      givens[cell] === undefined ||
      !hasOneSolution(
        grid,
        givens.map((given, other) => (other === cell ? undefined : given)),
      ),
  );
}

function hasOneSolution(grid: Grid, givens: Givens): boolean {
  return countSolutions(grid, possibleFrom(grid, givens), 2) === 1;
}

/** Whether each name occurs among the others at least as often. */
function isAmong(names: readonly ArgumentName[], others: readonly ArgumentName[]): boolean {
  return names.every((name) => count(names, name) <= count(others, name));
}

function sameNames(a: readonly ArgumentName[] | undefined, b: readonly ArgumentName[]): boolean {
  return a !== undefined && a.length === b.length && isAmong(a, b);
}

function count(names: readonly ArgumentName[], name: ArgumentName): number {
  return names.filter((each) => each === name).length;
}
