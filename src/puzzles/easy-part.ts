/**
 * What the easy arguments of a puzzle give, computed fast: a generator runs this for every given that it removes.
 * Nothing here is trusted: the resulting puzzle is planned and proved like any other.
 */
import type { Candidates } from '../grid/candidates.ts';
import { setOf } from '../grid/candidates.ts';
import { bitsIn } from '../grid/counting.ts';
import { type Cell, candidateAt, type Digit, type Grid, type HouseShape } from '../grid/grid.ts';

/** How far the easy part goes. Digits as bits by cell: bit 0 is digit 1. */
export interface Board {
  readonly grid: Grid;
  readonly open: number[];
  /** Whether the cell's digit was written down. */
  readonly written: boolean[];
  /** A cell or a house was left without a digit: the puzzle has no solution, or a true candidate was removed. */
  isBroken: boolean;
}

/** Every digit possible everywhere, except what the givens rule out. */
export function boardOf(grid: Grid, givens: readonly (Digit | undefined)[]): Board {
  const all = 2 ** grid.size - 1;
  const board: Board = {
    grid,
    open: new Array<number>(grid.cellCount).fill(all),
    written: new Array<boolean>(grid.cellCount).fill(false),
    isBroken: false,
  };
  for (const cell of grid.cells) {
    const given = givens[cell];
    if (given !== undefined) write(board, cell, 1 << (given - 1));
  }
  return board;
}

/** Removes a candidate. */
export function rule(board: Board, cell: Cell, digit: Digit): void {
  board.open[cell]! &= ~(1 << (digit - 1));
}

/**
 * Writes digits as long as a cell has one digit left or a digit one place in a house; with `locked`, also uses locked
 * candidates.
 */
export function solveEasyPart(board: Board, { locked }: { readonly locked: boolean }): void {
  while (!board.isBroken && (writeLastDigits(board) || writeLastPlaces(board) || (locked && ruleByLocked(board)))) {
    // Each round writes or rules out something, so this terminates.
  }
}

export function isFull(board: Board): boolean {
  return !board.isBroken && board.written.every((each) => each);
}

/** What is still possible, in the kernel's numbering of candidates. */
export function candidatesOf({ grid, open }: Board): Candidates {
  return setOf(
    grid,
    grid.cells.flatMap((cell) =>
      grid.digits.filter((digit) => (open[cell]! >> (digit - 1)) & 1).map((digit) => candidateAt(grid, cell, digit)),
    ),
  );
}

function write(board: Board, cell: Cell, bit: number): void {
  if ((board.open[cell]! & bit) === 0) board.isBroken = true;
  board.open[cell] = bit;
  board.written[cell] = true;
  for (const peer of board.grid.peers[cell]!) {
    board.open[peer]! &= ~bit;
    if (board.open[peer] === 0) board.isBroken = true;
  }
}

function writeLastDigits(board: Board): boolean {
  let wrote = false;
  for (const cell of board.grid.cells) {
    const open = board.open[cell]!;
    if (board.written[cell] || (open & (open - 1)) !== 0) continue;
    if (open === 0) board.isBroken = true;
    else write(board, cell, open);
    wrote = true;
  }
  return wrote;
}

function writeLastPlaces(board: Board): boolean {
  let wrote = false;
  const all = 2 ** board.grid.size - 1;
  for (const { cells } of board.grid.houses) {
    let [once, twice, done] = [0, 0, 0];
    for (const cell of cells) {
      twice |= once & board.open[cell]!;
      once |= board.open[cell]!;
      if (board.written[cell]) done |= board.open[cell]!;
    }
    if (once !== all) board.isBroken = true;
    for (let rest = once & ~twice & ~done; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const cell = cells.find((each) => (board.open[each]! & bit) !== 0);
      if (cell === undefined) board.isBroken = true;
      else write(board, cell, bit);
      wrote = true;
    }
  }
  return wrote;
}

/** If all places of a digit in a house are in a second house, the digit is removed from the rest of that one. */
function ruleByLocked(board: Board): boolean {
  for (const house of board.grid.houses) {
    for (let bit = 1; bit < 2 ** board.grid.size; bit *= 2) {
      if (ruleOutside(board, house, bit)) return true;
    }
  }
  return false;
}

function ruleOutside(board: Board, house: HouseShape, bit: number): boolean {
  const { grid, open, written } = board;
  const places = house.cells.filter((cell) => (open[cell]! & bit) !== 0);
  const [first] = places;
  if (first === undefined || written[first]) return false;
  let ruled = false;
  for (const other of grid.housesOf[first]!) {
    if (other === house || !places.every((cell) => other.cells.includes(cell))) continue;
    for (const cell of other.cells) {
      if ((open[cell]! & bit) === 0 || places.includes(cell)) continue;
      open[cell]! &= ~bit;
      if (bitsIn(open[cell]!) === 0) board.isBroken = true;
      ruled = true;
    }
  }
  return ruled;
}
