/**
 * A film and a look as a painter: where pictures meet files.
 */
import { type Drawing, digestOf, drawingAt } from '../picture/drawing.ts';
import { paint } from '../picture/paint.ts';
import { type Run, runsOf } from '../picture/runs.ts';
import type { Look } from '../scene/look.ts';
import { type Film, frameAt } from '../timeline/film.ts';
import type { Painter } from './painter.ts';

/** The film as it is drawn in that look. */
export function filmPainter(film: Film, look: Look): Painter {
  // A frame is asked for its digest and then painted: the drawing last made serves both.
  let last: { readonly frame: number; readonly drawing: Drawing; readonly digest: string } | undefined;
  const lastAt = (frame: number) => {
    if (last?.frame === frame) return last;
    const drawing = drawingAt(film, look, frameAt(frame));
    last = { frame, drawing, digest: digestOf(drawing) };
    return last;
  };
  return {
    width: film.width,
    height: film.height,
    rate: film.rate,
    frameCount: film.frameCount,
    changes: runsOf(film, look).flatMap(framesThatBegin),
    transparent: film.draw !== 'board',
    digestAt: (frame) => lastAt(frame).digest,
    paint: (context, frame) => paint(context, film, look, lastAt(frame).drawing),
  };
}

function framesThatBegin({ from, until, kind }: Run): readonly number[] {
  return kind === 'still' ? [from] : Array.from({ length: until - from }, (_, index) => from + index);
}
