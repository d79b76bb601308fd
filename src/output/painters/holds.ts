/**
 * A film as holds: one picture each, and the number of frames for which it is on screen. A hold of one frame is motion.
 */
import type { Painter } from './painter.ts';

/** One picture on `count` frames, from frame `from` on. */
export interface Hold {
  readonly from: number;
  readonly count: number;
  /** Holds of equal digest show the same picture. */
  readonly digest: string;
}

/** The film's holds in order, without gaps; no two neighbours are the same picture. */
export function holdsOf(painter: Painter): Hold[] {
  const holds: { from: number; count: number; readonly digest: string }[] = [];
  for (const from of startsOf(painter)) {
    const digest = painter.digestAt(from);
    const last = holds.at(-1);
    if (last !== undefined) last.count = from - last.from;
    if (last === undefined || last.digest !== digest) holds.push({ from, count: 0, digest });
  }
  const last = holds.at(-1);
  if (last !== undefined) last.count = painter.frameCount - last.from;
  return holds;
}

function* startsOf({ changes, frameCount }: Painter): Generator<number> {
  if (changes === undefined) for (let frame = 0; frame < frameCount; frame++) yield frame;
  else for (const frame of changes) if (frame < frameCount) yield frame;
}
