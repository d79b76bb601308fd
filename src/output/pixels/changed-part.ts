/**
 * From drawn pixels to yuva420p, converting only what changed since the previous picture: a growing link changes a
 * hundredth of the frame. The result equals a conversion of the whole.
 */

import { straightToPlanar } from './bt709.ts';
import { canvasOrder } from './canvas.ts';
import type { Box } from './regions.ts';
import { straighten } from './straight-alpha.ts';

export interface Converter {
  /**
   * The planes Y, Cb, Cr, A of the box's part of `pixels` (four bytes each in `canvasOrder`, colours multiplied by
   * alpha). Valid until the next call.
   */
  convert(pixels: Uint8Array): Buffer;
}

/** Colour is extended one block of 2x2 pixels beyond the visible edge (`bleed.ts`), and no further. */
const reach = 2;

/** For pictures with `width` pixels per row, of which `box` is wanted. */
export function boxConverter(box: Box, width: number): Converter {
  let last: Uint8Array | undefined;
  let planes: Buffer = Buffer.alloc(0);
  return {
    convert(pixels) {
      if (last === undefined) planes = planesOf(box, pixels, width);
      else {
        const changed = changedBox(box, last, pixels, width);
        if (changed !== undefined) {
          // What is within reach may change too, and converting that needs what is within its reach.
          const written = grown(changed, reach, box);
          const read = grown(written, reach, box);
          splice(planes, box, planesOf(read, pixels, width), read, written);
        }
      }
      last = pixels;
      return planes;
    },
  };
}

function planesOf(box: Box, pixels: Uint8Array, width: number): Buffer {
  return straightToPlanar(straighten(cropped(box, pixels, width), canvasOrder), box.width, box.height);
}

/** The box's part of `pixels`, which have four bytes each, `width` per row. */
function cropped(box: Box, pixels: Uint8Array, width: number): Uint8Array {
  const part = new Uint8Array(box.width * box.height * 4);
  for (let y = 0; y < box.height; y++) {
    const from = ((box.top + y) * width + box.left) * 4;
    part.set(pixels.subarray(from, from + box.width * 4), y * box.width * 4);
  }
  return part;
}

/** The even box within `box` outside which both pictures are the same; undefined if all of it is the same. */
function changedBox(box: Box, before: Uint8Array, after: Uint8Array, width: number): Box | undefined {
  const old = Buffer.from(before.buffer, before.byteOffset, before.byteLength);
  const [oldWords, newWords] = [wordsOf(before), wordsOf(after)];
  let [left, right, top, bottom] = [width, -1, -1, -1];
  for (let y = box.top; y < box.top + box.height; y++) {
    const start = y * width + box.left;
    const end = start + box.width;
    if (old.compare(after, start * 4, end * 4, start * 4, end * 4) === 0) continue;
    let first = start;
    while (oldWords[first] === newWords[first]) first++;
    let last = end - 1;
    while (oldWords[last] === newWords[last]) last--;
    left = Math.min(left, first - y * width);
    right = Math.max(right, last - y * width);
    if (top < 0) top = y;
    bottom = y;
  }
  if (top < 0) return undefined;
  const even = (value: number): number => 2 * Math.floor(value / 2);
  const [evenLeft, evenTop] = [even(left), even(top)];
  return { left: evenLeft, top: evenTop, width: even(right) + 2 - evenLeft, height: even(bottom) + 2 - evenTop };
}

function wordsOf(pixels: Uint8Array): Uint32Array {
  return new Uint32Array(pixels.buffer, pixels.byteOffset, pixels.byteLength / 4);
}

/** `box` grown by `by` pixels on each side, within `limit`. */
function grown(box: Box, by: number, limit: Box): Box {
  const left = Math.max(limit.left, box.left - by);
  const top = Math.max(limit.top, box.top - by);
  const right = Math.min(limit.left + limit.width, box.left + box.width + by);
  const bottom = Math.min(limit.top + limit.height, box.top + box.height + by);
  return { left, top, width: right - left, height: bottom - top };
}

/** Writes the `written` part of `part` (the planes of `partBox`) into `planes` (those of `box`). */
function splice(planes: Buffer, box: Box, part: Buffer, partBox: Box, written: Box): void {
  let [to, from] = [0, 0];
  for (const scale of [1, 2, 2, 1]) {
    const [rowTo, rowFrom] = [box.width / scale, partBox.width / scale];
    const length = written.width / scale;
    for (let y = 0; y < written.height / scale; y++) {
      const source = from + ((written.top - partBox.top) / scale + y) * rowFrom + (written.left - partBox.left) / scale;
      const target = to + ((written.top - box.top) / scale + y) * rowTo + (written.left - box.left) / scale;
      part.copy(planes, target, source, source + length);
    }
    to += rowTo * (box.height / scale);
    from += rowFrom * (partBox.height / scale);
  }
}
