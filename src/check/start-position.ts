/**
 * The position in which a lesson on the puzzle begins.
 */
import { candidateAt } from '../grid/grid.ts';
import { begin, type Position, takeAsRead } from '../proof/kernel.ts';
import type { Puzzle } from '../scene/scene.ts';

/**
 * The givens, and what the scene takes as read. `oneSolution`: whether an argument may assume that the puzzle has one
 * solution.
 */
export function startPosition(
  { grid, givens, start }: Pick<Puzzle, 'grid' | 'givens' | 'start'>,
  oneSolution: boolean,
): Position {
  const placed = grid.cells.flatMap((cell) => {
    const digit = givens[cell];
    return digit === undefined ? [] : [candidateAt(grid, cell, digit)];
  });
  return start.map((located) => located.value).reduce(takeAsRead, begin(grid, placed, { oneSolution }));
}
