/**
 * Which part of an overlay has to go over a recording: the part of the frame that is ever drawn on, and the spans in
 * which anything is drawn. Outside both, the recording passes unchanged, at almost no cost.
 */

import { holdsOf } from '../painters/holds.ts';
import type { Painter } from '../painters/painter.ts';
import type { FrameCanvas } from '../pixels/canvas.ts';
import type { Box } from '../pixels/regions.ts';

/** Frames `from` to `until`, `until` not included. */
interface Span {
  readonly from: number;
  readonly until: number;
}

export interface OverlayPlan {
  /** Undefined if no frame has anything on it. */
  readonly box: Box | undefined;
  /** In order, at least `leastGap` apart. Between them nothing is drawn. */
  readonly drawn: readonly Span[];
  /** The first frame of each picture that differs from the one before it. */
  readonly changes: readonly number[];
}

/** Spans closer than this, in frames, are merged: each costs a comparison on every frame. */
const leastGap = 12;
/** Motion is sampled at this interval, in frames; what it reaches in between is guessed, and checked by `isInside`. */
const sampleEvery = 15;

/** Examines every held picture, and samples those in motion. `canvas` must be of the painter's size, without a key. */
export function overlayPlan(painter: Painter, canvas: FrameCanvas): OverlayPlan {
  const boxes = new Map<string, Box | undefined>();
  let box: Box | undefined;
  const drawn: { from: number; until: number }[] = [];
  const holds = holdsOf(painter);
  let moved = 0;
  holds.forEach(({ from, count, digest }, index) => {
    const next = holds[index + 1];
    const until = from + count;
    const moves = count === 1;
    moved = moves ? moved + 1 : 0;
    const lastOfMotion = moves && next?.count !== 1;
    const look = !moves || lastOfMotion || moved % sampleEvery === 0;
    if (look && !boxes.has(digest)) {
      canvas.draw(painter, from);
      boxes.set(digest, inkBox(canvas.pixels(), painter.width, painter.height));
    }
    const found = boxes.get(digest);
    if (found !== undefined) box = box === undefined ? found : union(box, found);
    if (boxes.has(digest) && found === undefined) return;
    const before = drawn.at(-1);
    if (before !== undefined && from - before.until < leastGap) before.until = until;
    else drawn.push({ from, until });
  });
  return {
    box: box === undefined && drawn.length === 0 ? undefined : roomy(box, painter),
    drawn,
    changes: holds.map(({ from }) => from),
  };
}

/** The whole frame, for a film that draws where its plan did not expect it. */
export function wholeFrame({ width, height }: Painter): Box {
  return { left: 0, top: 0, width, height };
}

/** Whether nothing is drawn outside the box. `pixels`: four bytes each, alpha 0 where nothing is drawn. */
export function isInside(box: Box, pixels: Uint8Array, width: number, height: number): boolean {
  const row = width * 4;
  const bare = Buffer.alloc(row); // Compared with memcmp: this runs for every picture.
  const isBare = (from: number, until: number): boolean => {
    for (let at = from; at < until; at += row) {
      const end = Math.min(until, at + row);
      if (bare.compare(pixels, at, end, 0, end - at) !== 0) return false;
    }
    return true;
  };
  const [bottom, right] = [box.top + box.height, (box.left + box.width) * 4];
  if (!isBare(0, box.top * row) || !isBare(bottom * row, height * row)) return false;
  for (let y = box.top; y < bottom; y++) {
    if (!isBare(y * row, y * row + box.left * 4) || !isBare(y * row + right, (y + 1) * row)) return false;
  }
  return true;
}

/** The smallest box around everything drawn; undefined if nothing is. Not yet even. */
function inkBox(pixels: Uint8Array, width: number, height: number): Box | undefined {
  const words = new Uint32Array(pixels.buffer, pixels.byteOffset, width * height);
  let [left, right, top, bottom] = [width, -1, -1, -1];
  for (let y = 0; y < height; y++) {
    const [start, end] = [y * width, (y + 1) * width];
    let first = start;
    while (first < end && words[first] === 0) first++;
    if (first === end) continue;
    let last = end - 1;
    while (words[last] === 0) last--;
    left = Math.min(left, first - start);
    right = Math.max(right, last - start);
    if (top < 0) top = y;
    bottom = y;
  }
  return top < 0 ? undefined : { left, top, width: right - left + 1, height: bottom - top + 1 };
}

function union(a: Box, b: Box): Box {
  const [left, top] = [Math.min(a.left, b.left), Math.min(a.top, b.top)];
  const right = Math.max(a.left + a.width, b.left + b.width);
  const bottom = Math.max(a.top + a.height, b.top + b.height);
  return { left, top, width: right - left, height: bottom - top };
}

/** With a margin for what moves between the samples, in even pixels, within the frame. */
function roomy(box: Box | undefined, painter: Painter): Box {
  if (box === undefined) return wholeFrame(painter);
  const margin = Math.ceil(painter.height / 100);
  const even = (value: number): number => 2 * Math.floor(value / 2);
  const left = even(Math.max(0, box.left - margin));
  const top = even(Math.max(0, box.top - margin));
  const right = Math.min(painter.width, box.left + box.width + margin + 1);
  const bottom = Math.min(painter.height, box.top + box.height + margin + 1);
  return { left, top, width: 2 * Math.ceil((right - left) / 2), height: 2 * Math.ceil((bottom - top) / 2) };
}
