import { expect, it } from 'vitest';
import { type Corners, uprightCorners } from '../../src/recording/corners.ts';
import { type GreyPicture, greyOf, levelAt } from '../../src/recording/picture.ts';
import { rectified, rectifiedRgb } from '../../src/recording/rectify.ts';

/** A picture in which each level says where it stands: 2 x + 3 y at the middle of a pixel. */
function slope(width: number, height: number): GreyPicture {
  const levels = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) levels[y * width + x] = 2 * (x + 0.5) + 3 * (y + 0.5) - 0.5;
  return { width, height, levels };
}

it('a level between pixels lies between theirs, and beyond the edge it is the edge', () => {
  const picture = slope(20, 20);
  expect(levelAt(picture, 4.5, 6.5)).toBe(28);
  expect(levelAt(picture, 5, 6.5)).toBe(29);
  expect(levelAt(picture, 5, 7)).toBe(30.5);
  expect(levelAt(picture, -3, 0.5)).toBe(2);
  expect(levelAt(picture, 25, 19.5)).toBe(97);
});

it('a part of a picture, pixel by pixel', () => {
  const part = rectified(slope(30, 30), uprightCorners(4, 2, 10, 10), 10);
  expect([...part.levels.slice(0, 3)]).toEqual([16, 18, 20]);
  expect(part.levels[10]).toBe(19);
});

it('made smaller, a pixel is the mean of what it stands for', () => {
  const levels = new Uint8Array(64).map((_, index) => (index % 2 === 0 ? 0 : 200));
  const half = rectified({ width: 8, height: 8, levels }, uprightCorners(0, 0, 8, 8), 4);
  expect(new Set(half.levels)).toEqual(new Set([100]));
});

it('a board seen at an angle comes out upright', () => {
  const corners: Corners = [
    [8, 4],
    [33, 6],
    [38, 37],
    [3, 34],
  ];
  const { levels } = rectified(slope(44, 44), corners, 40);
  const seen = [levels[0]!, levels[39]!, levels[40 * 40 - 1]!, levels[39 * 40]!];
  for (const [index, [x, y]] of corners.entries()) expect(Math.abs(seen[index]! - (2 * x + 3 * y))).toBeLessThan(4);
});

it('colours are sampled as greys are', () => {
  const grey = slope(30, 30);
  const rgb = new Uint8Array(3 * 900).map((_, index) => grey.levels[Math.floor(index / 3)]!);
  const picture = { width: 30, height: 30, rgb };
  expect(greyOf(picture).levels).toEqual(grey.levels);
  const corners = uprightCorners(3, 3, 20, 20);
  expect(greyOf(rectifiedRgb(picture, corners, 12)).levels).toEqual(rectified(grey, corners, 12).levels);
});
