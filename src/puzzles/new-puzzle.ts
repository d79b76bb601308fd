/**
 * New puzzles by chance: a filled board from which givens are taken as long as the means that are asked for carry what
 * is left.
 *
 * Givens go in two passes over the board. In the first the easy part must still fill it, which is fast to ask; in the
 * second the hard arguments that are wanted may be needed, none more often than it is wanted. Most boards come to nothing,
 * and the next is begun: each takes its own branch of the chance, so that the n-th board of a seed is always the same.
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
  /** The hard arguments, by canonical name; one that is wanted twice stands twice. None: the easy part fills the board. */
  readonly needs: readonly ArgumentName[];
  /** Whether locked candidates belong to the easy part, beside singles. */
  readonly locked: boolean;
  readonly symmetry: Symmetry;
  /** Whether no given may be left out without a second solution coming up. */
  readonly minimal: boolean;
}

/** What the easy part takes beside singles, where locked candidates belong to it. */
export const lockedNames: readonly ArgumentName[] = ['pointing pair', 'pointing triple', 'claiming'];

/** The names of the hard arguments of the least plan; undefined where that is not known. */
export type LeastPlan = (givens: Givens) => readonly ArgumentName[] | undefined;

export type Attempt =
  | { readonly kind: 'found'; readonly givens: Givens; readonly solution: readonly Digit[] }
  /** The board did not come down to what is wanted. */
  | { readonly kind: 'passed by' }
  /** It did, but a plan of other arguments costs less. */
  | { readonly kind: 'less costly otherwise' };

/** One attempt a board, without end; which boards come, and what comes of them, is fixed by the chance. */
export function* attempts(wish: Wish, chance: Chance, leastPlan: LeastPlan): Generator<Attempt> {
  for (;;) yield attempt(wish, chance.branch(), leastPlan);
}

function attempt(wish: Wish, chance: Chance, leastPlan: LeastPlan): Attempt {
  const { grid, needs } = wish;
  const solution = filledBoard(grid, chance);
  const givens = takenAway(wish, solution, chance);
  if (givens === undefined) return { kind: 'passed by' };
  if (wish.minimal && !isMinimal(grid, givens)) return { kind: 'passed by' };
  if (needs.length > 0 && !sameNames(leastPlan(givens), needs)) return { kind: 'less costly otherwise' };
  return { kind: 'found', givens, solution };
}

/** What is given in the end; undefined where it does not take all that is needed. */
function takenAway(wish: Wish, solution: readonly Digit[], chance: Chance): Givens | undefined {
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
  const carriedOtherwise = !locked && !isOfLocked && isEasy(grid, givens, { locked: true });
  return sameNames(used, needs) && !carriedOtherwise ? givens : undefined;
}

/**
 * A puzzle with one solution of which no given can be left out (with `none`; else no two that lie together), whatever it
 * takes to solve it.
 */
export function anyPuzzle(grid: Grid, symmetry: Symmetry, chance: Chance): Givens {
  let givens: Givens = filledBoard(grid, chance);
  for (const cells of chance.shuffled(cellsTogether(grid, symmetry))) {
    const fewer = givens.map((given, cell) => (cells.some((each) => each === cell) ? undefined : given));
    if (hasOneSolution(grid, fewer)) givens = fewer;
  }
  return givens;
}

/** The next such puzzle that singles and locked candidates do not carry: what a planner is measured on. */
export function hardPuzzle(grid: Grid, symmetry: Symmetry, chance: Chance): Givens {
  for (;;) {
    const givens = anyPuzzle(grid, symmetry, chance.branch());
    if (!isEasy(grid, givens, { locked: true })) return givens;
  }
}

/** The givens as one symbol a cell, `.` where it is blank. */
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

/** Whether each name stands among the others as often at least. */
function isAmong(names: readonly ArgumentName[], others: readonly ArgumentName[]): boolean {
  return names.every((name) => count(names, name) <= count(others, name));
}

function sameNames(a: readonly ArgumentName[] | undefined, b: readonly ArgumentName[]): boolean {
  return a !== undefined && a.length === b.length && isAmong(a, b);
}

function count(names: readonly ArgumentName[], name: ArgumentName): number {
  return names.filter((each) => each === name).length;
}
