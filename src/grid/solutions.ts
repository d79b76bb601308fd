/**
 * The solutions of a puzzle: all ways to choose one candidate in every cell, free of conflicts.
 *
 * A depth-first search over bit masks. What is forced is taken first (the last digit of a cell, the last place of a
 * digit in a house); then a candidate is tried, from a cell or house with two where there is one. What conflicts and
 * what a house is comes from the grid's tables alone, turned round into `Masks`.
 */
import { bitsIn, type Candidate, type Candidates, difference, noCandidates, setOf, union } from './candidates.ts';
import { candidateAt, candidatesInCell, type Digit, digit, type Grid } from './grid.ts';
import { type Masks, masksOf } from './masks.ts';

/** Every candidate that no given sees, the givens among them. By cell: the given, if there is one. */
export function possibleFrom(grid: Grid, givens: readonly (Digit | undefined)[]): Candidates {
  let seen = noCandidates(grid);
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
  search(grid, possible, most, (solution) => found.push(setOf(grid, solution)));
  return found;
}

/**
 * One branch of the search: by cell, the mask of its digits; after these, by house, the mask of the digits that are
 * settled in it; last, how many cells are settled.
 */
type State = Int32Array;

interface Search {
  readonly masks: Masks;
  readonly most: number;
  readonly report: (state: State) => void;
  found: number;
  /** By depth of the branch; used again for the next branch at that depth. */
  readonly states: State[];
  /** Cells that have come down to one digit and wait to be settled: the first `waiting` entries. */
  readonly singles: Int32Array;
  waiting: number;
  /** Houses that have lost a place since they were looked through, as bits. */
  readonly touched: Int32Array;
}

/** Calls `report` with each solution, until there were `most`; returns how many there were. */
function search(
  grid: Grid,
  possible: Candidates,
  most: number,
  report: ((solution: Candidate[]) => void) | undefined,
): number {
  if (most < 1) return 0;
  const masks = masksOf(grid);
  const first = new Int32Array(masks.cellCount + masks.houseCount + 1);
  const running: Search = {
    masks,
    most,
    report: (state) => report?.(candidatesOf(grid, state)),
    found: 0,
    states: [first],
    singles: new Int32Array(masks.cellCount),
    waiting: 0,
    touched: new Int32Array(masks.houseWords).fill(-1),
  };
  for (let cell = 0; cell < masks.cellCount; cell++) {
    const digits = digitsIn(masks, possible, cell);
    if (digits === 0) return 0;
    first[cell] = digits;
    if (isSingle(digits)) running.singles[running.waiting++] = cell;
  }
  explore(running, 0);
  return running.found;
}

/** The mask of the digits that are possible in a cell: its candidates are neighbours in the set. */
function digitsIn({ size, allDigits }: Masks, possible: Candidates, cell: number): number {
  const bit = cell * size;
  const word = bit >> 5;
  const shift = bit & 31;
  const low = possible[word]! >>> shift;
  // A shift by 32 would be one by 0.
  return (shift + size > 32 ? low | (possible[word + 1]! << (32 - shift)) : low) & allDigits;
}

function candidatesOf(grid: Grid, state: State): Candidate[] {
  return grid.cells.map((cell) => candidateAt(grid, cell, digit(grid, 32 - Math.clz32(state[cell]!))));
}

/** Settles what is forced, tries a digit in a deeper state, rules it out in this one, and so on until nothing is left. */
function explore(running: Search, depth: number): void {
  const { masks, states } = running;
  const state = states[depth]!;
  while (settle(running, state)) {
    if (state[state.length - 1] === masks.cellCount) {
      running.found++;
      running.report(state);
      return;
    }
    const cell = cellToTry(masks, state);
    const tried = state[cell]! & -state[cell]!;
    states[depth + 1] ??= new Int32Array(state.length);
    const deeper = states[depth + 1]!;
    deeper.set(state);
    narrow(running, deeper, cell, tried);
    explore(running, depth + 1);
    if (running.found >= running.most) return;
    narrow(running, state, cell, state[cell]! & ~tried);
  }
}

