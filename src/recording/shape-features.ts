/**
 * A mark's shape as numbers: how strongly its outline runs in each of eight directions, in each part of a square into
 * which it is fitted.
 *
 * After N. Dalal and B. Triggs, "Histograms of oriented gradients for human detection", CVPR 2005, with directions told
 * apart by sign and shared among neighbours by projection, so that no angle need be computed.
 */
import type { InkMark } from './cell-ink.ts';

/** The mark is fitted into a square of `fitted` pixels, with `rim` around it. */
const fitted = 20;
const rim = 2;
export const rasterSide = fitted + 2 * rim;
const partSide = 4;
const partsAcross = rasterSide / partSide;
const directions = 8;
/** Besides the outlines: how much ink each part has, and how tall the mark is for its width. */
export const featureCount = partsAcross ** 2 * (directions + 1) + 1;

/** Cosine and sine of no, an eighth, a quarter of a turn, and so on. */
const half = Math.SQRT1_2;
const rays = [
  [1, 0],
  [half, half],
  [0, 1],
  [-half, half],
  [-1, 0],
  [-half, -half],
  [0, -1],
  [half, -half],
] as const;

/** The mark's coverage, fitted by its longer side and centred; row by row, 0 to 1. */
export function rasterOf({ left, top, right, bottom, coverage }: InkMark): Float32Array {
  const side = Math.sqrt(coverage.length);
  const longer = Math.max(right - left, bottom - top) * side;
  const step = longer / fitted;
  const [fromX, fromY] = [
    ((left + right) / 2) * side - (rasterSide / 2) * step,
    ((top + bottom) / 2) * side - (rasterSide / 2) * step,
  ];
  const raster = new Float32Array(rasterSide ** 2);
  const samples = step > 1 ? 2 : 1;
  for (let row = 0; row < rasterSide; row++) {
    for (let column = 0; column < rasterSide; column++) {
      let sum = 0;
      for (let part = 0; part < samples ** 2; part++) {
        const x = fromX + (column + ((part % samples) + 0.5) / samples) * step;
        const y = fromY + (row + (Math.floor(part / samples) + 0.5) / samples) * step;
        sum += between(coverage, side, x - 0.5, y - 0.5);
      }
      raster[row * rasterSide + column] = sum / samples ** 2;
    }
  }
  return raster;
}

/** Between the four nearest pixels; beyond the edges there is nothing. */
function between(coverage: Float32Array, side: number, x: number, y: number): number {
  const [column, row] = [Math.floor(x), Math.floor(y)];
  const [partX, partY] = [x - column, y - row];
  const at = (dx: number, dy: number) => {
    const [c, r] = [column + dx, row + dy];
    return c < 0 || r < 0 || c >= side || r >= side ? 0 : coverage[r * side + c]!;
  };
  const upper = at(0, 0) * (1 - partX) + at(1, 0) * partX;
  const lower = at(0, 1) * (1 - partX) + at(1, 1) * partX;
  return upper * (1 - partY) + lower * partY;
}

/** `featureCount` numbers, each from 0 to about 1. */
export function featuresOf(mark: InkMark): Float32Array {
  const raster = rasterOf(mark);
  const features = new Float32Array(featureCount);
  const inkFrom = partsAcross ** 2 * directions;
  for (let row = 0; row < rasterSide; row++) {
    for (let column = 0; column < rasterSide; column++) {
      const at = row * rasterSide + column;
      const [x, y] = [
        (column + 1 < rasterSide ? raster[at + 1]! : 0) - (column > 0 ? raster[at - 1]! : 0),
        (row + 1 < rasterSide ? raster[at + rasterSide]! : 0) - (row > 0 ? raster[at - rasterSide]! : 0),
      ];
      share(features, column, row, (part, weight) => {
        for (const [direction, [rayX, rayY]] of rays.entries()) {
          const along = x * rayX + y * rayY;
          if (along > 0) features[part * directions + direction]! += weight * along;
        }
        features[inkFrom + part]! += weight * raster[at]!;
      });
    }
  }
  normalise(features, 0, inkFrom, 4);
  for (let part = inkFrom; part < featureCount - 1; part++) features[part]! /= partSide ** 2;
  features[featureCount - 1] = Math.min(1, (mark.right - mark.left) / (mark.bottom - mark.top) / 2);
  return features;
}

/** Shares a pixel among the four nearest parts, so that a shift by a pixel changes little. */
function share(_: Float32Array, column: number, row: number, give: (part: number, weight: number) => void): void {
  const [x, y] = [(column + 0.5) / partSide - 0.5, (row + 0.5) / partSide - 0.5];
  const [left, top] = [Math.floor(x), Math.floor(y)];
  for (const [partX, weightX] of [
    [left, 1 - (x - left)],
    [left + 1, x - left],
  ] as const) {
    if (partX < 0 || partX >= partsAcross) continue;
    for (const [partY, weightY] of [
      [top, 1 - (y - top)],
      [top + 1, y - top],
    ] as const)
      if (partY >= 0 && partY < partsAcross) give(partY * partsAcross + partX, weightX * weightY);
  }
}

/** Brings features `from` to `to` (not included) to one length, `length`, whatever the blur. */
function normalise(features: Float32Array, from: number, to: number, length: number): void {
  let sum = 0;
  for (let index = from; index < to; index++) sum += features[index]! ** 2;
  const factor = length / Math.sqrt(sum + 1e-6);
  for (let index = from; index < to; index++) features[index]! *= factor;
}
