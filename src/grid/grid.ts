/**
 * The geometry of a board as data: cells, houses, and which candidates conflict.
 *
 * Nothing outside `layOutGrid` knows that houses are rows, columns and boxes; all else reads the tables.
 * A board with other regions or further rules is another set of tables, not other code.
 */
import { Bug } from './bug.ts';
import { type Candidate, type Candidates, setOf } from './candidates.ts';

declare const cellBrand: unique symbol;
declare const digitBrand: unique symbol;
declare const houseBrand: unique symbol;

/** A cell, `0` to `size * size - 1`, row by row from the top left; made by `cellAt`. */
export type Cell = number & { readonly [cellBrand]: true };
/** A digit, `1` to `size`; made by `digit`. */
export type Digit = number & { readonly [digitBrand]: true };
/** The number of a house in `grid.houses`. */
export type House = number & { readonly [houseBrand]: true };

export type HouseKind = 'row' | 'column' | 'box';

/** A region that holds every digit once. */
export interface HouseShape {
  readonly house: House;
  readonly kind: HouseKind;
  /** Counted from 1 within its kind. */
  readonly number: number;
  /** As written: `r3`, `c5`, `b2`. */
  readonly name: string;
  /** `size` cells, in reading order; `b7p3` is the third of box 7. */
  readonly cells: readonly Cell[];
}

export interface Grid {
  /** Cells in a row, and digits: 4, 6, 8 or 9. */
  readonly size: number;
  readonly boxRows: number;
  readonly boxColumns: number;
  readonly cellCount: number;
  readonly candidateCount: number;
  readonly cells: readonly Cell[];
  readonly digits: readonly Digit[];
  /** Rows, then columns, then boxes. */
  readonly houses: readonly HouseShape[];
  /** By cell: the houses that hold it. */
  readonly housesOf: readonly (readonly HouseShape[])[];
  /** By cell: the cells that cannot hold the same digit, in order; the cell itself is not among them. */
  readonly peers: readonly (readonly Cell[])[];
  /** By candidate: all candidates that cannot be true together with it; not itself. */
  readonly conflicts: readonly Candidates[];
}

/** Box shapes that can be laid out, `rows x columns` as in `puzzle.boxes`. */
export const boxShapes = ['2x2', '2x3', '2x4', '3x3'] as const;
export type BoxShape = (typeof boxShapes)[number];

const laidOut = new Map<BoxShape, Grid>();

/** The ordinary board with boxes of this shape; the same object each time, since it never changes. */
export function gridOf(boxes: BoxShape): Grid {
  const known = laidOut.get(boxes);
  if (known !== undefined) return known;
  const [rows, columns] = boxes.split('x').map(Number);
  const grid = layOutGrid(rows!, columns!);
  laidOut.set(boxes, grid);
  return grid;
}

/** The cell at a row and column, both from 1. */
export function cellAt(grid: Grid, row: number, column: number): Cell {
  if (!(row >= 1 && row <= grid.size && column >= 1 && column <= grid.size)) {
    throw new Bug(`no cell at row ${row}, column ${column} of a ${grid.size}x${grid.size} grid`);
  }
  return ((row - 1) * grid.size + column - 1) as Cell;
}

/** The number as a digit of this grid. */
export function digit(grid: Grid, value: number): Digit {
  if (!(Number.isInteger(value) && value >= 1 && value <= grid.size))
    throw new Bug(`${value} is no digit of this grid`);
  return value as Digit;
}

/** The candidate that this digit is in this cell. */
export function candidateAt(grid: Grid, cell: Cell, of: Digit): Candidate {
  return (cell * grid.size + of - 1) as Candidate;
}

/** The row of a cell, from 1. */
export function rowOf(grid: Grid, cell: Cell): number {
  return Math.floor(cell / grid.size) + 1;
}

/** The column of a cell, from 1. */
export function columnOf(grid: Grid, cell: Cell): number {
  return (cell % grid.size) + 1;
}

