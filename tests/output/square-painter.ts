/**
 * A painter for tests: rectangles of given colours on a small frame, the whole of it known without drawing.
 */

import type { Painter } from '../../src/output/painters/painter.ts';
import { type Fraction, fraction } from '../../src/scene/fraction.ts';

/** `colour`: R, G, B, A, alpha straight. Edges in whole pixels; of two on one pixel the later lies over the earlier. */
export interface Square {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly colour: readonly [number, number, number, number];
}

export interface SquareFilm {
  readonly width?: number;
  readonly height?: number;
  readonly rate?: Fraction;
  readonly frameCount?: number;
  /** Opaque under the squares; without it the film is transparent. */
  readonly ground?: readonly [number, number, number];
  /** The squares of a frame; frames with equal lists look the same. */
  readonly squares?: (frame: number) => readonly Square[];
}

/** A painter, and the frames that it was asked to draw, in order. */
export function squarePainter(film: SquareFilm): Painter & { readonly painted: readonly number[] } {
  const { width = 64, height = 48, rate = fraction(25n), frameCount = 3, squares = () => [] } = film;
  const painted: number[] = [];
  return {
    width,
    height,
    rate,
    frameCount,
    transparent: film.ground === undefined,
    painted,
    digestAt: (frame) => JSON.stringify(squares(frame)),
    paint(context, frame) {
      painted.push(frame);
      if (film.ground !== undefined) {
        context.fillStyle = css([...film.ground, 255]);
        context.fillRect(0, 0, width, height);
      }
      for (const square of squares(frame)) {
        context.fillStyle = css(square.colour);
        context.fillRect(square.left, square.top, square.width, square.height);
      }
    },
  };
}

/** One square that steps eight pixels to the right every `hold` frames. */
export function walkingSquare(hold: number, colour: Square['colour']): (frame: number) => readonly Square[] {
  return (frame) => [{ left: 4 + 8 * Math.floor(frame / hold), top: 8, width: 16, height: 16, colour }];
}

/** `#rrggbbaa`: as a decimal fraction alpha would be rounded once more. */
function css(colour: readonly number[]): string {
  return `#${colour.map((level) => level.toString(16).padStart(2, '0')).join('')}`;
}
