/**
 * The solutions of a puzzle: all ways to choose one candidate in every cell, free of conflicts.
 *
 * A depth-first search over bit masks. What is forced is settled first (the last digit of a cell, the last place of a
 * digit in a house); then a digit is tried in a cell that has the fewest. What conflicts and what a house is comes from
 * the grid's tables alone, laid out flat in `Masks`.
 */
import { type Candidates, difference, setOf, union } from './candidates.ts';
import { bitsIn, wordsIn } from './counting.ts';
import { digit } from './geometry.ts';
import { candidateAt, candidatesInCell, type Digit, type Grid } from './grid.ts';
import { type Masks, masksOf } from './masks.ts';

/** Every candidate that no given sees, the givens among them. By cell: the given, if there is one. */
export function possibleFrom(grid: Grid, givens: readonly (Digit | undefined)[]): Candidates {
  let seen = setOf(grid, []);
  for (const cell of grid.cells) {
    const given = givens[cell];
    if (given !== undefined) seen = union(seen, grid.conflicts[candidateAt(grid, cell, given)]!);
  }
  const all = grid.cells.flatMap((cell) => candidatesInCell(grid, cell));
  return difference(setOf(grid, all), seen);
}

/** How many solutions the possible candidates allow, counted up to `most`. */
export function countSolutions(grid: Grid, possible: Candidates, most: number): number {
  return search(grid, possible, most, undefined);
}

/** The solutions that the possible candidates allow, each as its true candidates; up to `most`, in no promised order. */
export function solutionsOf(grid: Grid, possible: Candidates, most: number): Candidates[] {
  const found: Candidates[] = [];
  search(grid, possible, most, ({ digits }) => {
    const chosen = grid.cells.map((cell) => candidateAt(grid, cell, digit(grid, 1 + lowest(digits[cell]!))));
    found.push(setOf(grid, chosen));
  });
  return found;
}

/** One branch of the search. Plain arrays of small numbers: they are copied as fast as typed ones and made faster. */
interface State {
  /** By cell: the mask of its digits. */
  readonly digits: number[];
  /** By digit from 0: the cells that still have it, as bits, `cellWords` words a digit. */
  readonly places: number[];
  /** By house: the mask of the digits that are settled in it. */
  readonly settledIn: number[];
  settledCells: number;
}

interface Search {
  readonly masks: Masks;
  readonly most: number;
  readonly report: ((solution: State) => void) | undefined;
  found: number;
  /** Cells that have come down to one digit and wait to be settled. */
  readonly singles: number[];
  /** Houses that have lost a place since they were looked through, as bits. */
  readonly touched: number[];
}

/** Calls `report` with each solution, until there were `most`; returns how many there were. */
function search(grid: Grid, possible: Candidates, most: number, report: Search['report']): number {
  const masks = masksOf(grid);
  const running: Search = { masks, most, report, found: 0, singles: [], touched: [...masks.allHouses] };
  const first = firstState(running, possible);
  if (first !== undefined && most > 0) explore(running, first);
  return running.found;
}

/** What is possible as masks; undefined where a cell has nothing. */
function firstState({ masks, singles }: Search, possible: Candidates): State | undefined {
  const { size, cellCount, cellWords, houseCount } = masks;
  const digits = new Array<number>(cellCount).fill(0);
  const places = new Array<number>(size * cellWords).fill(0);
  const words = wordsIn(possible);
  for (let cell = 0; cell < cellCount; cell++) {
    const ofCell = digitsIn(masks, words, cell);
    if (ofCell === 0) return undefined;
    if (isSingle(ofCell)) singles.push(cell);
    digits[cell] = ofCell;
    for (let rest = ofCell; rest !== 0; rest &= rest - 1) {
      places[lowest(rest) * cellWords + (cell >> 5)]! |= 1 << (cell & 31);
    }
  }
  return { digits, places, settledIn: new Array<number>(houseCount).fill(0), settledCells: 0 };
}

/** The mask of the digits that are possible in a cell: its candidates are neighbours in the set. */
function digitsIn({ size, allDigits }: Masks, possible: readonly number[], cell: number): number {
  const bit = cell * size;
  const word = bit >> 5;
  const shift = bit & 31;
  const low = possible[word]! >>> shift;
  const reachesOver = shift + size > 32; // only then shift is not 0, and 32 - shift not 32, which would shift by 0
  return (reachesOver ? low | (possible[word + 1]! << (32 - shift)) : low) & allDigits;
}

/** Settles what is forced, tries a digit in a copy, rules it out here, and so on until nothing is left. */
function explore(running: Search, state: State): void {
  while (settle(running, state)) {
    if (state.settledCells === running.masks.cellCount) {
      running.found++;
      running.report?.(state);
      return;
    }
    const cell = cellToTry(state);
    const digits = state.digits[cell]!;
    const tried = digits & -digits;
    const copy = {
      digits: state.digits.slice(),
      places: state.places.slice(),
      settledIn: state.settledIn.slice(),
      settledCells: state.settledCells,
    };
    narrow(running, copy, cell, tried);
    explore(running, copy);
    if (running.found >= running.most) return;
    narrow(running, state, cell, digits ^ tried);
  }
}

