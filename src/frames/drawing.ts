/**
 * What is on screen at a frame, and how far each thing is drawn.
 */
import type { Drawing, Inked } from '../picture/ink.ts';
import type { Look } from '../scene/look.ts';
import type { Film, Frame, Shown } from '../timeline/film.ts';
import { faded, inkAt, type Pace, paceOfDigit, paceOfMark, paceOfWords } from './motion.ts';

/** Everything to be painted at this frame. */
export function drawingAt(film: Film, look: Look, frame: Frame): Drawing {
  const isFaded = look.motion.come === 'faded';
  const inked = <T extends Shown>(things: readonly T[], paceOf: (film: Film, look: Look, thing: T) => Pace) =>
    things.flatMap((thing, index): Inked[] => {
      if (frame < thing.from || frame >= thing.until) return [];
      const ink = inkAt(thing, paceOf(film, look, thing), frame);
      return ink === undefined ? [] : [{ index, ...(isFaded ? faded(ink) : ink) }];
    });
  return {
    board: boardAt(film, frame),
    headings: inked(film.headings, paceOfWords),
    said: inked(film.said, paceOfWords),
    written: inked(film.written, paceOfDigit),
    candidates: inked(film.candidates, paceOfWords),
    marks: inked(film.marks, paceOfMark),
  };
}

/** Equal only for equal drawings. */
export function digestOf(drawing: Drawing): string {
  const list = (things: readonly Inked[]) =>
    things.map(({ index, progress, alpha }) =>
      progress === 1 && alpha === 1 ? index : `${index}:${progress}:${alpha}`,
    );
  const lists = [drawing.headings, drawing.said, drawing.written, drawing.candidates, drawing.marks];
  return `${drawing.board ?? 'own'}/${lists.map((things) => list(things).join(' ')).join('/')}`;
}

function boardAt(film: Film, frame: Frame): number | undefined {
  let inForce: number | undefined;
  film.board.forEach((placement, index) => {
    if (placement.from <= frame) inForce = index;
  });
  return inForce ?? (film.board.length > 0 ? 0 : undefined);
}
