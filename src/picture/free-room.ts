/**
 * Free parts of the frame: next to a block, and next to the place reserved for a face camera.
 */
import type { Film } from '../timeline/film.ts';
import type { Box } from './board-place.ts';
import { unitOf } from './safe-area.ts';

/** Which side of the block a strip is on. */
export type Side = 'right' | 'left' | 'below' | 'above';
export type Strip = readonly [side: Side, box: Box];

/** The largest strips of `room` next to `block`, `gap` away from it. They may be empty. */
export function stripsBeside(room: Box, block: Box, gap: number): readonly Strip[] {
  return [
    ['right', { ...room, left: Math.max(room.left, Math.ceil(block.right) + gap) }],
    ['left', { ...room, right: Math.min(room.right, Math.floor(block.left) - gap) }],
    ['below', { ...room, top: Math.max(room.top, Math.ceil(block.bottom) + gap) }],
    ['above', { ...room, bottom: Math.min(room.bottom, Math.floor(block.top) - gap) }],
  ];
}

/** The best strip for words, excluding the camera's place; undefined if none can hold any. */
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
 * How good a room is for words, in square pixels of a frame whose shorter side is 1080: zero for one too narrow or too
 * low for a line; otherwise its area, with widths beyond that of a line not counted.
 */
export function worth(box: Box, unit: number): number {
  const [width, height] = [(box.right - box.left) / unit, (box.bottom - box.top) / unit];
  if (width < 240 || height < 90) return 0;
  return Math.min(width, 900) * height;
}

/** The place reserved for a face camera. */
export function cameraBox({ camera }: Film): Box | undefined {
  if (camera === undefined) return undefined;
  const { left, top, width, height } = camera;
  return { left, top, right: left + width, bottom: top + height };
}

/** Whether two boxes overlap. */
export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** The box grown by this much on each side. */
export function grown({ left, top, right, bottom }: Box, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** What is left of a room beside the hole: the room itself if they are `gap` apart. */
function without(room: Box, hole: Box | undefined, gap: number): Box[] {
  if (hole === undefined || !overlap(room, grown(hole, gap))) return [room];
  return stripsBeside(room, hole, gap).map(([, strip]) => strip);
}
