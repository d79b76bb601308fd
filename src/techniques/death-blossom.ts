/**
 * Death blossom (common practice, from memory): a stem cell, and for each of its digits a petal, an almost locked set
 * all of whose places of that digit see the stem. Whichever digit the stem takes, its petal is locked on its other
 * digits; so if all petals share a further digit, what sees all its places is removed. The stem may have that digit
 * itself, without a petal, and must then be seen as well.
 *
 * With only two petals it is an ALS-XY-wing, which is a warning. If all the cells are in one house, it is a naked
 * subset.
 */
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  intersection,
  isEmpty,
  isWithin,
  membersOf,
  setOf,
  union,
} from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { needsEverySet } from './minimal-argument.ts';
import { type CellOneOf, openCells } from './open-cells.ts';
import { fits, forEachConclusion, loosely } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { type AlmostLocked, almostLockedSets } from './search-links.ts';
import { cellsOf, digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import { readAsCells } from './set-reading.ts';
import { areOfOneHouse } from './strung-chains.ts';
import { type Instance, type Needless, type Recognition, type Shape, technique } from './technique.ts';

export const deathBlossom = technique({
  name: 'death blossom',
  plural: 'death blossoms',
  otherNames: [],
  family: 'almost locked sets',
  kindOf: [],
  teaching: { place: 4310, cost: 24, sets: 6, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Almost locked sets', shows: 'removals' },
  recognise,
  find,
});

function recognise(shape: Shape): Recognition {
  const { grid } = shape.position;
  if (readAsCells(shape.sets) === undefined || shape.sets.length < 4 || areOfOneHouse(grid, shape.sets))
    return undefined;
  return forEachConclusion(shape, (conclusion) => {
    if (conclusion.kind !== 'impossible') return undefined;
    const stems = shape.sets.filter((stem) => blossoms(grid, stem, shape.sets, conclusion.candidate));
    if (stems.length === 0) return undefined;
    const most = Math.max(
      ...stems.map((stem) => countOf(difference(stem.members, grid.conflicts[conclusion.candidate]!))),
    );
    return most > 2 ? fits : loosely('a stem with two petals makes it an ALS-XY-wing');
  });
}

/** Whether the other sets make petals for every digit of the stem that the victim does not strike. */
function blossoms(grid: Grid, stem: OneOf, sets: readonly OneOf[], victim: Candidate): boolean {
  const open = difference(stem.members, grid.conflicts[victim]!);
  if (countOf(stem.members) < 2 || countOf(open) < 2 || has(open, victim)) return false;
  const search = { grid, victim, left: 5_000 };
  return bloom(
    search,
    open,
    sets.filter((set) => set !== stem),
  );
}

interface BlossomSearch {
  readonly grid: Grid;
  readonly victim: Candidate;
  left: number;
}

function bloom(search: BlossomSearch, open: Candidates, remaining: readonly OneOf[]): boolean {
  if (isEmpty(open)) return remaining.length === 0;
  if (remaining.length === 0 || --search.left < 0) return false;
  const first = membersOf(open)[0]!;
  for (const petal of petalsOf(search, first, remaining)) {
    const rest = remaining.filter((set) => !petal.includes(set));
    if (bloom(search, difference(open, setOf(search.grid, [first])), rest)) return true;
  }
  return false;
}

function* petalsOf(
  search: BlossomSearch,
  stemDigit: Candidate,
  remaining: readonly OneOf[],
): Generator<readonly OneOf[]> {
  for (let choice = 1; choice < 2 ** Math.min(remaining.length, 14); choice++) {
    const petal = remaining.filter((_, index) => ((choice >> index) & 1) === 1);
    if (isPetal(search, stemDigit, petal)) yield petal;
  }
}

/**
 * Whether these cells, without what the stem's digit strikes, are locked on a digit whose every place the victim sees.
 */
function isPetal({ grid, victim }: BlossomSearch, stemDigit: Candidate, petal: readonly OneOf[]): boolean {
  const members = petal.map((set) => set.members).reduce(union);
  const cells = cellsOf(grid, members);
  const digits = digitsOf(grid, members);
  if (digits.length !== cells.length + 1 || sharedHouses(grid, cells).length === 0) return false;
  const places = (digit: number) =>
    setOf(
      grid,
      membersOf(members).filter((member) => digitOf(grid, member) === digit),
    );
  const own = digitOf(grid, stemDigit);
  const common = digitOf(grid, victim);
  if (own === common || !digits.includes(own) || ofDigit(grid, members, common).length === 0) return false;
  return isWithin(places(own), grid.conflicts[stemDigit]!) && isWithin(places(common), grid.conflicts[victim]!);
}

/** The most cells of a petal, the most petals of a blossom, and how many choices of petals are examined for a stem. */
const mostCells = 4;
const mostPetals = 4;
const choiceBound = 20_000;

/** Stems of three or four digits; for each stem, those with the fewest cells first. */
function* find(
  position: Position,
  _wanted?: readonly Conclusion[],
  needless: Needless = 'left out',
): Generator<Instance> {
  const { grid } = position;
  const locked = almostLockedSets(position, mostCells);
  const shown = new Set<string>();
  for (const stem of openCells(position)) {
    const found: { readonly sets: readonly OneOf[]; readonly victims: Candidates }[] = [];
    for (const common of grid.digits) {
      const open = membersOf(stem.members).filter((each) => digitOf(grid, each) !== common);
      if (open.length < 3 || open.length > mostPetals) continue;
      const own = setOf(grid, ofDigit(grid, stem.members, common));
      const petals = open.map((each) => petalsFor(position, locked, { stem, stemDigit: each, common }));
      const start = {
        sets: [stem],
        victims: isEmpty(own) ? position.possible : intersection(position.possible, seenByAll(grid, own)),
      };
      found.push(...chosen({ left: choiceBound }, petals, start));
    }
    for (const { sets, victims } of found.sort((a, b) => a.sets.length - b.sets.length)) {
      const key = sets
        .map((set) => membersOf(set.members)[0])
        .sort()
        .join();
      const conclusions = removalsOf(position, difference(victims, sets.map((set) => set.members).reduce(union)));
      if (shown.has(key) || conclusions.length === 0 || areOfOneHouse(grid, sets)) continue;
      if (needless === 'left out' && !needsEverySet(position, { sets, conclusions })) continue;
      shown.add(key);
      yield plainInstance(sets, conclusions);
    }
  }
}

interface FoundPetal {
  readonly sets: readonly OneOf[];
  readonly victims: Candidates;
}

/**
 * The almost locked sets apart from the stem all of whose places of the digit see the stem, with what sees their places
 * of the common digit.
 */
function petalsFor(
  { grid, possible }: Position,
  locked: readonly AlmostLocked[],
  { stem, stemDigit, common }: { readonly stem: CellOneOf; readonly stemDigit: Candidate; readonly common: number },
): FoundPetal[] {
  return locked.flatMap(({ sets, parts }) => {
    const own = parts.find((part) => digitOf(grid, membersOf(part)[0]!) === digitOf(grid, stemDigit));
    const ends = parts.find((part) => digitOf(grid, membersOf(part)[0]!) === common);
    if (own === undefined || ends === undefined || sets.includes(stem) || !isWithin(own, grid.conflicts[stemDigit]!))
      return [];
    const victims = intersection(possible, seenByAll(grid, ends));
    return isEmpty(victims) ? [] : [{ sets, victims }];
  });
}

/** A petal for each digit, none sharing a cell with another, as long as some candidate is seen by all. */
function* chosen(
  search: { left: number },
  petals: readonly (readonly FoundPetal[])[],
  so: FoundPetal,
): Generator<FoundPetal> {
  const [first, ...others] = petals;
  if (first === undefined) {
    yield so;
    return;
  }
  for (const petal of first) {
    if (--search.left < 0) return;
    if (petal.sets.some((set) => so.sets.includes(set))) continue;
    const victims = intersection(so.victims, petal.victims);
    if (!isEmpty(victims)) yield* chosen(search, others, { sets: [...so.sets, ...petal.sets], victims });
  }
}
