/**
 * The arguments that need not be named: singles, and in lists and cascades also locked candidates.
 * Each is one set, and each goes through the kernel like any other.
 */
import { membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { cellOf, digitOf, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type OneOf, type Position, placesIn, prove } from '../proof/kernel.ts';

export type SingleKind = 'full house' | 'naked single' | 'hidden single';

/** Which arguments may be searched for: one kind of single, all singles, locked candidates as well, or only those. */
export type Allowed = SingleKind | 'singles' | 'singles and locked candidates' | 'locked candidates';

/** The simplest set that proves the conclusion on its own, and how many others do. */
export function findSingle(
  position: Position,
  conclusion: Conclusion,
  allowed: Allowed,
): { readonly set: OneOf; readonly others: number } | undefined {
  const proving = candidateSets(position, conclusion, allowed).filter(
    (set) => prove(position, [set], conclusion).kind === 'proved',
  );
  const [set] = proving;
  return set === undefined ? undefined : { set, others: proving.length - 1 };
}

/**
 * The sets to try, the simplest first: a house's last cell, a house's only place (boxes first), a cell's only digit,
 * locked candidates.
 */
function candidateSets(position: Position, conclusion: Conclusion, allowed: Allowed): OneOf[] {
  const { grid } = position;
  const about = conclusion.kind === 'impossible' ? [conclusion.candidate] : membersOf(conclusion.candidates);
  if (conclusion.kind === 'one-of' && about.length !== 1) return [];
  const candidate = about[0]!;
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  const isPlacement = conclusion.kind === 'one-of';
  const cellsToLookAt = isPlacement ? [cell] : [cell, ...grid.peers[cell]!];
  const housesToLookAt = boxesFirst(isPlacement ? grid.housesOf[cell]! : grid.houses);
  const full = housesToLookAt
    .filter((house) => isFullButForOne(position, house))
    .map((house) => placesIn(position, digit, house));
  const places = housesToLookAt.map((house) => placesIn(position, digit, house));
  const otherDigitsHere = isPlacement
    ? []
    : grid.housesOf[cell]!.flatMap((house) => grid.digits.map((other) => placesIn(position, other, house)));
  const hidden = [...places, ...otherDigitsHere].filter((set) => countOf(set.members) === 1);
  const naked = cellsToLookAt.map((each) => digitsIn(position, each)).filter((set) => countOf(set.members) === 1);
  switch (allowed) {
    case 'full house':
      return full;
    case 'hidden single':
      return hidden;
    case 'naked single':
      return naked;
    case 'singles':
      return [...full, ...hidden, ...naked];
    case 'locked candidates':
      return places;
    case 'singles and locked candidates':
      return [...full, ...hidden, ...naked, ...places];
  }
}

function isFullButForOne(position: Position, house: HouseShape): boolean {
  return house.cells.filter((cell) => !isPlaced(position, cell)).length === 1;
}

function boxesFirst(houses: readonly HouseShape[]): HouseShape[] {
  return [...houses].sort((a, b) => Number(b.kind === 'box') - Number(a.kind === 'box'));
}
