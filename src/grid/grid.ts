/**
 * The geometry of a board as data: cells, houses, and which candidates conflict.
 *
 * Nothing outside this file knows how houses lie; all else reads the tables. A board with regions of other shapes or with
 * further rules is another set of tables, not other code.
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

export type HouseKind = 'row' | 'column' | 'box' | 'diagonal';

/** A region that holds every digit once. */
export interface HouseShape {
  readonly house: House;
  readonly kind: HouseKind;
  /** Counted from 1 within its kind. */
  readonly number: number;
  /** As written: `r3`, `c5`, `b2`, `d1`. */
  readonly name: string;
  /** `size` cells, in reading order; `b7p3` is the third of box 7. */
  readonly cells: readonly Cell[];
}

export interface Grid {
  /** Cells in a row, and digits: 4 to 9. */
  readonly size: number;
  /** Rows of a box, and columns; both are `size`, as if the board were one box, where regions replace the boxes. */
  readonly boxRows: number;
  readonly boxColumns: number;
  readonly cellCount: number;
  readonly candidateCount: number;
  readonly cells: readonly Cell[];
  readonly digits: readonly Digit[];
  /** Rows, then columns, then boxes (or the regions in their place), then diagonals. */
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

/**
 * Rules beyond rows, columns and boxes: the two main diagonals hold every digit once (houses d1, from the top left, and d2,
 * from the top right); no digit stands twice a chess knight's move apart; none a chess king's move apart.
 */
export const boardRules = ['diagonals', 'anti-knight', 'anti-king'] as const;
export type BoardRule = (typeof boardRules)[number];

/** A board: boxes of one shape, or regions in their place, and further rules. */
export interface BoardPlan {
  /** By cell: the number of its region, from 0; `size` regions of `size` cells each, numbered in reading order. */
  readonly regions: BoxShape | readonly number[];
  readonly rules: readonly BoardRule[];
}

const laidOut = new Map<string, Grid>();

/** The ordinary board with boxes of this shape; the same object each time, since it never changes. */
export function gridOf(boxes: BoxShape): Grid {
  return gridWith({ regions: boxes, rules: [] });
}

/** The board of this plan; the same object each time. */
export function gridWith({ regions, rules }: BoardPlan): Grid {
  const own = boardRules.filter((rule) => rules.includes(rule));
  const key = JSON.stringify([regions, own]);
  const grid = laidOut.get(key) ?? layOutGrid(typeof regions === 'string' ? boxed(regions) : drawn(regions), own);
  laidOut.set(key, grid);
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

type Layout = Pick<Grid, 'size' | 'boxRows' | 'boxColumns'> & {
  /** By cell: the number of its box or region, from 0. */
  readonly regionOf: readonly number[];
};

function boxed(shape: BoxShape): Layout {
  const [boxRows, boxColumns] = shape.split('x').map(Number) as [number, number];
  const size = boxRows * boxColumns;
  const boxesAcross = size / boxColumns;
  const regionOf = Array.from({ length: size * size }, (_, cell) => {
    const [row, column] = [Math.floor(cell / size), cell % size];
    return Math.floor(row / boxRows) * boxesAcross + Math.floor(column / boxColumns);
  });
  return { size, boxRows, boxColumns, regionOf };
}

function drawn(regionOf: readonly number[]): Layout {
  const size = Math.sqrt(regionOf.length);
  const isWhole = (region: number) => regionOf.filter((each) => each === region).length === size;
  if (
    !Number.isInteger(size) ||
    size < 4 ||
    size > 9 ||
    !Array.from({ length: size }, (_, index) => index).every(isWhole)
  )
    throw new Bug('regions must share out 4x4 to 9x9 cells evenly');
  return { size, boxRows: size, boxColumns: size, regionOf };
}

function layOutGrid(layout: Layout, rules: readonly BoardRule[]): Grid {
  const { size, regionOf } = layout;
  const numbers = Array.from({ length: size }, (_, index) => index);
  const cells = Array.from({ length: size * size }, (_, index) => index as Cell);
  const at = (row: number, column: number) => (row * size + column) as Cell;
  const regionCells = (region: number) => cells.filter((cell) => regionOf[cell] === region);
  const kinds: readonly [HouseKind, string, readonly Cell[][]][] = [
    ['row', 'r', numbers.map((row) => numbers.map((column) => at(row, column)))],
    ['column', 'c', numbers.map((column) => numbers.map((row) => at(row, column)))],
    ['box', 'b', numbers.map(regionCells)],
    ['diagonal', 'd', rules.includes('diagonals') ? diagonalsOf(numbers, at) : []],
  ];
  const houses = kinds.flatMap(([kind, letter, all]) =>
    all.map((own, index) => ({ kind, number: index + 1, name: `${letter}${index + 1}`, cells: own })),
  );
  return tablesOf(
    layout,
    houses.map((shape, index) => ({ house: index as House, ...shape })),
    movesOf(rules),
  );
}

function diagonalsOf(numbers: readonly number[], at: (row: number, column: number) => Cell): Cell[][] {
  return [numbers.map((index) => at(index, index)), numbers.map((index) => at(index, numbers.length - 1 - index))];
}

/** Rows and columns apart, without sign, of two cells that see each other by a rule and not by a house. */
type Move = readonly [rows: number, columns: number];

function movesOf(rules: readonly BoardRule[]): readonly Move[] {
  const knight: readonly Move[] = [
    [1, 2],
    [2, 1],
  ];
  const king: readonly Move[] = [[1, 1]]; // what lies beside a cell is in its row or column already
  return [...(rules.includes('anti-knight') ? knight : []), ...(rules.includes('anti-king') ? king : [])];
}

function tablesOf(layout: Layout, houses: readonly HouseShape[], moves: readonly Move[]): Grid {
  const { size, boxRows, boxColumns } = layout;
  const cells = Array.from({ length: size * size }, (_, index) => index as Cell);
  const housesOf = cells.map((cell) => houses.filter((house) => house.cells.includes(cell)));
  const isMove = (a: Cell, b: Cell) => {
    const rows = Math.abs(Math.floor(a / size) - Math.floor(b / size));
    const columns = Math.abs((a % size) - (b % size));
    return moves.some((move) => move[0] === rows && move[1] === columns);
  };
  const peers = cells.map((cell) => {
    const inHouses = new Set(housesOf[cell]!.flatMap((house) => house.cells));
    return cells.filter((other) => other !== cell && (inHouses.has(other) || isMove(cell, other)));
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
