/**
 * A picture in words, for anyone who cannot see it: what is on it, and the board row by row. It is made from the drawn
 * marks, in the same words as a description track, so it says nothing that the picture does not claim.
 */
import { type Described, inWords } from '../beside/describe-marks.ts';
import { printCell } from '../grid/notation/print.ts';
import type { Drawing } from '../picture/ink.ts';
import type { Film } from '../timeline/film.ts';

export interface PictureInWords {
  /** `The board. An arrow runs from ...: not both false; the 5 in row 4 column 4 is crossed out.` */
  readonly marks: string;
  /** `Row 1: 2, blank, 5.`, from the top. */
  readonly rows: readonly string[];
}

/** `isSound`: whether a step's claims hold, so that the text may say so. */
export function pictureInWords(film: Film, drawing: Drawing, isSound: (step: string) => boolean): PictureInWords {
  const described = drawing.marks.flatMap(({ index }): Described[] => {
    const mark = film.marks[index];
    if (mark === undefined) return [];
    const { from: frame, shape: what, group, step } = mark;
    return [{ frame, what, colour: group?.colour, sound: isSound(step) }];
  });
  const marks = described.length === 0 ? 'The board.' : `The board. ${inWords(film.grid, described, false)}`;
  return { marks, rows: rowsOf(film, drawing) };
}

function rowsOf(film: Film, drawing: Drawing): string[] {
  const { grid } = film;
  const digits = new Map<string, number>();
  for (const { cell, digit } of film.standing) digits.set(printCell(grid, cell), digit);
  for (const { index } of drawing.written) {
    const written = film.written[index];
    if (written !== undefined) digits.set(printCell(grid, written.cell), written.digit);
  }
  const numbers = Array.from({ length: grid.size }, (_, index) => index + 1);
  return numbers.map(
    (row) => `Row ${row}: ${numbers.map((column) => digits.get(`r${row}c${column}`) ?? 'blank').join(', ')}.`,
  );
}
