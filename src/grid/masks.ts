/**
 * The grid's tables turned round for the search for solutions: for each digit, its places as bits of a few words.
 *
 * A cell has a place, `32 * word + bit`, the same for every digit; whole bands of boxes share a word (27 cells of 9x9,
 * 32 of 8x8), so that a row or a box is one word and a column a few. The words of digit 1 come first, then those of 2.
 */
import { type Candidate, membersOf } from './candidates.ts';
import { type Cell, candidateAt, cellOf, digitOf, type Grid, type HouseShape } from './grid.ts';

export interface Masks {
  readonly digitCount: number;
  /** Words that hold a bit for each cell. */
  readonly words: number;
  /** By word: the bits that are cells. */
  readonly allCells: Int32Array;
  /** By cell: its place. */
  readonly placeOf: Int32Array;
  /** By place among the words of all digits: the candidate, where there is one. */
  readonly candidates: readonly (Candidate | undefined)[];
  /** What cannot be true together with a candidate, by its place: words of all digits. */
  readonly clashes: Rows;
  /** The cells of each house that holds every digit: words of one digit. */
  readonly houses: Rows;
}

/** Rows of masked words: row `i` takes `starts[i]` up to, not including, `starts[i + 1]` of `words` and `bits`. */
export interface Rows {
  readonly starts: Int32Array;
  readonly words: Int32Array;
  readonly bits: Int32Array;
}

const known = new WeakMap<Grid, Masks>();

/** The masks of a grid; made once, since a grid never changes. */
export function masksOf(grid: Grid): Masks {
  const made = known.get(grid) ?? makeMasks(grid);
  known.set(grid, made);
  return made;
}

function makeMasks(grid: Grid): Masks {
  const band = grid.size * grid.boxRows;
  const cellsInWord = band > 32 ? 32 : Math.floor(32 / band) * band;
  const words = Math.ceil(grid.cellCount / cellsInWord);
  const placeOf = Int32Array.from(grid.cells, (cell) => 32 * Math.floor(cell / cellsInWord) + (cell % cellsInWord));
  const placeAmongAll = (candidate: Candidate) =>
    32 * words * (digitOf(grid, candidate) - 1) + placeOf[cellOf(grid, candidate)]!;
  const candidates = new Array<Candidate | undefined>(32 * words * grid.size).fill(undefined);
  for (const cell of grid.cells) {
    for (const each of grid.digits) {
      const candidate = candidateAt(grid, cell, each);
      candidates[placeAmongAll(candidate)] = candidate;
    }
  }
  const placesOfCells = (cells: readonly Cell[]) => cells.map((cell) => placeOf[cell]!);
  const clashesOf = (candidate: Candidate | undefined) =>
    candidate === undefined ? [] : membersOf(grid.conflicts[candidate]!).map(placeAmongAll);
  const holdsEveryDigit = (house: HouseShape) => house.cells.length === grid.size;
  return {
    digitCount: grid.size,
    words,
    allCells: Int32Array.from({ length: words }, (_, word) => wordOf(placesOfCells(grid.cells), word)),
    placeOf,
    candidates,
    clashes: rowsOf(candidates.map(clashesOf)),
    houses: rowsOf(grid.houses.filter(holdsEveryDigit).map((house) => placesOfCells(house.cells))),
  };
}

/** Places as words with bits, words without any left out. */
function rowsOf(rows: readonly (readonly number[])[]): Rows {
  const starts = [0];
  const words: number[] = [];
  const bits: number[] = [];
  for (const places of rows) {
    for (const word of new Set(places.map((place) => place >> 5))) {
      words.push(word);
      bits.push(wordOf(places, word));
    }
    starts.push(words.length);
  }
  return { starts: Int32Array.from(starts), words: Int32Array.from(words), bits: Int32Array.from(bits) };
}

function wordOf(places: readonly number[], word: number): number {
  return places.filter((place) => place >> 5 === word).reduce((bits, place) => bits | (1 << (place & 31)), 0);
}
