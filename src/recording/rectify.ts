/**
 * The board as if seen straight on: its picture sampled into an upright square.
 */
import type { Point } from '../scene/scene.ts';
import { boardToPicture, type Corners, distance } from './corners.ts';
import { type Homography, mapped } from './homography.ts';
import { type GreyPicture, levelAt, type RgbPicture } from './picture.ts';

/** What lies within the corners, as a square of `side` x `side` pixels. Where it is made smaller, levels are averaged. */
export function rectified(picture: GreyPicture, corners: Corners, side: number): GreyPicture {
  return sampled(picture, boardToPicture(corners, side), side, side, finenessOf(corners, side));
}

/** The same in colour. */
export function rectifiedRgb(picture: RgbPicture, corners: Corners, side: number): RgbPicture {
  const map = boardToPicture(corners, side);
  const fineness = finenessOf(corners, side);
  const rgb = new Uint8Array(3 * side * side);
  const { width, height } = picture;
  for (let channel = 0; channel < 3; channel++) {
    const levels = new Uint8Array(width * height);
    for (let pixel = 0; pixel < levels.length; pixel++) levels[pixel] = picture.rgb[3 * pixel + channel]!;
    const one = sampled({ width, height, levels }, map, side, side, fineness);
    for (let pixel = 0; pixel < one.levels.length; pixel++) rgb[3 * pixel + channel] = one.levels[pixel]!;
  }
  return { width: side, height: side, rgb };
}

/**
 * The picture of `width` x `height` whose point p shows what the source has at `toSource(p)`; each pixel is the mean of
 * `fineness` x `fineness` samples.
 */
export function sampled(
  source: GreyPicture,
  toSource: Homography,
  width: number,
  height: number,
  fineness: number,
): GreyPicture {
  const levels = new Uint8Array(width * height);
  const parts = Array.from({ length: fineness }, (_, index) => (index + 0.5) / fineness);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      let sum = 0;
      for (const partY of parts) {
        for (const partX of parts) {
          const [x, y] = mapped(toSource, [column + partX, row + partY]);
          sum += levelAt(source, x, y);
        }
      }
      levels[row * width + column] = Math.round(sum / (fineness * fineness));
    }
  }
  return { width, height, levels };
}

/** Samples along a pixel's side, so that no pixel of the source is passed over; 8 at most. */
function finenessOf(corners: Corners, side: number): number {
  const sides = corners.map((corner: Point, index) => distance(corner, corners[(index + 1) % 4]!));
  return Math.min(8, Math.max(1, Math.ceil(Math.max(...sides) / side - 0.25)));
}
