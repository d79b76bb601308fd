/**
 * What is read off a grid's tables: rows, columns, shared houses, what sees what. Nothing here is relied on by a proof.
 */
import { Bug } from './bug.ts';
import type { Cell, Digit, Grid, HouseKind, HouseShape } from './grid.ts';

/** The cell at a row and column, both from 1. */
export function cellAt(grid: Grid, row: number, column: number): Cell {
  if (!(row >= 1 && row <= grid.size && column >= 1 && column <= grid.size)) {
    throw new Bug(`no cell at row ${row}, column ${column} of a ${grid.size}x${grid.size} grid`);
  }
  return grid.cells[(row - 1) * grid.size + column - 1]!;
}

/** The number as a digit of this grid. */
export function digit(grid: Grid, value: number): Digit {
  if (!(Number.isInteger(value) && value >= 1 && value <= grid.size))
    throw new Bug(`${value} is not a digit of this grid`);
  return value as Digit;
}

/** The row of a cell, from 1. */
export function rowOf(grid: Grid, cell: Cell): number {
  return Math.floor(cell / grid.size) + 1;
}

/** The column of a cell, from 1. */
export function columnOf(grid: Grid, cell: Cell): number {
  return (cell % grid.size) + 1;
}

/** The house of this kind and number (from 1), if the grid has it. */
export function houseAt(grid: Grid, kind: HouseKind, number: number): HouseShape | undefined {
  return grid.houses.find((house) => house.kind === kind && house.number === number);
}

/** The houses that hold all these cells, in the grid's order. */
export function sharedHouses(grid: Grid, cells: readonly Cell[]): readonly HouseShape[] {
  const [first, ...others] = cells;
  if (first === undefined) return [];
  return [...grid.housesOf[first]!].filter((house) => others.every((cell) => house.cells.includes(cell)));
}

/** Whether two different cells cannot hold the same digit. */
export function sees(grid: Grid, a: Cell, b: Cell): boolean {
  return grid.peers[a]!.includes(b);
}
