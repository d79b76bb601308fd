/**
 * A coarse picture: for every block of 8 x 8 pixels, the mean of its visible pixels. It identifies a decoded picture
 * although the encoder lost a little, and distinguishes it from the previous picture even if only a stroke has grown.
 */
import type { PixelFormat } from '../pixels/frame-source.ts';

const side = 8;

/** Block means in rows from the top, levels of 255; with transparency, a second layer of them follows. */
export type CoarsePicture = Float32Array;

/** Of a picture as `format` stores it; formats of four bytes per pixel are aligned to four. */
export function coarseOf(bytes: Uint8Array, format: PixelFormat, width: number, height: number): CoarsePicture {
  const columns = Math.ceil(width / side);
  const blocks = columns * Math.ceil(height / side);
  const area = width * height;
  switch (format) {
    case 'yuv420p':
      return planeOf(bytes, width, height, blocks, columns);
    case 'yuva420p': {
      const alphaStart = area + 2 * Math.ceil(width / 2) * Math.ceil(height / 2);
      const coarse = new Float32Array(2 * blocks);
      for (let y = 0; y < height; y++) {
        const row = (y >> 3) * columns;
        for (let x = 0; x < width; x++) {
          const alpha = bytes[alphaStart + y * width + x]!;
          if (alpha === 0) continue;
          coarse[row + (x >> 3)]! += ((bytes[y * width + x]! - 16) * alpha) / 255;
          coarse[blocks + row + (x >> 3)]! += alpha;
        }
      }
      return means(coarse);
    }
    case 'opaque':
      return opaqueOf(bytes, width, height, blocks, columns);
    case 'rgba': {
      const coarse = new Float32Array(2 * blocks);
      const words = new Uint32Array(bytes.buffer, bytes.byteOffset, area);
      for (let y = 0; y < height; y++) {
        const row = (y >> 3) * columns;
        for (let x = 0, pixel = y * width; x < width; x++, pixel++) {
          if (words[pixel] === 0) continue; // Most of an overlay is empty.
          const at = 4 * pixel;
          const alpha = bytes[at + 3]!;
          const colour = bytes[at]! + 2 * bytes[at + 1]! + bytes[at + 2]!;
          coarse[row + (x >> 3)]! += (colour * alpha) / (4 * 255);
          coarse[blocks + row + (x >> 3)]! += alpha;
        }
      }
      return means(coarse);
    }
    default:
      return format satisfies never;
  }
}

/**
 * The most common case, many times as fast as pixel by pixel: four pixels together, as two sums in each of two words.
 */
function planeOf(bytes: Uint8Array, width: number, height: number, blocks: number, columns: number): CoarsePicture {
  const coarse = new Float32Array(blocks);
  const whole = width % side === 0 && bytes.byteOffset % 4 === 0 ? Math.floor(height / side) : 0;
  const words = new Int32Array(bytes.buffer, whole === 0 ? 0 : bytes.byteOffset, (whole * side * width) / 4);
  const stride = width / 4;
  for (let row = 0; row < whole; row++) {
    for (let column = 0; column < columns; column++) {
      let at = row * side * stride + 2 * column;
      let sums = 0; // Of 32 bytes each, which fits into half a word.
      for (let line = 0; line < side; line++, at += stride) {
        const left = words[at]!;
        const right = words[at + 1]!;
        const even = ((left & 0xff00ff) + (right & 0xff00ff)) | 0;
        const odd = (((left >>> 8) & 0xff00ff) + ((right >>> 8) & 0xff00ff)) | 0;
        sums = (sums + even + odd) | 0;
      }
      coarse[row * columns + column] = (sums & 0xffff) + (sums >>> 16);
    }
  }
  for (let y = whole * side; y < height; y++) {
    const row = (y >> 3) * columns;
    for (let x = 0; x < width; x++) coarse[row + (x >> 3)]! += bytes[y * width + x]!;
  }
  return means(coarse);
}

/**
 * Of pixels that are a machine word each: three colours in the low bytes, and one unused byte (`canvasPixelFormat`).
 */
function opaqueOf(bytes: Uint8Array, width: number, height: number, blocks: number, columns: number): CoarsePicture {
  const coarse = new Float32Array(blocks);
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, width * height);
  for (let y = 0; y < height; y++) {
    const row = (y >> 3) * columns;
    for (let left = 0, at = y * width; left < width; left += side) {
      let outer = 0; // Two sums in one word: eight bytes fit into half of it.
      let middle = 0;
      for (const until = at + Math.min(side, width - left); at < until; at++) {
        const word = words[at]!;
        outer += word & 0xff00ff;
        middle += (word >>> 8) & 255;
      }
      coarse[row + (left >> 3)]! += ((outer & 0xffff) + (outer >>> 16) + 2 * middle) / 4;
    }
  }
  return means(coarse);
}

function means(sums: Float32Array): CoarsePicture {
  return sums.map((sum) => sum / (side * side));
}

/** How far apart two pictures are: the mean difference, and the largest of any block. */
export function distanceOf(a: CoarsePicture, b: CoarsePicture): { readonly mean: number; readonly most: number } {
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
 * Blocks that differ by less do not distinguish two pictures, in levels of 255: at the end of a fade, H.264 was
 * measured to leave a block up to 1.4 levels behind (320x180, two pictures 2 levels apart), and twice that can be
 * confused.
 */
const noticeable = 4;

/** Whether a picture is nearer to `own` than to `other`, judged by the blocks in which those two clearly differ. */
export function isNearerTo(picture: CoarsePicture, own: CoarsePicture, other: CoarsePicture): boolean {
  let [toOwn, toOther] = [0, 0];
  for (let block = 0; block < picture.length; block++) {
    if (Math.abs(own[block]! - other[block]!) < noticeable) continue;
    toOwn += Math.abs(picture[block]! - own[block]!);
    toOther += Math.abs(picture[block]! - other[block]!);
  }
  return toOwn <= toOther;
}
