/**
 * Pictures of a recording as arrays of levels.
 *
 * Points are in pixels of the picture as it is shown: x to the right, y downwards, (0, 0) the outer corner of the first
 * pixel, so that the middle of that pixel is (0.5, 0.5).
 */
import type { Point } from '../scene/scene.ts';

/** Row by row from the top left, one byte a pixel, 0 (black) to 255. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly levels: Uint8Array;
}

/** Row by row from the top left, three bytes a pixel: red, green, blue. */
export interface RgbPicture {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** One picture of a recording; `seconds`: from the recording's start to the moment at which it is first shown. */
export interface Shown<Picture> {
  readonly seconds: number;
  readonly picture: Picture;
}

/** The level at a point, between the four nearest pixels (bilinear); beyond the edge the level of the edge. */
export function levelAt({ width, height, levels }: GreyPicture, x: number, y: number): number {
  const [column, row] = [clamped(x - 0.5, width - 1), clamped(y - 0.5, height - 1)];
  const [left, top] = [Math.floor(column), Math.floor(row)];
  const [partX, partY] = [column - left, row - top];
  const first = top * width + left;
  const right = left + 1 < width ? 1 : 0;
  const below = top + 1 < height ? width : 0;
  const upper = levels[first]! * (1 - partX) + levels[first + right]! * partX;
  const lower = levels[first + below]! * (1 - partX) + levels[first + below + right]! * partX;
  return upper * (1 - partY) + lower * partY;
}

/** The luma of BT.709 (ITU-R BT.709-6, item 3.2), from levels as they are, in whole levels. */
export function greyOf({ width, height, rgb }: RgbPicture): GreyPicture {
  const levels = new Uint8Array(width * height);
  for (let pixel = 0; pixel < levels.length; pixel++) {
    const at = 3 * pixel;
    levels[pixel] = Math.round(0.2126 * rgb[at]! + 0.7152 * rgb[at + 1]! + 0.0722 * rgb[at + 2]!);
  }
  return { width, height, levels };
}

/** Whether a point lies on the picture, edges included. */
export function isOn({ width, height }: { readonly width: number; readonly height: number }, [x, y]: Point): boolean {
  return x >= 0 && y >= 0 && x <= width && y <= height;
}

function clamped(value: number, most: number): number {
  return Math.max(0, Math.min(value, most));
}
