/**
 * Kraken fish: a fish whose fins do not all see what is removed, but lead to it by chains.
 *
 * The bases guarantee that one of the fins is true, or that each cover has its digit from a base. So if the fins, and
 * the places of the bases in one cover, all lead to the conclusion, it holds. Two usages, both accepted: the conclusion
 * removes the digit of the fish from a cover, and only the fins need chains; or it is any other conclusion, and the
 * places in the cover need chains too.
 *
 * A fish of two to four bases with no place in common; every base and every cover has a place of its body. Basic kinds
 * are tried first, then those with boxes, then any. If a fish among the sets gives the conclusion without any chain, all of
 * its fins seeing it, it is that fish and not a kraken: otherwise every swordfish would be an X-wing with a chain along
 * its third base.
 */
import { type Candidate, type Candidates, has, membersOf, overlaps, union } from '../grid/candidates.ts';
import { candidateAt, cellOf, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { basicKinds, type FishKinds, frankenKinds, mutantKinds } from './fish-shape.ts';
import { findKrakens } from './kraken-instances.ts';
import { leadsTo } from './leading-to-one.ts';
import { hasPlainFish } from './plain-fish.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { type Recognition, type Shape, technique } from './technique.ts';

export const krakenFish = technique({
  name: 'kraken fish',
  plural: 'kraken fish',
  otherNames: [],
  family: 'chains',
  kindOf: ['forcing net'],
  teaching: { place: 4400, cost: 28, sets: 4, each: 2 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise,
  find: findKrakens,
});

/** How many choices of bases and covers are examined. */
const fishBound = 2_000;

function recognise(shape: Shape): Recognition {
  if (shape.sets.length < 3) return undefined;
  return forEachConclusion(shape, (conclusion) =>
    !hasPlainFish(shape.position.grid, shape.sets, conclusion) && isCaught(shape, conclusion) ? fits : undefined,
  );
}

function isCaught({ position: { grid }, sets }: Shape, conclusion: Conclusion): boolean {
  let left = fishBound;
  for (const kinds of [...basicKinds, ...frankenKinds, ...mutantKinds]) {
    for (const bases of baseChoices(sets, kinds)) {
      const arms = sets.filter((set) => !bases.includes(set));
      const all = bases.map((base) => base.members).reduce(union);
      for (const covers of combinations(coversOf(grid, bases, all, kinds), bases.length)) {
        if (--left < 0) return false;
        if (isKraken(grid, { bases, covers, arms }, conclusion)) return true;
      }
    }
  }
  return false;
}

interface Caught {
  readonly bases: readonly OneOf[];
  readonly covers: readonly HouseShape[];
  readonly arms: readonly OneOf[];
}

function isKraken(grid: Grid, { bases, covers, arms }: Caught, conclusion: Conclusion): boolean {
  const places = bases.flatMap((base) => membersOf(base.members));
  const isIn = (place: Candidate, cover: HouseShape) => cover.cells.includes(cellOf(grid, place));
  const body = places.filter((place) => covers.some((cover) => isIn(place, cover)));
  const fins = places.filter((place) => !body.includes(place));
  if (body.length <= bases.length || bases.some((base) => !body.some((place) => has(base.members, place))))
    return false;
  const byArms = (place: Candidate) => leadsTo(grid, place, { sets: arms, conclusion, by: 'cases' });
  const directly = (place: Candidate) => leadsTo(grid, place, { sets: [], conclusion, by: 'cases' });
  if (fins.every(directly) || !fins.every(byArms)) return false;
  return covers.some((cover) => {
    const inCover = body.filter((place) => isIn(place, cover));
    return inCover.length > 0 && inCover.every(byArms);
  });
}

/**
 * Two to four sets of one digit, of houses of these kinds, with no place in common, with at least one other set left
 * over.
 */
function* baseChoices(sets: readonly OneOf[], kinds: FishKinds): Generator<readonly OneOf[]> {
  const bases = sets.filter(({ source }) => source.kind === 'places' && kinds.bases.includes(source.house.kind));
  for (let size = 2; size <= 4 && size < sets.length; size++) {
    for (const chosen of combinations(bases, size)) {
      if (chosen.every((base) => digitOfBase(base) === digitOfBase(chosen[0]!)) && areApart(chosen)) yield chosen;
    }
  }
}

function coversOf(grid: Grid, bases: readonly OneOf[], all: Candidates, kinds: FishKinds): HouseShape[] {
  const digit = digitOfBase(bases[0]!);
  return grid.houses.filter(
    (house) =>
      kinds.covers.includes(house.kind) &&
      !bases.some(({ source }) => source.kind === 'places' && source.house === house) &&
      digit !== undefined &&
      house.cells.some((cell) => has(all, candidateAt(grid, cell, digit))),
  );
}

function digitOfBase({ source }: OneOf) {
  return source.kind === 'places' ? source.digit : undefined;
}

function areApart(sets: readonly OneOf[]): boolean {
  return sets.every((set, index) => sets.slice(index + 1).every((other) => !overlaps(set.members, other.members)));
}
