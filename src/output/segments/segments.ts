/**
 * A film cut into segments: pieces that are drawn and encoded separately, in any order and by any worker, and joined
 * without re-encoding. Where the cuts are depends only on the pictures there, so a change in one step leaves the
 * segments of all others unchanged.
 */
import { createHash } from 'node:crypto';
import type { Hold } from '../painters/holds.ts';

/** Frames in which something moves, then one held picture. */
export interface Segment {
  /** Of everything that decides its bytes: the pictures and the recipe, but not how long the last one is held. */
  readonly digest: string;
  /** Its first frame, and how many it has. */
  readonly from: number;
  readonly frameCount: number;
  /** Frames of the film to be encoded one after the other; a repeated frame is a picture held briefly. */
  readonly moving: readonly number[];
  /** The held picture at the end, and for how many frames; undefined if the segment ends in motion. */
  readonly hold: { readonly frame: number; readonly count: number } | undefined;
  /** How many times the held picture is encoded. */
  readonly holdPictures: number;
}

/**
 * A hold of at least this many frames begins with a new keyframe, and the rest is not encoded. Shorter ones are
 * encoded: a keyframe costs about as much as this many unchanged frames.
 */
export const shortestHold = 8;

export interface Cut {
  /** The most pictures in motion in a segment, which limits the memory used. */
  readonly mostMoving: number;
  /** Everything except the pictures that decides the bytes: encoder, options, size, rate. */
  readonly recipe: string;
  readonly holdPictures: number;
}

/** The segments in order, without gaps. */
export function segmentsOf(holds: readonly Hold[], { mostMoving, recipe, holdPictures }: Cut): Segment[] {
  const segments: Segment[] = [];
  let moving: number[] = [];
  let digests: string[] = [];
  let from = 0;
  const close = (last: Hold | undefined): void => {
    const frameCount = moving.length + (last?.count ?? 0);
    if (frameCount === 0) return;
    const digest = createHash('sha256').update(
      JSON.stringify([recipe, digests, last === undefined ? null : last.digest]),
    );
    const hold = last === undefined ? undefined : { frame: last.from, count: last.count };
    segments.push({ digest: digest.digest('hex'), from, frameCount, moving, hold, holdPictures });
    from += frameCount;
    moving = [];
    digests = [];
  };
  for (const hold of holds) {
    if (hold.count >= shortestHold) {
      close(hold);
      continue;
    }
    for (let frame = 0; frame < hold.count; frame++) {
      moving.push(hold.from);
      digests.push(hold.digest);
    }
    if (moving.length >= mostMoving) close(undefined);
  }
  close(undefined);
  return segments;
}

/**
 * The pictures that a segment passes to its encoder, in order: those in motion, and the held one, which is usually
 * encoded once.
 */
export function picturesOf({ moving, hold, holdPictures }: Segment): readonly number[] {
  if (hold === undefined) return moving;
  return [...moving, ...Array.from({ length: holdPictures }, () => hold.frame)];
}
