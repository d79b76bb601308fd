/**
 * Subsets: as many digits as cells, two to four of each, locked to one another.
 *
 * Naked: cells that all see one another and together hold as many digits as there are cells, each cell two or more;
 * each digit is removed from every cell that sees all its places among them. Hidden: digits of one house whose places
 * are in as many cells as there are digits, each with two or more places; the cells lose all other digits. Locked: a
 * naked pair or triple whose cells share a line and a box, so that it removes candidates from both. (J. F. Crook,
 * Notices of the AMS 56(4), 2009, calls both a preemptive set.)
 */
import { type Candidates, difference, setOf, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sees, sharedHouses } from '../grid/geometry.ts';
import { type Cell, candidatesInCell, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { needsEverySet } from './minimal-argument.ts';
import { fits, loosely } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { cellsOf, digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import { readAsCells, readAsPlaces } from './set-reading.ts';
import type { Instance, Recognition, Shape, TechniqueAbout, TechniqueRecord } from './technique.ts';

const sizes = ['', 'single', 'pair', 'triple', 'quad', 'quintuple', 'sextuple'];

export const nakedPair = nakedSubset(2, {
  name: 'naked pair',
  plural: 'naked pairs',
  otherNames: [],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1060, cost: 2 },
  isOffered: true,
  phrase: 'naked subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const nakedTriple = nakedSubset(3, {
  name: 'naked triple',
  plural: 'naked triples',
  otherNames: ['naked triplet'],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1090, cost: 4 },
  isOffered: true,
  phrase: 'naked subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const nakedQuad = nakedSubset(4, {
  name: 'naked quad',
  plural: 'naked quads',
  otherNames: ['naked quadruple', 'naked quadruplet'],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1110, cost: 6 },
  isOffered: true,
  phrase: 'naked subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const hiddenPair = hiddenSubset(2, {
  name: 'hidden pair',
  plural: 'hidden pairs',
  otherNames: [],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1080, cost: 3 },
  isOffered: true,
  phrase: 'hidden subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const hiddenTriple = hiddenSubset(3, {
  name: 'hidden triple',
  plural: 'hidden triples',
  otherNames: ['hidden triplet'],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1100, cost: 5 },
  isOffered: true,
  phrase: 'hidden subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const hiddenQuad = hiddenSubset(4, {
  name: 'hidden quad',
  plural: 'hidden quads',
  otherNames: ['hidden quadruple', 'hidden quadruplet'],
  family: 'subsets',
  kindOf: [],
  teaching: { place: 1120, cost: 8 },
  isOffered: true,
  phrase: 'hidden subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const lockedPair = lockedSubset(2, {
  name: 'locked pair',
  plural: 'locked pairs',
  otherNames: [],
  family: 'subsets',
  kindOf: ['naked pair'],
  teaching: { place: 1050, cost: 1 },
  isOffered: false,
  phrase: 'naked subset',
  page: { under: 'Subsets', shows: 'removals' },
});

export const lockedTriple = lockedSubset(3, {
  name: 'locked triple',
  plural: 'locked triples',
  otherNames: ['locked triplet'],
  family: 'subsets',
  kindOf: ['naked triple'],
  teaching: { place: 1070, cost: 2 },
  isOffered: false,
  phrase: 'naked subset',
  page: { under: 'Subsets', shows: 'removals' },
});

function nakedSubset<const Name extends string, const Other extends string = never>(
  size: number,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => ofSize(size, 'naked', nakedCells(shape)),
    find: (position) => wholeOnesFirst(position, findNaked(position, size)),
  };
}

function hiddenSubset<const Name extends string, const Other extends string = never>(
  size: number,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => ofSize(size, 'hidden', hiddenCells(shape)),
    find: (position) => wholeOnesFirst(position, findHidden(position, size)),
  };
}

function lockedSubset<const Name extends string, const Other extends string = never>(
  size: number,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => recogniseLocked(shape, size),
    find: (position) => findLocked(position, size),
  };
}

function ofSize(size: number, kind: string, cells: readonly Cell[] | undefined): Recognition {
  if (cells === undefined) return undefined;
  return cells.length === size
    ? fits
    : loosely(`it is a ${kind} ${sizes[cells.length] ?? 'subset'}, not a ${sizes[size]}`);
}

function recogniseLocked(shape: Shape, size: number): Recognition {
  const { grid } = shape.position;
  const naked = nakedCells(shape);
  const cells = naked ?? hiddenCells(shape);
  if (cells === undefined || sharedHouses(grid, cells).length < 2) return undefined;
  if (naked === undefined) return loosely(`it is named by its digits' places: a hidden ${sizes[cells.length]}`);
  return ofSize(size, 'locked', cells);
}

