import { describe, expect, it } from 'vitest';
import { givensSeen } from '../../src/recording/board-ink.ts';
import { boardsIn, isSure } from '../../src/recording/boards-in-picture.ts';
import { furthestApart, meanSide } from '../../src/recording/corners.ts';
import type { GreyPicture } from '../../src/recording/picture.ts';
import { greyPictureOf } from './take-pictures.ts';
import { takeFrom, type Wishes } from './takes/takes.ts';
import { cornersAt } from './takes/truth.ts';

const sizes = [9, 6, 8, 4];

/** Parts of a cell by which the first board lies off at its worst corner. */
function off(seed: number, wishes: Wishes): number {
  const take = takeFrom(seed, wishes);
  const [first] = boardsIn(greyPictureOf(take, 5), { sizes });
  expect(first).toMatchObject({ size: take.size });
  expect(isSure(first!)).toBe(true);
  return (furthestApart(first!.corners, cornersAt(take, 5)) / meanSide(first!.corners)) * take.size;
}

const frame = 'outside' as const;
const rows: readonly (readonly [what: string, wishes: Wishes])[] = [
  ['nine cells', { size: 9 }],
  ['six cells', { size: 6 }],
  ['four cells', { size: 4 }],
  ['a heavy frame outside the cells', { size: 9, look: { frame, frameCells: 0.2, gapCells: 0, boxLinePx: 6 } }],
  ['no frame', { size: 9, look: { frame: 'none', gapCells: 0 } }],
  ['round corners', { size: 9, look: { frame: 'on', roundCells: 0.3, gapCells: 0 } }],
  ['tiles', { size: 9, look: { frame: 'none', gapCells: 0.06, background: [90, 94, 99], cell: [238, 238, 236] } }],
  [
    'dark',
    { size: 9, look: { background: [14, 14, 16], cell: [28, 28, 32], line: [64, 64, 70], boxLine: [90, 90, 98] } },
  ],
  [
    'faint lines',
    { size: 9, look: { cell: [255, 255, 255], line: [236, 236, 236], boxLine: [224, 224, 224], linePx: 1 } },
  ],
  ['a second board and a pad', { size: 9, second: true, pad: true, webcam: true }],
  ['at an angle', { size: 9, isTilted: true }],
  ['at an angle, six cells', { size: 6, isTilted: true }],
];

describe('a board is found to a small part of a cell', () => {
  it.each(rows)('%s', (_, wishes) => {
    expect(off(3, wishes)).toBeLessThan(wishes.isTilted === true ? 0.08 : 0.02);
  });
});

describe('what is no board', () => {
  const empty: GreyPicture = { width: 640, height: 360, levels: new Uint8Array(640 * 360).fill(200) };

  it('a plain picture', () => {
    expect(boardsIn(empty, { sizes })).toEqual([]);
  });

  it('a pad of digits', () => {
    for (const seed of [2, 3]) {
      const take = takeFrom(seed, { size: 9, pad: true, second: false, webcam: false });
      const picture = greyPictureOf(take, 5);
      const { left, top, side } = take.board;
      const levels = picture.levels.map((level, pixel) => {
        const [x, y] = [pixel % picture.width, Math.floor(pixel / picture.width)];
        const isBoard = x > left - 30 && x < left + side + 30 && y > top - 20 && y < top + side + 20;
        return isBoard ? picture.levels[picture.width * picture.height - 1]! : level;
      });
      expect(boardsIn({ ...picture, levels }, { sizes }).filter(isSure)).toEqual([]);
    }
  });

  it('a part of a larger board', () => {
    const take = takeFrom(5, { size: 9, second: false });
    expect(boardsIn(greyPictureOf(take, 5), { sizes: [4, 6, 8] }).filter(isSure)).toEqual([]);
  });
});

describe('givens', () => {
  const take = takeFrom(8, { size: 9 });
  const picture = greyPictureOf(take, 5);
  const isGiven = take.givens.map((digit) => digit !== 0);

  it('are seen where the puzzle has them', () => {
    const seen = givensSeen(picture, 9, cornersAt(take, 5), isGiven);
    expect(seen).toMatchObject({ missing: [], filled: [], fits: true });
  });

  it('of another puzzle are not', () => {
    const other = takeFrom(9, { size: 9 }).givens.map((digit) => digit !== 0);
    expect(givensSeen(picture, 9, cornersAt(take, 5), other)).toMatchObject({ fits: false });
  });
});
