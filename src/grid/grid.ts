/**
 * The geometry of a board as data: cells, houses, and which candidates conflict.
 *
 * Nothing outside this file knows how houses lie; all else reads the tables. A board with regions of other shapes or with
 * further rules is another set of tables, not other code.
 */
import type { BoardPlan, Cell, Digit, Grid, House, HouseKind, HouseShape } from './board.ts';
import { Bug } from './bug.ts';
import { type Candidate, setOf } from './candidates.ts';

export type { BoardPlan, Cell, Digit, Grid, House, HouseKind, HouseShape };

/** Box shapes that can be laid out, `rows x columns` as in `puzzle.boxes`. */
export const boxShapes = Object.freeze(['2x2', '2x3', '2x4', '3x3'] as const);
export type BoxShape = (typeof boxShapes)[number];

/**
 * Rules beyond rows, columns and boxes: the two main diagonals hold every digit once (houses d1, from the top left, and d2,
 * from the top right); no digit stands twice a chess knight's move apart; none a chess king's move apart.
 */
export const boardRules = Object.freeze(['diagonals', 'anti-knight', 'anti-king'] as const);
export type BoardRule = (typeof boardRules)[number];

const laidOut = new Map<string, Grid>();

/** The ordinary board with boxes of this shape; the same object each time, since it never changes. */
export function gridOf(boxes: BoxShape): Grid {
  return gridWith({ regions: boxes, rules: [] });
}

/** The board of this plan; the same object each time. What is handed in is copied, what comes out is frozen to the last word. */
export function gridWith({ regions, rules }: BoardPlan): Grid {
  const layout = typeof regions === 'string' ? boxed(regions) : drawn([...regions]);
  const own = boardRules.filter((rule) => rules.includes(rule));
  const key = [layout.boxRows, layout.boxColumns, ...layout.regionOf, ...own].join(' ');
  const grid = laidOut.get(key) ?? layOutGrid(layout, own);
  laidOut.set(key, grid);
  return grid;
}

/** Whether this very grid came from here: a copy, or tables made by hand, can say what they like. */
export function isLaidOut(grid: Grid): boolean {
  return [...laidOut.values()].includes(grid);
}

/** The candidate that this digit is in this cell. */
export function candidateAt(grid: Pick<Grid, 'size'>, cell: Cell, of: Digit): Candidate {
  return (cell * grid.size + of - 1) as Candidate;
}

/** The cell of a candidate. */
export function cellOf(grid: Grid, candidate: Candidate): Cell {
  return Math.floor(candidate / grid.size) as Cell;
}

/** The digit of a candidate. */
export function digitOf(grid: Grid, candidate: Candidate): Digit {
  return ((candidate % grid.size) + 1) as Digit;
}

/** All candidates of a cell, possible or not. (Frozen arrays are slow to `map`, and this is asked for over and over.) */
export function candidatesInCell(grid: Grid, cell: Cell): Candidate[] {
  if (grid.cells[cell] !== cell) throw new Bug(`${cell} is not a cell of this grid`);
  const all: Candidate[] = [];
  for (const each of grid.digits) all.push(candidateAt(grid, cell, each));
  return all;
}

/** A digit in each cell of a house, possible or not. */
export function candidatesInHouse(grid: Grid, of: Digit, house: HouseShape): Candidate[] {
  const all: Candidate[] = [];
  for (const cell of house.cells) all.push(candidateAt(grid, cell, of));
  return all;
}

type Layout = Pick<Grid, 'size' | 'boxRows' | 'boxColumns'> & {
  /** By cell: the number of its box or region, from 0. */
  readonly regionOf: readonly number[];
};

