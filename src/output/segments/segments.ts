/**
 * A film cut into segments: pieces that are drawn and encoded each on its own, in any order and by any worker, and are
 * joined without being encoded again. Where the cuts lie follows from what is seen there alone, so that a change in
 * one step leaves the segments of all others as they were.
 */
import { createHash } from 'node:crypto';
import type { Stretch } from './stretches.ts';

/** Frames in which something moves, then one picture that stands. */
export interface Segment {
  /** Of all that decides its bytes: the pictures and the recipe, not for how long the last one stands. */
  readonly digest: string;
  /** Its first frame, and how many it has. */
  readonly from: number;
  readonly frameCount: number;
  /** Frames of the film to be encoded one after the other; a frame named twice is a picture that stands for a moment. */
  readonly moving: readonly number[];
  /** The picture that stands at the end, and for how many frames; undefined where the segment ends in motion. */
  readonly still: { readonly frame: number; readonly count: number } | undefined;
  /** How many times the picture that stands is encoded. */
  readonly stillPictures: number;
}

/**
 * A picture that stands for so many frames begins anew with a key picture, and the rest is not encoded. Shorter ones
 * are: a key picture costs about as much as this many frames without a change.
 */
export const shortestStill = 8;

export interface Cut {
  /** The most pictures that a segment may hold in motion: what is held in memory follows from it. */
  readonly mostMoving: number;
  /** Everything but the pictures that decides the bytes: encoder, options, size, rate. */
  readonly recipe: string;
  readonly stillPictures: number;
}

/** The segments in order, without gaps. */
export function segmentsOf(stretches: readonly Stretch[], { mostMoving, recipe, stillPictures }: Cut): Segment[] {
  const segments: Segment[] = [];
  let moving: number[] = [];
  let digests: string[] = [];
  let from = 0;
  const close = (still: Stretch | undefined): void => {
    const frameCount = moving.length + (still?.count ?? 0);
    if (frameCount === 0) return;
    const digest = createHash('sha256').update(
      JSON.stringify([recipe, digests, still === undefined ? null : still.digest]),
    );
    const stands = still === undefined ? undefined : { frame: still.from, count: still.count };
    segments.push({ digest: digest.digest('hex'), from, frameCount, moving, still: stands, stillPictures });
    from += frameCount;
    moving = [];
    digests = [];
  };
  for (const stretch of stretches) {
    if (stretch.count >= shortestStill) {
      close(stretch);
      continue;
    }
    for (let frame = 0; frame < stretch.count; frame++) {
      moving.push(stretch.from);
      digests.push(stretch.digest);
    }
    if (moving.length >= mostMoving) close(undefined);
  }
  close(undefined);
  return segments;
}

/** The pictures that a segment hands to its encoder, in order: those in motion, and the one that stands, which is usually encoded once. */
export function picturesOf({ moving, still, stillPictures }: Segment): readonly number[] {
  if (still === undefined) return moving;
  return [...moving, ...Array.from({ length: stillPictures }, () => still.frame)];
}
