/**
 * The film that the engine is timed on: steps of one second in which marks come and go and of some seconds in which
 * nothing moves, on a board of 1920x1080 at 60 frames a second.
 */
import { defaultLook } from '../../src/picture/default-look.ts';
import { fraction } from '../../src/scene/fraction.ts';
import type { Film } from '../../src/timeline/film.ts';
import { circle, fill, film, link, type MarkWish, sparseGivens, strike } from '../picture/films.ts';

export const look = defaultLook;

export interface FilmSize {
  readonly steps: number;
  readonly secondsEach: number;
  readonly width: number;
  readonly height: number;
  readonly draw: 'board' | 'overlay';
}

export function engineFilm({ steps, secondsEach, width, height, draw }: FilmSize): Film {
  const rate = 60;
  const marks = Array.from({ length: steps }, (_, step) =>
    marksOf(step, step * secondsEach * rate, secondsEach * rate),
  );
  return film({
    ...{ width, height, draw, rate: fraction(rate), frameCount: steps * secondsEach * rate, givens: sparseGivens },
    ...{ title: 'A board to time', marks: marks.flat() },
  });
}

/** Five marks that come one after another within five sixths of a second; they fade in the last of the step's second. */
function marksOf(step: number, from: number, frames: number): MarkWish[] {
  const column = (shift: number): number => 1 + ((step + shift) % 9);
  // One row further down every nine steps: each step has pictures of its own, up to 81.
  const row = (first: number): number => 1 + ((first - 1 + Math.floor(step / 9)) % 9);
  const at = (mark: MarkWish, second: number): MarkWish => {
    return { ...mark, from: from + Math.round(60 * second), until: from + frames, step: `step-${step}` };
  };
  return [
    at(fill(`r${row(3)}c${column(0)} r${row(4)}c${column(2)}`), 0),
    at(circle(`7r${row(1)}c${column(0)}`), 0.15),
    at(circle(`7r${row(6)}c${column(3)}`), 0.3),
    at(link('strong', `7r${row(1)}c${column(0)}`, `7r${row(6)}c${column(3)}`), 0.35),
    at(strike(`7r${row(8)}c${column(5)}`), 0.75),
  ];
}