/** The cells, if the sets are a naked subset. */
function nakedCells({ position: { grid }, sets }: Shape): readonly Cell[] | undefined {
  const named = readAsCells(sets);
  if (named === undefined || named.length < 2) return undefined;
  const digits = digitsOf(grid, named.map((set) => set.members).reduce(union));
  if (digits.length !== named.length || named.some((set) => countOf(set.members) < 2)) return undefined;
  const cells = named.map((set) => set.cell);
  return allSeeOneAnother(grid, cells) ? cells : undefined;
}

/** The cells, if the sets are a hidden subset. */
function hiddenCells({ position: { grid }, sets }: Shape): readonly Cell[] | undefined {
  const named = readAsPlaces(sets);
  if (named === undefined || named.length < 2) return undefined;
  const house = named[0]!.house;
  if (named.some((set) => set.house !== house || countOf(set.members) < 2)) return undefined;
  const cells = cellsOf(grid, named.map((set) => set.members).reduce(union));
  return cells.length === named.length ? cells : undefined;
}

function allSeeOneAnother(grid: Grid, cells: readonly Cell[]): boolean {
  return cells.every((a) => cells.every((b) => a === b || sees(grid, a, b)));
}

/** Those that need every cell or digit, then those containing a smaller subset that suffices. */
function* wholeOnesFirst(position: Position, instances: Iterable<Instance>): Generator<Instance> {
  const later: Instance[] = [];
  for (const instance of instances) {
    if (needsEverySet(position, instance)) yield instance;
    else later.push(instance);
  }
  yield* later;
}

function* findNaked(position: Position, size: number): Generator<Instance> {
  const { grid } = position;
  const shown = new Set<string>();
  for (const house of grid.houses) {
    const open = openCells(position, house)
      .map((cell) => digitsIn(position, cell))
      .filter((set) => countOf(set.members) >= 2 && countOf(set.members) <= size);
    for (const sets of combinations(open, size)) {
      const all = sets.map((set) => set.members).reduce(union);
      if (digitsOf(grid, all).length !== size || shown.has(cellsOf(grid, all).join())) continue;
      shown.add(cellsOf(grid, all).join());
      const removals = removalsOf(position, clearedByNaked(grid, all));
      if (removals.length > 0) yield plainInstance(sets, removals);
    }
  }
}

/** For each digit of the subset, what sees all its places. */
function clearedByNaked(grid: Grid, all: Candidates): Candidates {
  const cleared = digitsOf(grid, all).map((digit) => seenByAll(grid, setOf(grid, ofDigit(grid, all, digit))));
  return difference(cleared.reduce(union), all);
}

function* findHidden(position: Position, size: number): Generator<Instance> {
  const { grid } = position;
  for (const house of grid.houses) {
    const open = grid.digits
      .map((digit) => placesIn(position, digit, house))
      .filter((set) => countOf(set.members) >= 2 && countOf(set.members) <= size);
    for (const sets of combinations(open, size)) {
      const all = sets.map((set) => set.members).reduce(union);
      const cells = cellsOf(grid, all);
      if (cells.length !== size) continue;
      const inCells = setOf(
        grid,
        cells.flatMap((cell) => candidatesInCell(grid, cell)),
      );
      const conclusions: Conclusion[] = [
        ...removalsOf(position, difference(inCells, all)),
        ...lockedOutside(position, sets),
      ];
      if (conclusions.some((conclusion) => concernsCells(grid, conclusion, inCells)))
        yield plainInstance(sets, conclusions);
    }
  }
}

/** What a digit of a hidden subset removes outside the house, if its places lie in a second house. */
function lockedOutside(position: Position, sets: readonly OneOf[]): Conclusion[] {
  return sets.flatMap((set) => removalsOf(position, difference(seenByAll(position.grid, set.members), set.members)));
}

function concernsCells(grid: Grid, conclusion: Conclusion, inCells: Candidates): boolean {
  return conclusion.kind === 'impossible' && countOf(difference(setOf(grid, [conclusion.candidate]), inCells)) === 0;
}

function* findLocked(position: Position, size: number): Generator<Instance> {
  for (const instance of findNaked(position, size)) {
    const cells = instance.sets.flatMap((set) => cellsOf(position.grid, set.members));
    if (
      sharedHouses(
        position.grid,
        cells.filter((cell, index) => cells.indexOf(cell) === index),
      ).length > 1
    )
      yield instance;
  }
}

function openCells(position: Position, house: HouseShape): Cell[] {
  return house.cells.filter((cell) => !isPlaced(position, cell));
}
