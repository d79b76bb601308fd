/**
 * A film as stretches: one picture each, and for how many frames it stands.
 */
import type { Painter } from '../painters/painter.ts';

/** One picture on `count` frames, from frame `from` on. */
export interface Stretch {
  readonly from: number;
  readonly count: number;
  /** Stretches of equal digest show the same picture. */
  readonly digest: string;
}

/** The film's stretches in order, without gaps; no two neighbours are the same picture. */
export function stretchesOf(painter: Painter): Stretch[] {
  const stretches: { from: number; count: number; readonly digest: string }[] = [];
  for (const from of startsOf(painter)) {
    const digest = painter.digestAt(from);
    const last = stretches.at(-1);
    if (last !== undefined) last.count = from - last.from;
    if (last === undefined || last.digest !== digest) stretches.push({ from, count: 0, digest });
  }
  const last = stretches.at(-1);
  if (last !== undefined) last.count = painter.frameCount - last.from;
  return stretches;
}

/** How many different pictures there are. */
export function differentOf(stretches: readonly Stretch[]): number {
  return new Set(stretches.map(({ digest }) => digest)).size;
}

function* startsOf({ changes, frameCount }: Painter): Generator<number> {
  if (changes === undefined) for (let frame = 0; frame < frameCount; frame++) yield frame;
  else for (const frame of changes) if (frame < frameCount) yield frame;
}
