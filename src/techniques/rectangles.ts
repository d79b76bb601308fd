/** The rectangles of a position that might be left with the same two digits. */
import { has } from '../grid/candidates.ts';
import { cellAt, columnOf, rowOf, sharedHouses } from '../grid/geometry.ts';
import { type Cell, candidateAt, type Digit, type Grid } from '../grid/grid.ts';
import type { Deadly } from '../grid/terms.ts';
import { isPlaced } from '../proof/is-placed.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { guardedPattern, placedAmong, type Rectangle } from './deadly-reading.ts';
import { cellsOf } from './seen-by-all.ts';

export interface GuardedRectangle extends Rectangle {
  readonly deadly: Deadly;
  readonly set: OneOf;
  readonly guarded: readonly Cell[];
}

const known = new WeakMap<Position, readonly GuardedRectangle[]>();

/**
 * Those whose corners are all open and hold both digits, by their corners; computed once, since a position never
 * changes.
 */
export function openRectangles(position: Position): readonly GuardedRectangle[] {
  const made =
    known.get(position) ?? [...rectangles(position)].filter(({ corners }) => placedAmong(position, corners) === 0);
  known.set(position, made);
  return made;
}

/**
 * Those with placed corners, none of them a given, whose open corners hold the digit that would complete the pattern.
 * By their corners.
 */
export function* avoidableRectangles(position: Position): Generator<GuardedRectangle> {
  for (const each of rectangles(position)) if (placedAmong(position, each.corners) > 0) yield each;
}

function* rectangles(position: Position): Generator<GuardedRectangle> {
  const { grid } = position;
  const cells = grid.cells.map((cell) => readCell(position, cell));
  for (const corners of cornersIn(grid)) {
    const states = corners.map((cell) => cells[cell]!);
    if (states.some((cell) => cell.state === 'given') || states.every((cell) => cell.state === 'placed')) continue;
    for (const digits of pairsFor(states)) {
      if (!isOfUse(states, digits)) continue;
      const pattern = guardedPattern(position, [{ digits, cells: corners }]);
      if (pattern !== undefined) yield { ...pattern, digits, corners, guarded: cellsOf(grid, pattern.set.members) };
    }
  }
}

/**
 * The pairs of digits, the lower first, that could remain in the corners (given row by row): both in each, if all are
 * open; if some are placed, the one filling that agrees with them.
 */
function pairsFor(corners: readonly CellState[]): (readonly [Digit, Digit])[] {
  const placed = corners.findIndex((corner) => corner.state === 'placed');
  if (placed < 0) return [...combinations(shared(corners), 2)].map(([low, high]) => [low!, high!] as const);
  const own = corners[placed]!.digits[0]!;
  const across = corners[3 - placed]!;
  if (!across.digits.includes(own)) return [];
  const adjacent = corners.filter((corner) => corner !== corners[placed] && corner !== across);
  return shared(adjacent).flatMap((other) =>
    other === own ? [] : [own < other ? ([own, other] as const) : ([other, own] as const)],
  );
}

/** The digits that all of them hold. */
function shared(corners: readonly CellState[]): readonly Digit[] {
  return corners.map((corner) => corner.digits).reduce((a, b) => a.filter((digit) => b.includes(digit)));
}

interface CellState {
  readonly state: 'open' | 'placed' | 'given';
  readonly digits: readonly Digit[];
}

/**
 * Whether there are guardians, and either a corner has none or all are of one digit: from others nothing is concluded
 * here.
 */
function isOfUse(corners: readonly CellState[], pair: readonly Digit[]): boolean {
  const extras = corners.map((cell) => cell.digits.filter((digit) => !pair.includes(digit)));
  const digits = new Set(extras.flat());
  return digits.size === 1 || (digits.size > 1 && extras.some((own) => own.length === 0));
}

function readCell(position: Position, cell: Cell): CellState {
  const { grid, possible, givens } = position;
  const digits = grid.digits.filter((digit) => has(possible, candidateAt(grid, cell, digit)));
  if (!isPlaced(position, cell)) return { state: 'open', digits };
  return { state: has(givens, candidateAt(grid, cell, digits[0]!)) ? 'given' : 'placed', digits };
}

const laidOut = new WeakMap<Grid, readonly (readonly Cell[])[]>();

/**
 * Two rows crossed by two columns, where the pairs in one direction share a third house, as swapping the digits
 * requires.
 */
function cornersIn(grid: Grid): readonly (readonly Cell[])[] {
  const made = laidOut.get(grid) ?? [...layOut(grid)];
  laidOut.set(grid, made);
  return made;
}

function* layOut(grid: Grid): Generator<readonly Cell[]> {
  const lines = grid.digits.map(Number);
  for (const [top, bottom] of combinations(lines, 2)) {
    for (const [left, right] of combinations(lines, 2)) {
      const at = (row: number, column: number) => cellAt(grid, row, column);
      const corners = [at(top!, left!), at(top!, right!), at(bottom!, left!), at(bottom!, right!)] as const;
      const [a, b, c, d] = corners;
      const share = (one: Cell, other: Cell) => sharedHouses(grid, [one, other]).length > 1;
      if ((share(a, b) && share(c, d)) || (share(a, c) && share(b, d))) yield corners;
    }
  }
}

/** The corner across from this one. */
export function across(grid: Grid, { corners }: Pick<Rectangle, 'corners'>, corner: Cell): Cell {
  return corners.find(
    (cell) => rowOf(grid, cell) !== rowOf(grid, corner) && columnOf(grid, cell) !== columnOf(grid, corner),
  )!;
}
