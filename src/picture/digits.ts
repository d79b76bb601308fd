/**
 * Givens, written digits and small digits. Small digits involved in marks come forward, larger and bolder; the others
 * recede.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Digit } from '../grid/grid.ts';
import { cellOf, digitOf } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import { type Word, writeWords } from './pen.ts';
import { roomFor } from './ring-room.ts';
import { middleOf, pointOfCandidate, pointOfSmallDigit } from './small-digits.ts';
import type { BoardStage } from './stage.ts';

/** The digits on the board from the start. */
export function paintStanding(stage: BoardStage): void {
  const { colours } = stage.look;
  const words = stage.film.standing.map(({ cell, digit, given }) =>
    given ? digitWord(stage, cell, digit, 600, colours.given) : digitWord(stage, cell, digit, 500, colours.written),
  );
  writeWords(stage, words);
}

/** The digits written so far; a new one grows out of its small digit's place. */
export function paintWritten(stage: BoardStage): void {
  const { film, drawing, look } = stage;
  const words = drawing.written.flatMap(({ index, progress, alpha }) => {
    const written = film.written[index];
    if (written === undefined) return [];
    return [{ ...digitWord(stage, written.cell, written.digit, 500, look.colours.written, progress), alpha }];
  });
  writeWords(stage, words);
}

/** The small digits on the board. */
export function paintSmallDigits(stage: BoardStage): void {
  const { film, look, drawing, involved } = stage;
  const { candidate: resting, quiet } = look.inks;
  const filled = filledCells(stage);
  const busy = Math.max(0, ...involved.values(), ...filled.values());
  const apart = resting + (quiet - resting) * busy;
  const words = drawing.candidates.flatMap(({ index, progress, alpha }) => {
    const candidate = film.candidates[index]?.candidate;
    if (candidate === undefined) return [];
    const forward = involved.get(candidate) ?? 0;
    const tinted = filled.get(cellOf(film.grid, candidate)) ?? 0;
    const back = apart + (inTint - apart) * tinted;
    return [smallDigitWord(stage, candidate, forward, (back + (1 - back) * forward) * alpha * progress)];
  });
  writeWords(stage, words);
}

/** The small digits that have come forward, drawn again: no ring or line covers them. */
export function paintForwardDigits(stage: BoardStage): void {
  const { film, drawing, involved } = stage;
  const words = drawing.candidates.flatMap(({ index, progress, alpha }) => {
    const candidate = film.candidates[index]?.candidate;
    const forward = candidate === undefined ? undefined : involved.get(candidate);
    if (candidate === undefined || forward === undefined) return [];
    return [smallDigitWord(stage, candidate, forward, alpha * progress)];
  });
  writeWords(stage, words);
}

/** With `small: whole` the recording shows no small digits, so marks bring those that they are about. */
export function paintInvolvedDigits(stage: BoardStage): void {
  const casing = stage.look.strokes.casing * 1.5;
  const words = [...stage.involved].map(([candidate, forward]) => ({
    ...smallDigitWord(stage, candidate, 1, forward),
    casing,
  }));
  writeWords(stage, words);
}

/** Of the small digits of a tinted cell: the mark is about them, though about none individually. */
const inTint = 0.85;

function filledCells(stage: BoardStage): Map<Cell, number> {
  const filled = new Map<Cell, number>();
  for (const { mark, ink } of stage.standing) {
    if (mark.shape.kind !== 'fill') continue;
    for (const cell of mark.shape.cells) filled.set(cell, Math.max(filled.get(cell) ?? 0, ink.progress * ink.alpha));
  }
  return filled;
}

function smallDigitWord(stage: BoardStage, candidate: Candidate, forward: number, alpha: number): Word {
  const { colours, motion } = stage.look;
  const grown = motion.come === 'faded' && forward > 0 ? 1 : forward;
  return {
    text: String(digitOf(stage.film.grid, candidate)),
    at: pointOfCandidate(stage.film, candidate),
    height: Math.min(smallHeight(stage) * (1 + (roomFor(stage, candidate).emphasis - 1) * grown), 0.33),
    weight: forward > 0 ? 700 : 500,
    colour: forward > 0 ? colours.given : colours.candidate,
    alpha,
    casing: 0,
  };
}

/** Of a small digit's capitals, in cells: never below 24 pixels if three of them fit into a cell's height. */
function smallHeight(stage: BoardStage): number {
  const least = (24 * stage.unit) / stage.place.cellPx;
  return Math.min(Math.max(stage.look.type.candidate, least), 0.26);
}

function digitWord(stage: BoardStage, cell: Cell, digit: Digit, weight: number, colour: string, progress = 1): Word {
  const { film, look } = stage;
  const middle = middleOf(film.grid, cell);
  const start = pointOfSmallDigit(film, cell, digit);
  const between = (a: number, b: number) => a + (b - a) * progress;
  const at: Point = [between(start[0], middle[0]), between(start[1], middle[1])];
  return {
    text: String(digit),
    at,
    height: between(look.type.candidate, look.type.digit),
    weight,
    colour,
    alpha: 1,
    casing: 0,
  };
}
