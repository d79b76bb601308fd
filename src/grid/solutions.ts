/**
 * The solutions of a puzzle: all ways to choose one candidate in every cell, free of conflicts.
 *
 * A depth-first search over bit masks. What is forced is taken first (the last digit of a cell, the last place of a
 * digit in a house); then a candidate is tried, from a cell or house with two where there is one. What conflicts and
 * what a house is comes from the grid's tables alone, turned round into `Masks`.
 */
import { type Candidate, type Candidates, difference, membersOf, noCandidates, setOf, union } from './candidates.ts';
import { candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from './grid.ts';
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

/** One branch: the places of each digit, `words` words a digit, and after them the cells that are settled. */
type State = Int32Array;

/** Calls `report` with each solution, until there were `most`; returns how many there were. */
function search(
  grid: Grid,
  possible: Candidates,
  most: number,
  report: ((solution: Candidate[]) => void) | undefined,
): number {
  const masks = masksOf(grid);
  const states: State[] = [stateOf(grid, masks, possible)];
  let found = 0;
  let depth = 0;
  while (depth >= 0 && found < most) {
    const state = states[depth]!;
    if (!settle(masks, state)) {
      depth--;
    } else if (isSettled(masks, state)) {
      found++;
      report?.(candidatesOf(masks, state));
      depth--;
    } else {
      // The candidate is tried in the next state, and ruled out in this one, which is taken up again after it.
      const place = placeToTry(masks, state);
      depth++;
      states[depth] ??= new Int32Array(state.length);
      states[depth]!.set(state);
      take(masks, states[depth]!, place);
      state[place >> 5]! &= ~(1 << (place & 31));
    }
  }
  return found;
}

function stateOf(grid: Grid, masks: Masks, possible: Candidates): State {
  const state = new Int32Array((masks.digitCount + 1) * masks.words);
  for (const candidate of membersOf(possible)) {
    const place = masks.placeOf[cellOf(grid, candidate)]!;
    state[(digitOf(grid, candidate) - 1) * masks.words + (place >> 5)]! |= 1 << (place & 31);
  }
  return state;
}

function candidatesOf(masks: Masks, state: State): Candidate[] {
  return masks.candidates.filter(
    (candidate, place): candidate is Candidate =>
      candidate !== undefined && ((state[place >> 5]! >>> (place & 31)) & 1) === 1,
  );
}

function isSettled(masks: Masks, state: State): boolean {
  const settled = masks.digitCount * masks.words;
  for (let word = 0; word < masks.words; word++) if (state[settled + word] !== masks.allCells[word]) return false;
  return true;
}

/** Settles a cell on a digit: the candidate at this place, and nothing that conflicts with it. */
function take(masks: Masks, state: State, place: number): void {
  const { starts, words, bits } = masks.clashes;
  for (let clash = starts[place]!; clash < starts[place + 1]!; clash++) state[words[clash]!]! &= ~bits[clash]!;
  const settled = masks.digitCount * masks.words + ((place >> 5) % masks.words);
  state[settled]! |= 1 << (place & 31);
}

/** Takes what is forced until nothing is; false where a cell has no digit left, or a digit no place in a house. */
function settle(masks: Masks, state: State): boolean {
  for (;;) {
    const inCells = takeLastDigits(masks, state);
    if (inCells === 'clash') return false;
    if (inCells === 'taken') continue;
    const inHouses = takeLastPlaces(masks, state);
    if (inHouses === 'clash') return false;
    if (inHouses === 'none') return true;
  }
}

type Forced = 'taken' | 'none' | 'clash';

/** Settles the cells that have one digit left. */
function takeLastDigits(masks: Masks, state: State): Forced {
  const { digitCount, words } = masks;
  const settled = digitCount * words;
  let outcome: Forced = 'none';
  for (let word = 0; word < words; word++) {
    // Which cells have at least one digit, and which at least two: a count in two bits for all cells at once.
    let once = 0;
    let twice = 0;
    for (let at = word; at < settled; at += words) {
      twice |= once & state[at]!;
      once |= state[at]!;
    }
    if (once !== masks.allCells[word]) return 'clash';
    for (let rest = once & ~twice & ~state[settled + word]!; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      let at = word;
      while (at < settled && (state[at]! & bit) === 0) at += words;
      if (at >= settled) return 'clash'; // its digit went to another cell of this round
      take(masks, state, 32 * at + 31 - Math.clz32(bit));
      outcome = 'taken';
    }
  }
  return outcome;
}

/** Settles the last places of digits in houses. */
function takeLastPlaces(masks: Masks, state: State): Forced {
  const { digitCount, words, houses } = masks;
  const settled = digitCount * words;
  let outcome: Forced = 'none';
  for (let first = 0; first < settled; first += words) {
    for (let house = 0; house + 1 < houses.starts.length; house++) {
      let only = 0;
      let word = 0;
      let several = false;
      for (let part = houses.starts[house]!; part < houses.starts[house + 1]!; part++) {
        const places = state[first + houses.words[part]!]! & houses.bits[part]!;
        if (places === 0) continue;
        several = only !== 0 || (places & (places - 1)) !== 0;
        if (several) break;
        only = places;
        word = houses.words[part]!;
      }
      if (several) continue;
      if (only === 0) return 'clash';
      if ((state[settled + word]! & only) !== 0) continue;
      take(masks, state, 32 * (first + word) + 31 - Math.clz32(only));
      outcome = 'taken';
    }
  }
  return outcome;
}

/** A candidate of an open cell with the fewest digits. */
function placeToTry(masks: Masks, state: State): number {
  const { digitCount, words } = masks;
  const settled = digitCount * words;
  let fewest = digitCount + 1;
  let found = 0;
  for (let word = 0; word < words; word++) {
    for (let rest = masks.allCells[word]! & ~state[settled + word]!; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      let count = 0;
      let last = 0;
      for (let at = word; at < settled; at += words) {
        if ((state[at]! & bit) === 0) continue;
        count++;
        last = at;
      }
      if (count >= fewest) continue;
      fewest = count;
      found = 32 * last + 31 - Math.clz32(bit);
      if (count === 2) return found;
    }
  }
  return found;
}
