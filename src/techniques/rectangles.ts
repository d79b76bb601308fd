/** The rectangles of a position that two digits could be left over in. */
import { has } from '../grid/candidates.ts';
import { type Cell, candidateAt, cellAt, columnOf, type Digit, type Grid, rowOf, sharedHouses } from '../grid/grid.ts';
import type { Deadly } from '../grid/terms.ts';
import { isPlaced, type OneOf, type Position } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { guardedPattern, placedAmong, type Rectangle } from './deadly-reading.ts';
import { cellsOf } from './seen-by-all.ts';

export interface GuardedRectangle extends Rectangle {
  readonly deadly: Deadly;
  readonly set: OneOf;
  readonly guarded: readonly Cell[];
}

const known = new WeakMap<Position, readonly GuardedRectangle[]>();

/** Those whose corners are all open and hold both digits, by their corners; made once, since a position never changes. */
export function openRectangles(position: Position): readonly GuardedRectangle[] {
  const made = known.get(position) ?? [...rectangles(position)].filter(({ corners }) => placedAmong(position, corners) === 0);
  known.set(position, made);
  return made;
}

/** Those with placed corners, none of them a given; the open ones hold both digits. By their corners. */
export function* avoidableRectangles(position: Position): Generator<GuardedRectangle> {
  for (const each of rectangles(position)) if (placedAmong(position, each.corners) > 0) yield each;
}

function* rectangles(position: Position): Generator<GuardedRectangle> {
  const { grid } = position;
  for (const corners of cornersIn(grid)) {
    if (corners.some((cell) => isGiven(position, cell))) continue;
    for (const [low, high] of combinations(digitsOfAny(position, corners), 2)) {
      const digits = [low!, high!] as const;
      if (!corners.every((corner) => canHold(position, corner, digits))) continue;
      const pattern = guardedPattern(position, [{ digits, cells: corners }]);
      if (pattern === undefined) continue;
      yield { ...pattern, digits, corners, guarded: cellsOf(grid, pattern.set.members) };
    }
  }
}

/** Both digits where the cell is open, one of them where it is placed. */
function canHold(position: Position, cell: Cell, digits: readonly Digit[]): boolean {
  const held = digits.filter((digit) => has(position.possible, candidateAt(position.grid, cell, digit)));
  return held.length >= (isPlaced(position, cell) ? 1 : 2);
}

/** The digits that some of the cells could hold. */
function digitsOfAny({ grid, possible }: Position, cells: readonly Cell[]): Digit[] {
  return grid.digits.filter((digit) => cells.some((cell) => has(possible, candidateAt(grid, cell, digit))));
}

function isGiven({ grid, givens }: Position, cell: Cell): boolean {
  return grid.digits.some((digit) => has(givens, candidateAt(grid, cell, digit)));
}

const laidOut = new WeakMap<Grid, readonly (readonly Cell[])[]>();

/** Two rows crossed by two columns where the pairs of one direction share a third house, as a twin needs. */
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
export function across(grid: Grid, { corners }: Rectangle, corner: Cell): Cell {
  return corners.find((cell) => rowOf(grid, cell) !== rowOf(grid, corner) && columnOf(grid, cell) !== columnOf(grid, corner))!;
}