/** The cell of a candidate. */
export function cellOf(grid: Grid, candidate: Candidate): Cell {
  return Math.floor(candidate / grid.size) as Cell;
}

/** The digit of a candidate. */
export function digitOf(grid: Grid, candidate: Candidate): Digit {
  return ((candidate % grid.size) + 1) as Digit;
}

/** The house of this kind and number (from 1), if the grid has it. */
export function houseAt(grid: Grid, kind: HouseKind, number: number): HouseShape | undefined {
  return grid.houses.find((house) => house.kind === kind && house.number === number);
}

/** All candidates of a cell, possible or not. */
export function candidatesInCell(grid: Grid, cell: Cell): Candidate[] {
  return grid.digits.map((each) => candidateAt(grid, cell, each));
}

/** A digit in each cell of a house, possible or not. */
export function candidatesInHouse(grid: Grid, of: Digit, house: HouseShape): Candidate[] {
  return house.cells.map((cell) => candidateAt(grid, cell, of));
}

/** The houses that hold all these cells, in the grid's order. */
export function sharedHouses(grid: Grid, cells: readonly Cell[]): readonly HouseShape[] {
  const [first, ...others] = cells;
  if (first === undefined) return [];
  return grid.housesOf[first]!.filter((house) => others.every((cell) => house.cells.includes(cell)));
}

/** Whether two different cells cannot hold the same digit. */
export function sees(grid: Grid, a: Cell, b: Cell): boolean {
  return grid.peers[a]!.includes(b);
}

function layOutGrid(boxRows: number, boxColumns: number): Grid {
  const size = boxRows * boxColumns;
  const numbers = Array.from({ length: size }, (_, index) => index);
  const cells = Array.from({ length: size * size }, (_, index) => index as Cell);
  const at = (row: number, column: number) => (row * size + column) as Cell;
  const boxesAcross = size / boxColumns;
  const boxCells = (box: number) =>
    numbers.map((place) =>
      at(
        Math.floor(box / boxesAcross) * boxRows + Math.floor(place / boxColumns),
        (box % boxesAcross) * boxColumns + (place % boxColumns),
      ),
    );
  const kinds: readonly [HouseKind, string, (number: number) => Cell[]][] = [
    ['row', 'r', (row) => numbers.map((column) => at(row, column))],
    ['column', 'c', (column) => numbers.map((row) => at(row, column))],
    ['box', 'b', boxCells],
  ];
  const houses: HouseShape[] = [];
  for (const [kind, letter, cellsOf] of kinds) {
    for (const index of numbers) {
      const house = houses.length as House;
      houses.push({ house, kind, number: index + 1, name: `${letter}${index + 1}`, cells: cellsOf(index) });
    }
  }
  return tablesOf(size, boxRows, boxColumns, cells, houses);
}

function tablesOf(size: number, boxRows: number, boxColumns: number, cells: Cell[], houses: HouseShape[]): Grid {
  const housesOf = cells.map((cell) => houses.filter((house) => house.cells.includes(cell)));
  const peers = cells.map((cell) => {
    const seen = new Set(housesOf[cell]!.flatMap((house) => house.cells));
    seen.delete(cell);
    return [...seen].sort((a, b) => a - b);
  });
  const grid = {
    size,
    boxRows,
    boxColumns,
    cellCount: cells.length,
    candidateCount: cells.length * size,
    cells,
    digits: Array.from({ length: size }, (_, index) => (index + 1) as Digit),
    houses,
    housesOf,
    peers,
    conflicts: [] as Candidates[],
  };
  for (const cell of cells) {
    for (const own of grid.digits) {
      const others = candidatesInCell(grid, cell).filter((other) => digitOf(grid, other) !== own);
      const copies = peers[cell]!.map((peer) => candidateAt(grid, peer, own));
      grid.conflicts.push(setOf(grid, [...others, ...copies]));
    }
  }
  return grid;
}
