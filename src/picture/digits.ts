/**
 * Givens, written digits and small digits. Small digits that take part in what is marked come forward, larger and
 * bolder; the others step back.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Digit } from '../grid/grid.ts';
import { digitOf } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import { writeWord } from './pen.ts';
import { middleOf, pointOfCandidate, pointOfSmallDigit } from './small-digits.ts';
import type { BoardStage } from './stage.ts';

/** The digits that stand from the start. */
export function paintStanding(stage: BoardStage): void {
  const { colours } = stage.look;
  for (const { cell, digit, given } of stage.film.standing) {
    paintDigit(stage, cell, digit, given ? 600 : 500, given ? colours.given : colours.written, 1, 1);
  }
}

/** The digits written so far; a new one grows out of its small digit's place. */
export function paintWritten(stage: BoardStage): void {
  for (const { index, progress, alpha } of stage.drawing.written) {
    const written = stage.film.written[index];
    if (written === undefined) continue;
    paintDigit(stage, written.cell, written.digit, 500, stage.look.colours.written, progress, alpha);
  }
}

/** The small digits on the board. */
export function paintSmallDigits(stage: BoardStage): void {
  const { film, look, drawing, involved } = stage;
  const { candidate: resting, quiet } = look.inks;
  const busy = Math.max(0, ...involved.values());
  for (const { index, progress, alpha } of drawing.candidates) {
    const small = film.candidates[index];
    if (small === undefined) continue;
    const forward = involved.get(small.candidate) ?? 0;
    const back = resting + (quiet - resting) * busy;
    paintSmallDigit(stage, small.candidate, forward, (back + (1 - back) * forward) * alpha * progress, 0);
  }
}

/** The small digits that have come forward, once more: no ring or line lies on them. */
export function paintForwardDigits(stage: BoardStage): void {
  const { film, drawing, involved } = stage;
  for (const { index, progress, alpha } of drawing.candidates) {
    const small = film.candidates[index];
    const forward = small === undefined ? undefined : involved.get(small.candidate);
    if (small !== undefined && forward !== undefined)
      paintSmallDigit(stage, small.candidate, forward, alpha * progress, 0);
  }
}

/** With `small: whole` the recording shows no small digits, so that marks bring those that they speak of. */
export function paintInvolvedDigits(stage: BoardStage): void {
  for (const [candidate, forward] of stage.involved) {
    paintSmallDigit(stage, candidate, 1, forward, stage.look.strokes.casing * 1.5);
  }
}

function paintSmallDigit(
  stage: BoardStage,
  candidate: Candidate,
  forward: number,
  alpha: number,
  casing: number,
): void {
  const { type, colours } = stage.look;
  writeWord(stage, {
    text: String(digitOf(stage.film.grid, candidate)),
    at: pointOfCandidate(stage.film, candidate),
    height: Math.min(smallHeight(stage) * (1 + (type.emphasis - 1) * forward), 0.33),
    weight: forward > 0 ? 700 : 500,
    colour: forward > 0 ? colours.given : colours.candidate,
    alpha,
    casing,
  });
}

/** Of a small digit's capitals, in cells: never below 24 pixels where three of them fit into a cell's height. */
function smallHeight(stage: BoardStage): number {
  const least = (24 * stage.unit) / stage.place.cellPx;
  return Math.min(Math.max(stage.look.type.candidate, least), 0.26);
}

function paintDigit(
  stage: BoardStage,
  cell: Cell,
  digit: Digit,
  weight: number,
  colour: string,
  progress: number,
  alpha: number,
): void {
  const { film, look } = stage;
  const middle = middleOf(film.grid, cell);
  const start = pointOfSmallDigit(film, cell, digit);
  const between = (a: number, b: number) => a + (b - a) * progress;
  const at: Point = [between(start[0], middle[0]), between(start[1], middle[1])];
  const height = between(look.type.candidate, look.type.digit);
  writeWord(stage, { text: String(digit), at, height, weight, colour, alpha, casing: 0 });
}
