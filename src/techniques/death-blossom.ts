/**
 * Death blossom (common practice, from memory): a stem cell, and for each of its digits a petal, an almost locked set all of
 * whose places of that digit see the stem. Whichever digit the stem takes, its petal is locked on its other digits; so
 * what sees all places of a digit that all petals have, each besides its own, goes. The stem may hold that digit itself,
 * without a petal, and is then to be seen as well.
 *
 * With two petals alone it is an ALS-XY-wing, which is a warning. Cells of one house alone are a naked subset.
 */
import { type Candidate, type Candidates, countOf, difference, has, isEmpty, isWithin, membersOf, setOf, union } from '../grid/candidates.ts';
import { digitOf, type Grid, sharedHouses } from '../grid/grid.ts';
import type { OneOf } from '../proof/kernel.ts';
import { fits, forEachConclusion, loosely } from './recognition.ts';
import { cellsOf, digitsOf, ofDigit } from './seen-by-all.ts';
import { readAsCells } from './set-reading.ts';
import { areOfOneHouse } from './strung-chains.ts';
import type { Recognition, Shape, Technique } from './technique.ts';

export const deathBlossom: Technique = { name: 'death blossom', recognise, find: undefined };

function recognise(shape: Shape): Recognition {
  const { grid } = shape.position;
  if (readAsCells(shape.sets) === undefined || shape.sets.length < 4 || areOfOneHouse(grid, shape.sets)) return undefined;
  return forEachConclusion(shape, (conclusion) => {
    if (conclusion.kind !== 'impossible') return undefined;
    const stems = shape.sets.filter((stem) => blossoms(grid, stem, shape.sets, conclusion.candidate));
    if (stems.length === 0) return undefined;
    const most = Math.max(...stems.map((stem) => countOf(difference(stem.members, grid.conflicts[conclusion.candidate]!))));
    return most > 2 ? fits : loosely('a stem with two petals makes it an ALS-XY-wing');
  });
}

/** Whether the other sets make petals for every digit of the stem that the victim does not strike. */
function blossoms(grid: Grid, stem: OneOf, sets: readonly OneOf[], victim: Candidate): boolean {
  const open = difference(stem.members, grid.conflicts[victim]!);
  if (countOf(stem.members) < 2 || countOf(open) < 2 || has(open, victim)) return false;
  const search = { grid, victim, left: 5_000 };
  return bloom(search, open, sets.filter((set) => set !== stem));
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

function* petalsOf(search: BlossomSearch, stemDigit: Candidate, remaining: readonly OneOf[]): Generator<readonly OneOf[]> {
  for (let choice = 1; choice < 2 ** Math.min(remaining.length, 14); choice++) {
    const petal = remaining.filter((_, index) => ((choice >> index) & 1) === 1);
    if (isPetal(search, stemDigit, petal)) yield petal;
  }
}

/** Whether these cells, without what the stem's digit strikes, are locked on a digit of which the victim sees every place. */
function isPetal({ grid, victim }: BlossomSearch, stemDigit: Candidate, petal: readonly OneOf[]): boolean {
  const members = petal.map((set) => set.members).reduce(union);
  const cells = cellsOf(grid, members);
  const digits = digitsOf(grid, members);
  if (digits.length !== cells.length + 1 || sharedHouses(grid, cells).length === 0) return false;
  const places = (digit: number) => setOf(grid, membersOf(members).filter((member) => digitOf(grid, member) === digit));
  const own = digitOf(grid, stemDigit);
  const common = digitOf(grid, victim);
  if (own === common || !digits.includes(own) || ofDigit(grid, members, common).length === 0) return false;
  return isWithin(places(own), grid.conflicts[stemDigit]!) && isWithin(places(common), grid.conflicts[victim]!);
}
