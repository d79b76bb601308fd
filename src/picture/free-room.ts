/**
 * Free parts of the frame: beside a block, and beside the place that is kept for a face camera.
 */
import type { Film } from '../timeline/film.ts';
import type { Box } from './board-place.ts';
import { unitOf } from './safe-area.ts';

/** Which side of the block a strip lies on. */
export type Side = 'right' | 'left' | 'below' | 'above';
export type Strip = readonly [side: Side, box: Box];

/** The largest strips of `room` beside `block`, `gap` away from it. They may be empty. */
export function stripsBeside(room: Box, block: Box, gap: number): readonly Strip[] {
  return [
    ['right', { ...room, left: Math.max(room.left, Math.ceil(block.right) + gap) }],
    ['left', { ...room, right: Math.min(room.right, Math.floor(block.left) - gap) }],
    ['below', { ...room, top: Math.max(room.top, Math.ceil(block.bottom) + gap) }],
    ['above', { ...room, bottom: Math.min(room.bottom, Math.floor(block.top) - gap) }],
  ];
}

/** The best strip for words, once the camera's place is taken out of them; undefined where none will hold any. */
export function bestStrip(film: Film, strips: readonly Strip[], gap: number): Strip | undefined {
  const unit = unitOf(film);
  let best: Strip | undefined;
  let most = 0;
  for (const [side, strip] of strips) {
    for (const box of without(strip, cameraBox(film), gap)) {
      const value = worth(box, unit);
      if (value > most) [best, most] = [[side, box], value];
    }
  }
  return best;
}

/**
 * How good a room is for words, in square pixels of a frame whose shorter side is 1080: nothing for one too narrow or
 * too low for a line; else its area, a column wider than a line counting no further.
 */
export function worth(box: Box, unit: number): number {
  const [width, height] = [(box.right - box.left) / unit, (box.bottom - box.top) / unit];
  if (width < 240 || height < 90) return 0;
  return Math.min(width, 900) * height;
}

/** The place kept for a face camera. */
export function cameraBox({ camera }: Film): Box | undefined {
  if (camera === undefined) return undefined;
  const { left, top, width, height } = camera;
  return { left, top, right: left + width, bottom: top + height };
}

/** Whether two boxes share ground. */
export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** The box with so much more on each side. */
export function grown({ left, top, right, bottom }: Box, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** What is left of a room beside the hole: the room itself where they are `gap` apart. */
function without(room: Box, hole: Box | undefined, gap: number): Box[] {
  if (hole === undefined || !overlap(room, grown(hole, gap))) return [room];
  return stripsBeside(room, hole, gap).map(([, strip]) => strip);
}
