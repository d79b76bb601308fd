/**
 * The grid's tables as flat arrays for the search for solutions, which meets them some thousand times a puzzle.
 * A digit is a bit, the lowest for digit 1; the digits of a cell are a mask of such bits.
 */
import { type Candidate, membersOf } from './candidates.ts';
import { sees } from './geometry.ts';
import { candidatesInCell, cellOf, digitOf, type Grid } from './grid.ts';

export interface Masks {
  readonly size: number;
  readonly cellCount: number;
  /** The mask of all digits. */
  readonly allDigits: number;
  /** Number of houses that hold every digit; numbered here from 0 among themselves. */
  readonly houseCount: number;
  /** By house: its cells, `size` a house. */
  readonly cellsOfHouse: Int32Array;
  /** By cell: the houses that hold it, from `housesFrom[cell]` to `housesFrom[cell + 1]`, the end not included. */
  readonly housesOfCell: Int32Array;
  readonly housesFrom: Int32Array;
  /** All houses as bits, in as few words as hold one for each. */
  readonly allHouses: readonly number[];
  /** By cell: the same houses as bits, as many words a cell. */
  readonly houseBits: Int32Array;
  /** Words that hold a bit for each cell. */
  readonly cellWords: number;
  /** By cell: the cells that cannot hold the same digit, as bits, `cellWords` words a cell. */
  readonly peerBits: Int32Array;
  /** By candidate: what else conflicts with it, as other cells with masks of their digits; empty for ordinary rules. */
  readonly clashCells: Int32Array;
  readonly clashDigits: Int32Array;
  readonly clashesFrom: Int32Array;
}

const known = new WeakMap<Grid, Masks>();

/** The masks of a grid; made once, since a grid never changes. */
export function masksOf(grid: Grid): Masks {
  const made = known.get(grid) ?? makeMasks(grid);
  known.set(grid, made);
  return made;
}

function makeMasks(grid: Grid): Masks {
  const houses = grid.houses.filter((house) => house.cells.length === grid.size);
  const housesOf = grid.cells.map((cell) => [...houses.keys()].filter((index) => houses[index]!.cells.includes(cell)));
  const cellWords = Math.ceil(grid.cellCount / 32);
  const houseWords = Math.ceil(houses.length / 32);
  const clashes = grid.cells.flatMap((cell) =>
    candidatesInCell(grid, cell).map((candidate) => clashesOf(grid, candidate)),
  );
  return {
    size: grid.size,
    cellCount: grid.cellCount,
    allDigits: (1 << grid.size) - 1,
    houseCount: houses.length,
    cellsOfHouse: Int32Array.from(houses.flatMap((house) => house.cells)),
    housesOfCell: Int32Array.from(housesOf.flat()),
    housesFrom: startsOf(housesOf),
    allHouses: bitsOf([...houses.keys()], houseWords),
    houseBits: Int32Array.from(housesOf.flatMap((numbers) => bitsOf(numbers, houseWords))),
    cellWords,
    peerBits: Int32Array.from(grid.peers.flatMap((peers) => bitsOf(peers, cellWords))),
    clashCells: Int32Array.from(clashes.flatMap((row) => row.map(([cell]) => cell))),
    clashDigits: Int32Array.from(clashes.flatMap((row) => row.map(([, digits]) => digits))),
    clashesFrom: startsOf(clashes),
  };
}

/** What conflicts with the candidate beyond its own cell and its digit in the peers. */
function clashesOf(grid: Grid, candidate: Candidate): [cell: number, digits: number][] {
  const own = cellOf(grid, candidate);
  const digits = new Map<number, number>();
  for (const other of membersOf(grid.conflicts[candidate]!)) {
    const cell = cellOf(grid, other);
    const isCopyInPeer = digitOf(grid, other) === digitOf(grid, candidate) && sees(grid, own, cell);
    if (cell === own || isCopyInPeer) continue;
    digits.set(cell, (digits.get(cell) ?? 0) | (1 << (digitOf(grid, other) - 1)));
  }
  return [...digits];
}

/** These numbers as bits of so many words, 32 to a word, 0 lowest. */
function bitsOf(numbers: readonly number[], words: number): number[] {
  const bits = new Array<number>(words).fill(0);
  for (const number of numbers) bits[number >> 5]! |= 1 << (number & 31);
  return bits;
}

/** Where each row begins when the rows are laid end to end, and the end of the last. */
function startsOf(rows: readonly (readonly unknown[])[]): Int32Array {
  const starts = [0];
  for (const row of rows) starts.push(starts.at(-1)! + row.length);
  return Int32Array.from(starts);
}
