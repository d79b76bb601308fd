/**
 * Where small digits are in a cell. Points are in cells: `[0, 0]` is the board's top left corner,
 * `[size, size]` its bottom right, so that the middle of r1c2 is `[1.5, 0.5]`.
 */
import type { Candidate } from '../grid/candidates.ts';
import { columnOf, rowOf } from '../grid/geometry.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import type { Film } from '../timeline/film.ts';

/**
 * Small digits are slightly closer to the cell's middle than equal parts would put them, clear of its lines. Those
 * drawn here are far enough in for an outline inside the cell's edge to pass below them; those of a recording are where
 * most programs put them.
 */
function inwards(film: Film): number {
  return film.draw === 'overlay' || smallColumns(film.grid) < 3 ? 0.96 : 0.94;
}

/** Columns and rows of small digits in a cell: three columns, or two if there are only four digits. */
export function smallColumns(grid: Grid): number {
  return grid.size === 4 ? 2 : 3;
}

/** Rows of small digits in a cell, the last of which may not be full. */
export function smallRows(grid: Grid): number {
  return Math.ceil(grid.size / smallColumns(grid));
}

/** The middle of a candidate's place in its cell, numbered according to `film.small`. */
export function pointOfCandidate(film: Film, candidate: Candidate): Point {
  const { grid } = film;
  return pointOfSmallDigit(film, cellOf(grid, candidate), digitOf(grid, candidate));
}

/** The same for a digit in a cell. */
export function pointOfSmallDigit(film: Film, cell: Cell, digit: Digit): Point {
  const { grid } = film;
  const [columns, rows] = [smallColumns(grid), smallRows(grid)];
  const column = (digit - 1) % columns;
  const rowFromTop = Math.floor((digit - 1) / columns);
  const row = film.small === '789' ? rows - 1 - rowFromTop : rowFromTop;
  const [left, top] = cornerOf(grid, cell);
  const drawnIn = (part: number) => 0.5 + (part - 0.5) * inwards(film);
  return [left + drawnIn((column + 0.5) / columns), top + drawnIn((row + 0.5) / rows)];
}

/** The small digits that are on the board at some time, drawn here or shown by the recording. */
export function smallDigitsAround(film: Film): Film['candidates'] {
  return film.draw === 'overlay' ? film.recorded : film.candidates;
}

/** The top left corner of a cell. */
export function cornerOf(grid: Grid, cell: Cell): Point {
  return [columnOf(grid, cell) - 1, rowOf(grid, cell) - 1];
}

/** The middle of a cell. */
export function middleOf(grid: Grid, cell: Cell): Point {
  const [left, top] = cornerOf(grid, cell);
  return [left + 0.5, top + 0.5];
}

/** The distance in cells between the nearest candidates of two nodes. */
export function lengthOfLink(film: Film, from: readonly Candidate[], to: readonly Candidate[]): number {
  let least = film.grid.size * 2;
  for (const one of from) {
    for (const other of to)
      least = Math.min(least, distance(pointOfCandidate(film, one), pointOfCandidate(film, other)));
  }
  return least;
}

/** Between two points. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