/** Takes what is forced until nothing is; false where a cell has no digit left, or a digit no place in a house. */
function settle(running: Search, state: State): boolean {
  const { masks, touched } = running;
  for (;;) {
    while (running.waiting > 0) {
      running.waiting--;
      if (!settleCell(running, state, running.singles[running.waiting]!)) return giveUp(running);
    }
    let word = 0;
    while (word < masks.houseWords && touched[word] === 0) word++;
    if (word === masks.houseWords) return true;
    const house = 32 * word + 31 - Math.clz32(touched[word]!);
    touched[word]! ^= 1 << (house & 31);
    if (house < masks.houseCount && !lookThrough(running, state, house)) return giveUp(running);
  }
}

/** Leaves nothing over for the next state. */
function giveUp(running: Search): false {
  running.waiting = 0;
  running.touched.fill(0);
  return false;
}

/** Takes what conflicts with the one digit of the cell out of other cells; false where one has no digit left. */
function settleCell(running: Search, state: State, cell: number): boolean {
  const { size, cellCount, housesOfCell, housesFrom, peers, peersFrom } = running.masks;
  const only = state[cell]!;
  for (let at = housesFrom[cell]!; at < housesFrom[cell + 1]!; at++) state[cellCount + housesOfCell[at]!]! |= only;
  state[state.length - 1]!++;
  const end = peersFrom[cell + 1]!;
  for (let at = peersFrom[cell]!; at < end; at++) {
    const peer = peers[at]!;
    const digits = state[peer]!;
    if ((digits & only) === 0) continue;
    if (digits === only) return false;
    narrow(running, state, peer, digits ^ only);
  }
  return ruleOutClashes(running, state, size * cell + 31 - Math.clz32(only));
}

/** The same for what conflicts with a candidate by further rules. */
function ruleOutClashes(running: Search, state: State, candidate: number): boolean {
  const { clashCells, clashDigits, clashesFrom } = running.masks;
  for (let at = clashesFrom[candidate]!; at < clashesFrom[candidate + 1]!; at++) {
    const digits = state[clashCells[at]!]!;
    const left = digits & ~clashDigits[at]!;
    if (left === digits) continue;
    if (left === 0) return false;
    narrow(running, state, clashCells[at]!, left);
  }
  return true;
}

/** Leaves a cell these of its digits, at least one; the houses that hold it are to be looked through again. */
function narrow(running: Search, state: State, cell: number, digits: number): void {
  const { houseWords, houseBits } = running.masks;
  state[cell] = digits;
  if (isSingle(digits)) running.singles[running.waiting++] = cell;
  for (let word = 0; word < houseWords; word++) running.touched[word]! |= houseBits[cell * houseWords + word]!;
}

/** Narrows cells to digits that have no other place in the house; false where a digit has none at all. */
function lookThrough(running: Search, state: State, house: number): boolean {
  const { size, cellCount, allDigits, cellsOfHouse } = running.masks;
  // Which digits have at least one place, and which at least two: all digits counted at once.
  let once = 0;
  let twice = 0;
  const start = house * size;
  const end = start + size;
  for (let at = start; at < end; at++) {
    const digits = state[cellsOfHouse[at]!]!;
    twice |= once & digits;
    once |= digits;
  }
  if (once !== allDigits) return false;
  for (let rest = once & ~twice & ~state[cellCount + house]!; rest !== 0; rest &= rest - 1) {
    const only = rest & -rest;
    let at = start;
    while (at < end && (state[cellsOfHouse[at]!]! & only) === 0) at++;
    if (at === end) return false; // its cell went to another digit of this round
    narrow(running, state, cellsOfHouse[at]!, only);
  }
  return true;
}

/** An open cell with the fewest digits. */
function cellToTry({ cellCount }: Masks, state: State): number {
  let fewest = 33;
  let found = 0;
  for (let cell = 0; cell < cellCount; cell++) {
    const digits = state[cell]!;
    if (isSingle(digits)) continue;
    const count = bitsIn(digits);
    if (count === 2) return cell;
    if (count >= fewest) continue;
    fewest = count;
    found = cell;
  }
  return found;
}

function isSingle(digits: number): boolean {
  return (digits & (digits - 1)) === 0;
}
