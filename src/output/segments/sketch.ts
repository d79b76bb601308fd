/**
 * A picture in coarse: for every block of 8 x 8 pixels the mean of what is seen there. A decoded picture is recognised
 * by it although its encoder lost a little, and told from the picture before although only a stroke has grown.
 */
import type { PixelFormat } from '../pixels/frame-source.ts';

const side = 8;

/** Block means in rows from the top, levels of 255; with transparency a second layer of them follows. */
export type Sketch = Float32Array;

/** Of a picture as `format` stores it; four bytes a pixel lie at a multiple of four. */
export function sketchOf(bytes: Uint8Array, format: PixelFormat, width: number, height: number): Sketch {
  const columns = Math.ceil(width / side);
  const blocks = columns * Math.ceil(height / side);
  const area = width * height;
  switch (format) {
    case 'yuv420p':
      return planeOf(bytes, width, height, blocks, columns);
    case 'yuva420p': {
      const alphaStart = area + 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
      const sketch = new Float32Array(2 * blocks);
      for (let y = 0; y < height; y++) {
        const row = (y >> 3) * columns;
        for (let x = 0; x < width; x++) {
          const alpha = bytes[alphaStart + y * width + x]!;
          if (alpha === 0) continue;
          sketch[row + (x >> 3)]! += ((bytes[y * width + x]! - 16) * alpha) / 255;
          sketch[blocks + row + (x >> 3)]! += alpha;
        }
      }
      return means(sketch);
    }
    case 'opaque':
      return wordsOf(bytes, width, height, blocks, columns);
    case 'rgba': {
      const sketch = new Float32Array(2 * blocks);
      const words = new Uint32Array(bytes.buffer, bytes.byteOffset, area);
      for (let y = 0; y < height; y++) {
        const row = (y >> 3) * columns;
        for (let x = 0, pixel = y * width; x < width; x++, pixel++) {
          if (words[pixel] === 0) continue; // Most of an overlay is empty.
          const at = 4 * pixel;
          const alpha = bytes[at + 3]!;
          const colour = bytes[at]! + 2 * bytes[at + 1]! + bytes[at + 2]!;
          sketch[row + (x >> 3)]! += (colour * alpha) / (4 * 255);
          sketch[blocks + row + (x >> 3)]! += alpha;
        }
      }
      return means(sketch);
    }
    default:
      return format satisfies never;
  }
}

/** The commonest case, many times as fast as pixel by pixel: four at once, as two sums in each of two words. */
function planeOf(bytes: Uint8Array, width: number, height: number, blocks: number, columns: number): Sketch {
  const sketch = new Float32Array(blocks);
  const whole = width % side === 0 && bytes.byteOffset % 4 === 0 ? Math.floor(height / side) : 0;
  const words = new Int32Array(bytes.buffer, whole === 0 ? 0 : bytes.byteOffset, (whole * side * width) / 4);
  const stride = width / 4;
  for (let row = 0; row < whole; row++) {
    for (let column = 0; column < columns; column++) {
      let at = row * side * stride + 2 * column;
      let sums = 0; // Of 32 bytes each, which half a word holds.
      for (let line = 0; line < side; line++, at += stride) {
        const left = words[at]!;
        const right = words[at + 1]!;
        const even = ((left & 0xff00ff) + (right & 0xff00ff)) | 0;
        const odd = (((left >>> 8) & 0xff00ff) + ((right >>> 8) & 0xff00ff)) | 0;
        sums = (sums + even + odd) | 0;
      }
      sketch[row * columns + column] = (sums & 0xffff) + (sums >>> 16);
    }
  }
  for (let y = whole * side; y < height; y++) {
    const row = (y >> 3) * columns;
    for (let x = 0; x < width; x++) sketch[row + (x >> 3)]! += bytes[y * width + x]!;
  }
  return means(sketch);
}

/** Of pixels that are a machine word each: three colours in the low bytes, and one that says nothing (`canvasPixelFormat`). */
function wordsOf(bytes: Uint8Array, width: number, height: number, blocks: number, columns: number): Sketch {
  const sketch = new Float32Array(blocks);
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, width * height);
  for (let y = 0; y < height; y++) {
    const row = (y >> 3) * columns;
    for (let left = 0, at = y * width; left < width; left += side) {
      let outer = 0; // Two sums in one word: eight bytes take no more than its half.
      let middle = 0;
      for (const until = at + Math.min(side, width - left); at < until; at++) {
        const word = words[at]!;
        outer += word & 0xff00ff;
        middle += (word >>> 8) & 255;
      }
      sketch[row + (left >> 3)]! += ((outer & 0xffff) + (outer >>> 16) + 2 * middle) / 4;
    }
  }
  return means(sketch);
}

function means(sums: Float32Array): Sketch {
  return sums.map((sum) => sum / (side * side));
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
