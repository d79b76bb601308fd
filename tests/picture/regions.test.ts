/** Heavy lines run between regions of any shape and nowhere else; diagonals are drawn where they are houses. */
import { describe, expect, test } from 'vitest';
import { type BoardRule, type Grid, gridOf, gridWith } from '../../src/grid/grid.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { drawn } from './drawn.ts';
import { film } from './films.ts';

const drawing = 'aaabbb aaabbb ccddee ccddee ccddee ffffff'.replaceAll(' ', '');
const inPieces = (...rules: readonly BoardRule[]) =>
  gridWith({ regions: [...drawing].map((letter) => letter.charCodeAt(0) - 97), rules });

const cellPx = 100;
const sidePx = 6 * cellPx;

function onBoard(grid: Grid) {
  const shape = { kind: 'square', left: 0, top: 0, side: sidePx } as const;
  const board = [{ from: frameAt(0), shape }];
  return drawn({ ...film(), grid, board, width: sidePx, height: sidePx, standing: [] }, 0);
}

/** How many pixels wide the ink is that crosses from `[x, y]`, in cells, straight on for a fifth of a cell either way. */
function inkAcross(grid: Grid, x: number, y: number, direction: 'across' | 'down'): number {
  const picture = onBoard(grid);
  const ground = picture.at(0.5 * cellPx, 0.2 * cellPx).join();
  const steps = Array.from({ length: 41 }, (_, index) => index - 20);
  return steps.filter((step) => {
    const [left, top] = direction === 'across' ? [x * cellPx + step, y * cellPx] : [x * cellPx, y * cellPx + step];
    return picture.at(left, top).join() !== ground;
  }).length;
}

describe('lines between cells', () => {
  const ordinary = inkAcross(gridOf('2x3'), 3, 0.5, 'across');
  const thin = inkAcross(gridOf('2x3'), 2, 0.5, 'across');
  test('lines between boxes are heavier', () => expect(ordinary).toBeGreaterThan(thin));

  const rows: readonly (readonly [string, number, number, 'across' | 'down', number])[] = [
    ['between a and b', 3, 0.5, 'across', ordinary],
    ['within d, below the same place', 3, 3.5, 'across', thin],
    ['between c and d', 2, 3.5, 'across', ordinary],
    ['within a, above the same place', 2, 1.5, 'across', thin],
    ['within f', 2, 5.5, 'across', thin],
    ['between a and c', 0.5, 2, 'down', ordinary],
    ['between e and f', 5.5, 5, 'down', ordinary],
    ['within e', 5.5, 4, 'down', thin],
  ];
  test.each(rows)('%s', (_, x, y, direction, due) => {
    expect(inkAcross(inPieces(), x, y, direction)).toBe(due);
  });
});

test('diagonals through the middle of their cells, where the board has them', () => {
  expect(inkAcross(inPieces('diagonals'), 1.5, 1.5, 'across')).toBeGreaterThan(0);
  expect(inkAcross(inPieces('diagonals'), 4.5, 1.5, 'across')).toBeGreaterThan(0);
  expect(inkAcross(inPieces('diagonals'), 2.5, 1.5, 'across')).toBe(0);
  expect(inkAcross(inPieces(), 1.5, 1.5, 'across')).toBe(0);
});
