/**
 * A picture in coarse: for every block of 8 x 8 pixels the mean of what is seen there. A decoded picture is recognised
 * by it although its encoder lost a little, and told from the picture before although only a stroke has grown.
 */
import type { PixelFormat } from './frame-source.ts';

const side = 8;

/** Block means in rows from the top, levels of 255; with transparency a second layer of them follows. */
export type Sketch = Float32Array;

/** Of a picture as `format` stores it. */
export function sketchOf(bytes: Uint8Array, format: PixelFormat, width: number, height: number): Sketch {
  const columns = Math.ceil(width / side);
  const blocks = columns * Math.ceil(height / side);
  const area = width * height;
  switch (format) {
    case 'yuv420p':
      return planeOf(bytes, width, height, blocks, columns);
    case 'yuva420p': {
      const alphaStart = area + 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
      const seen = (pixel: number): number => ((bytes[pixel]! - 16) * bytes[alphaStart + pixel]!) / 255;
      return layersOf(width, height, blocks, columns, [seen, (pixel) => bytes[alphaStart + pixel]!]);
    }
    case 'rgba': {
      const seen = (pixel: number): number => {
        const alpha = bytes[4 * pixel + 3]!;
        if (alpha === 0) return 0;
        return ((bytes[4 * pixel]! + 2 * bytes[4 * pixel + 1]! + bytes[4 * pixel + 2]!) * alpha) / (4 * 255);
      };
      return layersOf(width, height, blocks, columns, [seen, (pixel) => bytes[4 * pixel + 3]!]);
    }
    case 'opaque':
      return layersOf(width, height, blocks, columns, [
        (pixel) => (bytes[4 * pixel]! + 2 * bytes[4 * pixel + 1]! + bytes[4 * pixel + 2]!) / 4,
      ]);
    default:
      return format satisfies never;
  }
}

/** The commonest case, and many times as fast as by a function for each pixel. */
function planeOf(bytes: Uint8Array, width: number, height: number, blocks: number, columns: number): Sketch {
  const sketch = new Float32Array(blocks);
  const full = width >> 3;
  for (let y = 0; y < height; y++) {
    const row = (y >> 3) * columns;
    let at = y * width;
    for (let column = 0; column < full; column++, at += side) {
      sketch[row + column]! +=
        bytes[at]! +
        bytes[at + 1]! +
        bytes[at + 2]! +
        bytes[at + 3]! +
        bytes[at + 4]! +
        bytes[at + 5]! +
        bytes[at + 6]! +
        bytes[at + 7]!;
    }
    for (let x = full * side; x < width; x++) sketch[row + full]! += bytes[at++]!;
  }
  return sketch.map((sum) => sum / (side * side));
}

function layersOf(
  width: number,
  height: number,
  blocks: number,
  columns: number,
  layers: readonly ((pixel: number) => number)[],
): Sketch {
  const sketch = new Float32Array(blocks * layers.length);
  layers.forEach((level, layer) => {
    for (let y = 0; y < height; y++) {
      const row = layer * blocks + Math.floor(y / side) * columns;
      for (let x = 0; x < width; x++) sketch[row + (x >> 3)]! += level(y * width + x) / (side * side);
    }
  });
  return sketch;
}

/** How far two pictures are from one another: the mean difference, and the largest of a block. */
export function distanceOf(a: Sketch, b: Sketch): { readonly mean: number; readonly most: number } {
  let sum = 0;
  let most = 0;
  for (let block = 0; block < a.length; block++) {
    const difference = Math.abs(a[block]! - b[block]!);
    sum += difference;
    if (difference > most) most = difference;
  }
  return { mean: a.length === 0 ? 0 : sum / a.length, most };
}

/**
 * Blocks that differ by less tell no picture from another, in levels of 255: where a fade ends, H.264 was measured to
 * leave a block up to 1.4 levels behind (320x180, two pictures 2 levels apart), and twice that can be mistaken.
 */
const told = 4;

/** Whether a picture is nearer to `own` than to `other`, judged where those two clearly differ. */
export function isNearerTo(picture: Sketch, own: Sketch, other: Sketch): boolean {
  let [toOwn, toOther] = [0, 0];
  for (let block = 0; block < picture.length; block++) {
    if (Math.abs(own[block]! - other[block]!) < told) continue;
    toOwn += Math.abs(picture[block]! - own[block]!);
    toOther += Math.abs(picture[block]! - other[block]!);
  }
  return toOwn <= toOther;
}