/** Settles what is forced until nothing is; false where a cell has no digit left, or a digit no place in a house. */
function settle(running: Search, state: State): boolean {
  for (;;) {
    while (running.singles.length > 0) {
      if (!settleCell(running, state, running.singles.pop()!)) return giveUp(running);
    }
    const house = nextTouched(running);
    if (house === undefined) return true;
    if (!lookThrough(running, state, house)) return giveUp(running);
  }
}

/** Leaves nothing over for the next state. */
function giveUp({ singles, touched }: Search): false {
  singles.length = 0;
  touched.fill(0);
  return false;
}

/** A house that is to be looked through, no longer marked as such. */
function nextTouched({ touched }: Search): number | undefined {
  for (let word = 0; word < touched.length; word++) {
    const bits = touched[word]!;
    if (bits === 0) continue;
    touched[word] = bits & (bits - 1);
    return 32 * word + lowest(bits);
  }
  return undefined;
}

/** Takes what conflicts with the one digit of the cell out of other cells; false where one has no digit left. */
function settleCell(running: Search, state: State, cell: number): boolean {
  const { size, housesOfCell, housesFrom, cellWords, peerBits } = running.masks;
  const only = state.digits[cell]!;
  const digit = lowest(only);
  for (let at = housesFrom[cell]!; at < housesFrom[cell + 1]!; at++) state.settledIn[housesOfCell[at]!]! |= only;
  state.settledCells++;
  for (let word = 0; word < cellWords; word++) {
    const lost = state.places[digit * cellWords + word]! & peerBits[cell * cellWords + word]!;
    state.places[digit * cellWords + word]! ^= lost;
    for (let rest = lost; rest !== 0; rest &= rest - 1) {
      const peer = 32 * word + lowest(rest);
      const left = state.digits[peer]! ^ only;
      if (left === 0) return false;
      leave(running, state, peer, left);
    }
  }
  return ruleOutClashes(running, state, size * cell + digit);
}

/** The same for what conflicts with a candidate by further rules. */
function ruleOutClashes(running: Search, state: State, candidate: number): boolean {
  const { clashCells, clashDigits, clashesFrom } = running.masks;
  for (let at = clashesFrom[candidate]!; at < clashesFrom[candidate + 1]!; at++) {
    const digits = state.digits[clashCells[at]!]!;
    const left = digits & ~clashDigits[at]!;
    if (left === digits) continue;
    if (left === 0) return false;
    narrow(running, state, clashCells[at]!, left);
  }
  return true;
}

/** Takes the cell out of the places of all digits but these, at least one of those it has, and leaves it these. */
function narrow(running: Search, state: State, cell: number, digits: number): void {
  const { cellWords } = running.masks;
  for (let rest = state.digits[cell]! ^ digits; rest !== 0; rest &= rest - 1) {
    state.places[lowest(rest) * cellWords + (cell >> 5)]! &= ~(1 << (cell & 31));
  }
  leave(running, state, cell, digits);
}

/** Leaves a cell these digits; the houses that hold it are to be looked through again. */
function leave({ masks, singles, touched }: Search, state: State, cell: number, digits: number): void {
  state.digits[cell] = digits;
  if (isSingle(digits)) singles.push(cell);
  for (let word = 0; word < touched.length; word++) touched[word]! |= masks.houseBits[cell * touched.length + word]!;
}

/** Narrows cells to digits that have no other place in the house; false where a digit has none at all. */
function lookThrough(running: Search, state: State, house: number): boolean {
  const { size, allDigits, cellsOfHouse } = running.masks;
  // Which digits have at least one place, and which at least two: all digits counted at once.
  let once = 0;
  let twice = 0;
  const start = house * size;
  const end = start + size;
  for (let at = start; at < end; at++) {
    const digits = state.digits[cellsOfHouse[at]!]!;
    twice |= once & digits;
    once |= digits;
  }
  if (once !== allDigits) return false;
  for (let rest = once & ~twice & ~state.settledIn[house]!; rest !== 0; rest &= rest - 1) {
    const only = rest & -rest;
    let at = start;
    while (at < end && (state.digits[cellsOfHouse[at]!]! & only) === 0) at++;
    if (at === end) return false; // its cell went to another digit just now
    narrow(running, state, cellsOfHouse[at]!, only);
  }
  return true;
}

/** The first cell with two digits, else one with the fewest above one. */
function cellToTry({ digits }: State): number {
  let fewest = Number.POSITIVE_INFINITY;
  let found = 0;
  for (let cell = 0; cell < digits.length; cell++) {
    if (isSingle(digits[cell]!)) continue;
    const count = bitsIn(digits[cell]!);
    if (count === 2) return cell;
    if (count >= fewest) continue;
    fewest = count;
    found = cell;
  }
  return found;
}

/** The number of the lowest bit, from 0. */
function lowest(bits: number): number {
  return 31 - Math.clz32(bits & -bits);
}

/** Whether a mask with at least one digit has no more. */
function isSingle(digits: number): boolean {
  return (digits & (digits - 1)) === 0;
}
