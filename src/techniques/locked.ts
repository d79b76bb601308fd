/**
 * Locked candidates: all places of a digit in one house also lie in a second house, and remove the digit from the rest
 * of that one. Pointing: from a box along a line (a pair has two places, a triple three). Claiming: from a line into a
 * box.
 *
 * Most people use "box-line reduction" for claiming, some for both; for pointing it is accepted with a warning. "Locked
 * candidates" covers both, and also what additional rules of a board allow.
 */
import { difference, isEmpty } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import type { Grid, HouseKind } from '../grid/grid.ts';
import { type Position, placesIn } from '../proof/kernel.ts';
import { fits, forEachConclusion, loosely } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { cellsOf, seenByAll } from './seen-by-all.ts';
import { type PlacesSet, readAsPlaces } from './set-reading.ts';
import { type Instance, type Recognition, type Shape, technique } from './technique.ts';

const lines: readonly HouseKind[] = ['row', 'column'];

export const lockedCandidates = technique({
  name: 'locked candidates',
  plural: 'locked candidates',
  otherNames: ['locked candidate', 'intersection removal'],
  family: 'locked candidates',
  kindOf: [],
  teaching: {
    place: 1040,
    cost: 1,
    note: 'What is neither: four places in one box of a larger board, and what a diagonal or a further rule of a board adds.',
  },
  isOffered: false,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals', hasOnlyKinds: true },
  recognise: (shape) => (lockedSet(shape) === undefined ? undefined : fits),
  find: (position) => findLocked(position, ['box', ...lines, 'diagonal'], () => true),
});
export const pointingPair = technique({
  name: 'pointing pair',
  plural: 'pointing pairs',
  otherNames: [],
  family: 'locked candidates',
  kindOf: ['pointing'],
  teaching: { place: 1010, cost: 1 },
  isOffered: true,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals' },
  recognise: (shape) => recognisePointing(shape, 2),
  find: (position) => findLocked(position, ['box'], (set) => isPointing(position, set, 2)),
});
export const pointingTriple = technique({
  name: 'pointing triple',
  plural: 'pointing triples',
  otherNames: ['pointing triplet'],
  family: 'locked candidates',
  kindOf: ['pointing'],
  teaching: { place: 1020, cost: 1 },
  isOffered: true,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals' },
  recognise: (shape) => recognisePointing(shape, 3),
  find: (position) => findLocked(position, ['box'], (set) => isPointing(position, set, 3)),
});
export const pointing = technique({
  name: 'pointing',
  plural: 'pointings',
  otherNames: ['pointing candidates'],
  family: 'locked candidates',
  kindOf: ['locked candidates'],
  teaching: 'under other names',
  isOffered: false,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals', hasOnlyKinds: true },
  recognise: (shape) => (directionIn(shape) === 'pointing' ? fits : undefined),
  find: (position) => findLocked(position, ['box'], (set) => directionOf(position.grid, set) === 'pointing'),
});
export const claiming = technique({
  name: 'claiming',
  plural: 'claimings',
  otherNames: ['claiming pair', 'claiming triple'],
  family: 'locked candidates',
  kindOf: ['box-line reduction'],
  teaching: { place: 1030, cost: 1 },
  isOffered: true,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals' },
  recognise: (shape) => (directionIn(shape) === 'claiming' ? fits : undefined),
  find: (position) => findLocked(position, lines, (set) => directionOf(position.grid, set) === 'claiming'),
});
export const boxLineReduction = technique({
  name: 'box-line reduction',
  plural: 'box-line reductions',
  otherNames: ['box/line'],
  family: 'locked candidates',
  kindOf: ['locked candidates'],
  teaching: 'under other names',
  isOffered: false,
  phrase: 'locked',
  page: { under: 'Locked candidates', shows: 'removals', hasOnlyKinds: true, seenAs: ['claiming'] },
  recognise: recogniseBoxLine,
  find: (position) => findLocked(position, lines, (set) => directionOf(position.grid, set) === 'claiming'),
});

const inWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

function recognisePointing(shape: Shape, count: number): Recognition {
  if (directionIn(shape) !== 'pointing') return undefined;
  const places = countOf(lockedSet(shape)!.members);
  return places === count
    ? fits
    : loosely(`the digit has ${inWords[places] ?? places} places there, not ${inWords[count]}`);
}

function recogniseBoxLine(shape: Shape): Recognition {
  switch (directionIn(shape)) {
    case 'claiming':
      return fits;
    case 'pointing':
      return loosely(
        'from a box along a line is called pointing by most, and box-line reduction from a line into a box',
      );
    case undefined:
      return undefined;
  }
}

/** `set`: the places of a digit in a house of the position. */
function isPointing({ grid }: Position, set: PlacesSet, count: number): boolean {
  return countOf(set.members) === count && directionOf(grid, set) === 'pointing';
}

function directionIn(shape: Shape): Direction | undefined {
  const set = lockedSet(shape);
  return set === undefined ? undefined : directionOf(shape.position.grid, set);
}

type Direction = 'pointing' | 'claiming';

/** Undefined if no other house contains all the places: the removals then come from an additional rule of the board. */
function directionOf(grid: Grid, set: PlacesSet): Direction | undefined {
  const meeting = sharedHouses(grid, cellsOf(grid, set.members)).filter((house) => house !== set.house);
  if (set.house.kind === 'box') return meeting.some((house) => house.kind !== 'box') ? 'pointing' : undefined;
  return meeting.some((house) => house.kind === 'box') ? 'claiming' : undefined;
}

/** The only set, if it has two or more places and each of them sees everything concluded. */
function lockedSet(shape: Shape): PlacesSet | undefined {
  const sets = readAsPlaces(shape.sets);
  const set = sets?.[0];
  if (set === undefined || sets!.length > 1 || countOf(set.members) < 2) return undefined;
  const seen = seenByAll(shape.position.grid, set.members);
  if (isEmpty(seen)) return undefined;
  const removesOnly = forEachConclusion(shape, (conclusion) => (conclusion.kind === 'impossible' ? fits : undefined));
  return removesOnly === undefined ? undefined : set;
}

function* findLocked(
  position: Position,
  kinds: readonly HouseKind[],
  wanted: (set: PlacesSet) => boolean,
): Generator<Instance> {
  const { grid } = position;
  for (const kind of kinds) {
    for (const house of grid.houses) {
      if (house.kind !== kind) continue;
      for (const digit of grid.digits) {
        const set = placesIn(position, digit, house);
        const { members } = set;
        if (countOf(members) < 2 || !wanted({ digit, house, members })) continue;
        const removals = removalsOf(position, difference(seenByAll(grid, set.members), set.members));
        if (removals.length > 0) yield plainInstance([set], removals);
      }
    }
  }
}