function boxed(shape: BoxShape): Layout {
  if (!boxShapes.includes(shape)) throw new Bug(`boxes of ${shape} cannot be laid out`);
  const [boxRows, boxColumns] = shape.split('x').map(Number) as [number, number];
  const size = boxRows * boxColumns;
  const regionOf = numbersTo(size * size).map((cell) => {
    const [row, column] = [Math.floor(cell / size), cell % size];
    return Math.floor(row / boxRows) * boxRows + Math.floor(column / boxColumns); // as many boxes across as a box has rows
  });
  return { size, boxRows, boxColumns, regionOf };
}

function drawn(regionOf: readonly number[]): Layout {
  const size = Math.sqrt(regionOf.length);
  const isWhole = (region: number) => regionOf.filter((each) => each === region).length === size;
  if (!Number.isInteger(size) || size < 4 || size > 9 || !numbersTo(size).every(isWhole))
    throw new Bug('regions must share out 4x4 to 9x9 cells evenly');
  return { size, boxRows: size, boxColumns: size, regionOf };
}

function layOutGrid({ size, boxRows, boxColumns, regionOf }: Layout, rules: readonly BoardRule[]): Grid {
  const cells = numbersTo(size * size) as Cell[];
  const digits = numbersTo(size).map((index) => index + 1) as Digit[];
  const houses = housesOn(size, regionOf, rules);
  const housesOf = cells.map((cell) => houses.filter((house) => house.cells.includes(cell)));
  const peers = cells.map((cell) => {
    const inHouses = new Set(housesOf[cell]!.flatMap((house) => house.cells));
    return cells.filter((other) => other !== cell && (inHouses.has(other) || isMove(size, rules, cell, other)));
  });
  const [cellCount, candidateCount] = [cells.length, cells.length * size];
  const tables = { size, boxRows, boxColumns, cellCount, candidateCount, cells, digits, houses, housesOf, peers };
  const conflictsOf = (cell: Cell, own: Digit) => {
    const others = digits.filter((other) => other !== own).map((other) => candidateAt(tables, cell, other));
    return setOf(tables, [...others, ...peers[cell]!.map((peer) => candidateAt(tables, peer, own))]);
  };
  const conflicts = cells.flatMap((cell) => digits.map((own) => conflictsOf(cell, own)));
  return Object.freeze({ ...frozen(tables), conflicts: Object.freeze(conflicts) });
}

function housesOn(size: number, regionOf: readonly number[], rules: readonly BoardRule[]): HouseShape[] {
  const cells = numbersTo(size * size) as Cell[];
  const row = (cell: Cell) => Math.floor(cell / size);
  const column = (cell: Cell) => cell % size;
  const isOnDiagonal = (cell: Cell, index: number) =>
    row(cell) === (index === 0 ? column(cell) : size - 1 - column(cell));
  const kinds: readonly (readonly [HouseKind, count: number, holds: (cell: Cell, index: number) => boolean])[] = [
    ['row', size, (cell, index) => row(cell) === index],
    ['column', size, (cell, index) => column(cell) === index],
    ['box', size, (cell, index) => regionOf[cell] === index],
    ['diagonal', rules.includes('diagonals') ? 2 : 0, isOnDiagonal],
  ];
  const shapes = kinds.flatMap(([kind, count, holds]) =>
    numbersTo(count).map((index) => ({
      kind,
      number: index + 1,
      name: `${kind[0]}${index + 1}`,
      cells: cells.filter((cell) => holds(cell, index)),
    })),
  );
  return shapes.map((shape, house) => ({ house: house as House, ...shape }));
}

/** Whether two cells see each other by a rule; what lies beside a cell is in its row or column already. */
function isMove(size: number, rules: readonly BoardRule[], a: Cell, b: Cell): boolean {
  const rows = Math.abs(Math.floor(a / size) - Math.floor(b / size));
  const columns = Math.abs((a % size) - (b % size));
  if (rules.includes('anti-king') && rows === 1 && columns === 1) return true;
  return rules.includes('anti-knight') && rows * columns === 2;
}

function numbersTo(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index);
}

/** The same value, frozen with everything in it. */
function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  for (const part of Object.values(value)) frozen(part);
  return Object.freeze(value);
}
