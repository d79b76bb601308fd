/**
 * Weak links between parts of sets: what a part rules out no matter which of its candidates is true.
 */
import { Bug } from '../grid/bug.ts';
import { type Candidate, type Candidates, intersection, isEmpty, isWithin, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { type Cell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';

/** Everything, possible or not, that conflicts with each candidate of the part (which must not be empty). */
export function seenByAll(grid: Grid, part: Candidates): Candidates {
  const [first, ...others] = membersOf(part);
  if (first === undefined) throw new Bug('nothing is seen by a part without candidates');
  return others.reduce((seen, member) => intersection(seen, grid.conflicts[member]!), grid.conflicts[first]!);
}

/** Whether the parts are weakly linked: no candidate of one can be true together with a candidate of the other. */
export function isWeak(grid: Grid, a: Candidates, b: Candidates): boolean {
  return isWithin(b, seenByAll(grid, a));
}

/**
 * Whether the part can be a node of a chain of single digits: one candidate, or one digit in cells that share two
 * houses.
 */
export function isNode(grid: Grid, part: Candidates): boolean {
  if (isEmpty(part)) return false;
  return (
    countOf(part) === 1 || (digitsOf(grid, part).length === 1 && sharedHouses(grid, cellsOf(grid, part)).length > 1)
  );
}

/** The cells of these candidates, each once, in order. */
export function cellsOf(grid: Grid, part: Candidates): Cell[] {
  return distinct(membersOf(part).map((member) => cellOf(grid, member)));
}

/** The digits of these candidates, each once, ascending. */
export function digitsOf(grid: Grid, part: Candidates): Digit[] {
  return distinct(membersOf(part).map((member) => digitOf(grid, member))).sort((a, b) => a - b);
}

/** The candidates of this part that have the digit. */
export function ofDigit(grid: Grid, part: Candidates, digit: Digit): Candidate[] {
  return membersOf(part).filter((member) => digitOf(grid, member) === digit);
}

function distinct<T>(all: readonly T[]): T[] {
  return [...new Set(all)];
}
