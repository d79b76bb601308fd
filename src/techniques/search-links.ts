/**
 * The strong links of a position, each in both directions, with a near and a far end: the input of the search for
 * chains.
 */
import {
  type Candidates,
  difference,
  has,
  intersection,
  isEmpty,
  membersOf,
  setOf,
  union,
} from '../grid/candidates.ts';
import { bitsIn, countOf } from '../grid/counting.ts';
import { candidateAt, candidatesInHouse, cellOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { type CellOneOf, openCells } from './open-cells.ts';
import { cellsOf, digitsOf, isNode, ofDigit } from './seen-by-all.ts';
import type { StrungLink } from './strung-chains.ts';

/** An almost locked set of a position; a cell of two digits is the smallest. */
export interface AlmostLocked {
  readonly sets: readonly CellOneOf[];
  readonly members: Candidates;
  /** The places of each of its digits, by digit. */
  readonly parts: readonly Candidates[];
}

/** Cells of two digits. */
export function bivalueLinks(position: Position): StrungLink[] {
  return openCells(position)
    .filter((set) => countOf(set.members) === 2)
    .flatMap((set) => bothWays(position.grid, set));
}

/** Houses where a digit has two places, each pair of places once. */
export function bilocalLinks(position: Position): StrungLink[] {
  const { grid } = position;
  const shown = new Set<string>();
  return openPlaces(position).flatMap((set) => {
    const key = membersOf(set.members).join();
    if (countOf(set.members) !== 2 || shown.has(key)) return [];
    shown.add(key);
    return bothWays(grid, set);
  });
}

/** Houses where the places of a digit make two nodes, at least one of them a group. */
export function groupedLinks(position: Position): StrungLink[] {
  const { grid } = position;
  return openPlaces(position).flatMap((set) => {
    if (countOf(set.members) < 3 || set.source.kind !== 'places') return [];
    return groupsIn(grid, set).map(
      (near): StrungLink => ({ shape: 'set', sets: [set], near, far: difference(set.members, near) }),
    );
  });
}

/** Almost locked sets of two or more cells, and cells of two digits, as links between any two of their digits. */
export function lockedLinks(position: Position, mostCells: number): StrungLink[] {
  return almostLockedSets(position, mostCells).flatMap(({ sets, parts }) => {
    const shape = sets.length === 1 ? 'set' : 'almost locked';
    return parts.flatMap((near) =>
      parts.filter((far) => far !== near).map((far): StrungLink => ({ shape, sets, near, far })),
    );
  });
}

/** The almost locked sets of up to `mostCells` cells, those with the fewest cells first, each choice of cells once. */
export function almostLockedSets(position: Position, mostCells: number): readonly AlmostLocked[] {
  const bySize = knownLocked.get(position) ?? new Map<number, readonly AlmostLocked[]>();
  knownLocked.set(position, bySize);
  const made = bySize.get(mostCells) ?? makeAlmostLocked(position, mostCells);
  bySize.set(mostCells, made);
  return made;
}

/** Computed once, since a position never changes. */
const knownLocked = new WeakMap<Position, Map<number, readonly AlmostLocked[]>>();

function makeAlmostLocked(position: Position, mostCells: number): readonly AlmostLocked[] {
  const { grid } = position;
  const found = new Map<string, AlmostLocked>();
  for (const house of grid.houses) {
    const open = openCells(position)
      .filter((set) => house.cells.includes(set.source.cell))
      .map((set) => ({ set, mask: maskOf(position, set) }));
    for (let size = 1; size <= Math.min(mostCells, open.length - 1); size++) {
      for (const choice of combinations(open, size)) {
        if (bitsIn(choice.reduce((mask, each) => mask | each.mask, 0)) !== size + 1) continue;
        const sets = choice.map((each) => each.set);
        const key = sets.map((set) => set.source.cell).join();
        if (!found.has(key)) found.set(key, almostLocked(grid, sets));
      }
    }
  }
  return [...found.values()].sort((a, b) => a.sets.length - b.sets.length);
}

/** The digits of a cell, digit 1 in the lowest bit. */
export function maskOf({ grid, possible }: Position, { source: { cell } }: CellOneOf): number {
  return grid.digits.reduce(
    (mask, digit) => (has(possible, candidateAt(grid, cell, digit)) ? mask | (1 << (digit - 1)) : mask),
    0,
  );
}

function almostLocked(grid: Grid, sets: readonly CellOneOf[]): AlmostLocked {
  const members = sets.map((set) => set.members).reduce(union);
  return { sets, members, parts: digitsOf(grid, members).map((digit) => setOf(grid, ofDigit(grid, members, digit))) };
}

/** The places of each digit in each house where it is not placed yet. */
function openPlaces(position: Position): OneOf[] {
  const { grid } = position;
  return grid.digits.flatMap((digit) =>
    grid.houses
      .map((house) => placesIn(position, digit, house))
      .filter(({ members }) => countOf(members) > 1 || !isPlaced(position, cellOf(grid, membersOf(members)[0]!))),
  );
}

function bothWays(grid: Grid, set: OneOf): StrungLink[] {
  const [a, b] = membersOf(set.members).map((member) => setOf(grid, [member]));
  if (a === undefined || b === undefined) return [];
  return [
    { shape: 'set', sets: [set], near: a, far: b },
    { shape: 'set', sets: [set], near: b, far: a },
  ];
}

/**
 * The parts of the places that are nodes and leave a node: what also lies in another house, what does not, single
 * places, and the rest.
 */
function groupsIn(grid: Grid, set: OneOf): Candidates[] {
  const found = new Map<string, Candidates>();
  const offer = (part: Candidates) => {
    const rest = difference(set.members, part);
    if (isEmpty(part) || isEmpty(rest) || !isNode(grid, part) || !isNode(grid, rest)) return;
    found.set(membersOf(part).join(), part);
    found.set(membersOf(rest).join(), rest);
  };
  for (const member of membersOf(set.members)) offer(setOf(grid, [member]));
  for (const house of housesMet(grid, set.members)) {
    offer(intersection(set.members, setOf(grid, candidatesInHouse(grid, digitsOf(grid, set.members)[0]!, house))));
  }
  return [...found.values()];
}

function housesMet(grid: Grid, members: Candidates): Set<HouseShape> {
  return new Set(cellsOf(grid, members).flatMap((cell) => grid.housesOf[cell]!));
}
