/**
 * The solutions of the puzzle. Used only after the kernel has decided, to distinguish `unproved` from `false`.
 */
import { type Candidates, difference, has, isEmpty, overlaps } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import { possibleFrom, solutionsOf } from '../grid/solutions.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Puzzle } from '../scene/scene.ts';

export interface Truth {
  readonly grid: Grid;
  /** Every candidate that no given sees. */
  readonly start: Candidates;
  /** At most two; if there is one, it is the solution. */
  readonly solutions: readonly Candidates[];
}

export function truthOf(puzzle: Puzzle): Truth {
  const start = possibleFrom(puzzle.grid, puzzle.givens);
  return { grid: puzzle.grid, start, solutions: solutionsOf(puzzle.grid, start, 2) };
}

/** Whether some solution of the puzzle contradicts the conclusion. */
export function isContradicted(truth: Truth, conclusion: Conclusion): boolean {
  const { grid, start, solutions } = truth;
  if (solutions.some((solution) => contradicts(solution, conclusion))) return true;
  if (solutions.length < 2) return false;
  if (conclusion.kind === 'impossible') {
    if (!has(start, conclusion.candidate)) return false;
    return solutionsOf(grid, difference(start, grid.conflicts[conclusion.candidate]!), 1).length > 0;
  }
  return solutionsOf(grid, difference(start, conclusion.candidates), 1).length > 0;
}

function contradicts(solution: Candidates, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible'
    ? has(solution, conclusion.candidate)
    : !isEmpty(conclusion.candidates) && !overlaps(solution, conclusion.candidates);
}
