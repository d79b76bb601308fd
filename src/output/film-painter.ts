/**
 * A film and a look as a painter: where pictures meet files.
 */
import type { CanvasRenderingContext2D } from 'canvas';
import { digestOf, drawingAt } from '../picture/drawing.ts';
import { paint } from '../picture/paint.ts';
import type { Look } from '../scene/look.ts';
import { type Film, frameAt } from '../timeline/film.ts';
import type { Painter } from './painter.ts';

export function filmPainter(film: Film, look: Look): Painter {
  const drawing = (frame: number) => drawingAt(film, look, frameAt(frame));
  return {
    width: film.width,
    height: film.height,
    rate: film.rate,
    frameCount: film.frameCount,
    transparent: film.draw !== 'board',
    digestAt: (frame) => digestOf(drawing(frame)),
    paint: (context: CanvasRenderingContext2D, frame) => paint(context, film, look, drawing(frame)),
  };
}
