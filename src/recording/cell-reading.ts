/**
 * What a cell may hold: each symbol that its largest mark looks like, and how far behind the likeliest it is.
 */
import type { CellInk, InkMark } from './cell-ink.ts';
import { type DigitShapes, scoresOf } from './digit-shapes.ts';
import { featuresOf } from './shape-features.ts';

/** One way to read a cell; `digit` undefined: it holds none. */
export interface Reading {
  readonly digit: number | undefined;
  /** By how much the likeliest reading fits better: logarithm of odds, 0 for the likeliest itself. */
  readonly cost: number;
}

export interface CellReading {
  /** The likeliest first. */
  readonly readings: readonly [Reading, ...Reading[]];
  /** What is read; undefined where nothing large enough stands in the cell. */
  readonly mark: InkMark | undefined;
  /** Whether something lies over the cell, under which a digit may be. */
  readonly isCovered: boolean;
}

/** Readings that fit worse than this are not thought of: odds of one to a thousand. */
const mostCost = 7;
/** A digit stands near the middle of its cell: so far off at most, in cells. */
const offMiddle = 0.24;
/** No digit is lower than this, in cells, and none lower than that part of the others. */
const [leastHeight, leastPart] = [0.26, 0.58];

/** By cell. `size`: of the board, which says how many symbols there are. */
export function cellReadings(cells: readonly CellInk[], size: number, shapes: DigitShapes): readonly CellReading[] {
  const tallest = cells
    .map(({ marks }) => Math.max(0, ...marks.filter(isInMiddle).map(heightOf)))
    .filter((height) => height > leastHeight)
    .sort((a, b) => a - b);
  const usual = tallest[Math.floor(0.7 * tallest.length)] ?? 1;
  const least = Math.max(0.7 * leastHeight, leastPart * usual);
  return cells.map(({ marks, isCovered }): CellReading => {
    const large = marks.filter((mark) => isInMiddle(mark) && heightOf(mark) >= least);
    const read = large.map((mark) => ({ mark, readings: readingsOf(mark, size, shapes) }));
    // A pointer beside the digit is as large; what is read as a digit goes before it.
    const best = read.find(({ readings }) => readings[0].digit !== undefined) ?? read[0];
    if (best === undefined || isRow(best.mark, marks))
      return { readings: [{ digit: undefined, cost: 0 }], mark: undefined, isCovered };
    return { ...best, isCovered };
  });
}

/** At least one: where the mark is rather none of the symbols, that is a reading too. */
function readingsOf(mark: InkMark, size: number, shapes: DigitShapes): CellReading['readings'] {
  const scores = scoresOf(shapes, featuresOf(mark));
  const none = scores[shapes.symbols.length]!;
  const scored = [
    ...scores.slice(0, size).map((score, index) => ({ digit: index + 1, score })),
    { digit: undefined, score: none },
  ].sort((a, b) => b.score - a.score);
  const [first, ...others] = scored.map(({ digit, score }) => ({ digit, cost: scored[0]!.score - score }));
  return [first!, ...others.filter(({ cost }) => cost <= mostCost)];
}

function heightOf({ top, bottom }: InkMark): number {
  return bottom - top;
}

function isInMiddle({ left, top, right, bottom }: InkMark): boolean {
  return Math.abs((left + right) / 2 - 0.5) < offMiddle && Math.abs((top + bottom) / 2 - 0.5) < offMiddle;
}

/** Whether marks about as tall stand beside this one: small digits in a row, which are large where they are few. */
function isRow(mark: InkMark, marks: readonly InkMark[]): boolean {
  const height = heightOf(mark);
  return (
    height < 0.4 &&
    marks.some((other) => {
      const shared = Math.min(mark.bottom, other.bottom) - Math.max(mark.top, other.top);
      return other !== mark && shared > 0.75 * Math.max(height, heightOf(other));
    })
  );
}
