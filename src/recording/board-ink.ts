/**
 * In which cells something is written: enough to tell one puzzle's board from another's, whatever the typeface.
 */
import type { Corners } from './corners.ts';
import type { GreyPicture } from './picture.ts';
import { rectified } from './rectify.ts';

/** Pixels of a cell's side, of which the outer ones hold its lines. */
const cellPx = 28;
const margin = 6;

/** A digit fills more than this part of a cell's middle and less than half of it; small digits and cursors fill less. */
const leastInk = 0.05;

/** Levels by which ink differs from its cell. */
const leastContrast = 24;

/** By cell, row by row: which part of its middle is ink that is as strong as that of digits. */
export function inkOf(picture: GreyPicture, size: number, corners: Corners): readonly number[] {
  const board = rectified(picture, corners, size * cellPx);
  const cells = Array.from({ length: size * size }, (_, cell) => middleOf(board, size, cell));
  // Digits are as strong as each other; what is much weaker is a tint's edge or a small digit.
  const strengths = cells.map(({ strength }) => strength).sort((a, b) => a - b);
  const usual = strengths[Math.floor(0.9 * strengths.length)]!;
  const threshold = Math.max(leastContrast, 0.4 * usual);
  return cells.map(({ levels, ground }) => {
    let ink = 0;
    for (const level of levels) if (Math.abs(level - ground) > threshold / 2) ink += 1;
    return ink / levels.length;
  });
}

/** Whether something as large as a digit stands in the cell. */
export function isInked(ink: number): boolean {
  return ink > leastInk;
}

function middleOf(board: GreyPicture, size: number, cell: number) {
  const [row, column] = [Math.floor(cell / size), cell % size];
  const levels: number[] = [];
  for (let y = margin; y < cellPx - margin; y++) {
    for (let x = margin; x < cellPx - margin; x++)
      levels.push(board.levels[(row * cellPx + y) * board.width + column * cellPx + x]!);
  }
  const sorted = [...levels].sort((a, b) => a - b);
  const at = (part: number) => sorted[Math.floor(part * (sorted.length - 1))]!;
  // Most of a cell is ground, a digit's strokes are less than half of it.
  const ground = at(0.5);
  return { levels, ground, strength: Math.max(at(0.97) - ground, ground - at(0.03)) };
}

export interface GivensSeen {
  /** Givens, and of these the ones in whose cells nothing stands. */
  readonly givens: number;
  readonly missing: readonly number[];
  /** Blank cells, and of these the ones in which something stands. */
  readonly blanks: number;
  readonly filled: readonly number[];
  /** Whether this can be the puzzle: all but a few of its givens are there, and not everywhere else as well. */
  readonly fits: boolean;
}

/** The givens of a puzzle held against a picture of its board; `isGiven` by cell, row by row. */
export function givensSeen(
  picture: GreyPicture,
  size: number,
  corners: Corners,
  isGiven: readonly boolean[],
): GivensSeen {
  const inked = inkOf(picture, size, corners).map(isInked);
  const cells = (given: boolean) => isGiven.flatMap((each, cell) => (each === given ? [cell] : []));
  const [givens, blanks] = [cells(true), cells(false)];
  const missing = givens.filter((cell) => !inked[cell]);
  const filled = blanks.filter((cell) => inked[cell]);
  const tolerated = Math.max(1, Math.floor(givens.length / 12));
  const fits = missing.length <= tolerated && filled.length <= 0.7 * blanks.length;
  return { givens: givens.length, missing, blanks: blanks.length, filled, fits };
}
