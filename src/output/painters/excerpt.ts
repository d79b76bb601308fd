/**
 * A part of a film as a separate film.
 */
import type { Painter } from './painter.ts';

/** Frames `from` to `until` of the film, `until` not included; both within it. */
export function excerpt(painter: Painter, from: number, until: number): Painter {
  const changes = painter.changes?.flatMap((frame) => (frame > from && frame < until ? [frame - from] : []));
  return {
    ...painter,
    frameCount: until - from,
    ...(changes === undefined ? {} : { changes: until > from ? [0, ...changes] : [] }),
    digestAt: (frame) => painter.digestAt(from + frame),
    paint: (context, frame) => painter.paint(context, from + frame),
    draw: painter.draw === undefined ? undefined : (context, frame) => painter.draw?.(context, from + frame),
    painting: painter.painting === undefined ? undefined : { kind: 'excerpt', of: painter.painting, from, until },
  };
}
