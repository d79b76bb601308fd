/**
 * Puzzles with one solution for takes of any size.
 */
import { type BoxShape, type Digit, gridOf } from '../../../src/grid/grid.ts';
import { countSolutions, possibleFrom } from '../../../src/grid/solutions.ts';
import { chanceFrom } from '../../../src/puzzles/chance.ts';
import { filledBoard } from '../../../src/puzzles/filled-board.ts';

export interface TakePuzzle {
  readonly boxes: BoxShape;
  /** By cell; 0: blank. */
  readonly givens: readonly number[];
  readonly solution: readonly number[];
}

const shapes = { 4: '2x2', 6: '2x3', 9: '3x3' } as const;

/** Cells are blanked in a random order as long as one solution is left, down to about four in ten. */
export function puzzleFrom(seed: number, size: 4 | 6 | 9): TakePuzzle {
  const boxes = shapes[size];
  const grid = gridOf(boxes);
  const chance = chanceFrom(seed);
  const solution = filledBoard(grid, chance);
  const givens: (Digit | undefined)[] = [...solution];
  let left = givens.length;
  for (const cell of chance.shuffled(grid.cells)) {
    if (left <= 0.4 * givens.length) break;
    const digit = givens[cell];
    givens[cell] = undefined;
    if (countSolutions(grid, possibleFrom(grid, givens), 2) === 1) left -= 1;
    else givens[cell] = digit;
  }
  return { boxes, givens: givens.map((digit) => digit ?? 0), solution };
}
