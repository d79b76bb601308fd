/**
 * A film and a look as a painter: the link between pictures and files.
 */
import { createHash } from 'node:crypto';
import { contentsOf } from '../../frames/content.ts';
import { drawingAt } from '../../frames/drawing.ts';
import { paint } from '../../frames/paint.ts';
import { type Run, runsOf } from '../../frames/runs.ts';
import type { Drawing } from '../../picture/ink.ts';
import type { Look } from '../../scene/look.ts';
import { type Film, frameAt } from '../../timeline/film.ts';
import type { Painter } from './painter.ts';

/** The film, drawn in that look. */
export function filmPainter(film: Film, look: Look): Painter {
  // A frame's digest is requested and then it is painted: the last drawing serves both.
  let last: { readonly frame: number; readonly drawing: Drawing } | undefined;
  const drawingOf = (frame: number): Drawing => {
    if (last?.frame !== frame) last = { frame, drawing: drawingAt(film, look, frameAt(frame)) };
    return last.drawing;
  };
  const contents = contentsOf(film, look);
  const common = createHash('sha256').update(contents.common).digest();
  let changes: readonly number[] | undefined;
  return {
    width: film.width,
    height: film.height,
    rate: film.rate,
    frameCount: film.frameCount,
    get changes() {
      changes ??= runsOf(film, look).flatMap(framesThatBegin);
      return changes;
    },
    transparent: film.draw !== 'board',
    digestAt: (frame) =>
      createHash('sha256')
        .update(common)
        .update(contents.of(drawingOf(frame)))
        .digest('base64url'),
    paint: (context, frame) => paint(context, film, look, drawingOf(frame)),
    draw: (context, frame) => paint(context, film, look, drawingOf(frame)),
    painting: { kind: 'film', film, look },
  };
}

function framesThatBegin({ from, until, kind }: Run): readonly number[] {
  return kind === 'still' ? [from] : Array.from({ length: until - from }, (_, index) => from + index);
}
