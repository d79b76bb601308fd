/**
 * Fish of one digit, two to four bases: X-wing, swordfish, jellyfish and their kinds.
 *
 * - Basic: rows covered by columns, or columns by rows; no fins.
 * - Finned: with fins, each of which sees what is removed.
 * - Sashimi: finned, and without its fins it would fall apart. Two usages, both accepted: a base is left with fewer
 *   than two places in the covers; or a base with fins has no place of the body in the fins' box. A fish that is
 *   sashimi by both and is named finned gets a warning.
 * - Franken: boxes are among the bases or the covers. Mutant: rows and columns together among the bases, or among the
 *   covers. Either may have fins.
 */
import { setOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import type { Grid, HouseKind, HouseShape } from '../grid/grid.ts';
import { type Position, placesIn } from '../proof/kernel.ts';
import { findBasicFish, findFinnedFish } from './basic-fish.ts';
import { findComplexFish } from './complex-fish.ts';
import {
  basicKinds,
  type CaughtFish,
  type Fish,
  type FishKinds,
  type FishSearch,
  fishAgainst,
  fishWithin,
  frankenKinds,
  isDegenerate,
  lacksCorner,
  mutantKinds,
} from './fish-shape.ts';
import { needsEverySet } from './minimal-argument.ts';
import { bestOf, fits, forEachConclusion, loosely } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { type PlacesSet, readAsPlaces } from './set-reading.ts';
import type { Instance, Needless, Recognition, Shape, Teaching, TechniqueRecord } from './technique.ts';

type JudgeFish = (grid: Grid, fish: Fish) => Recognition;

/** What defines a kind of fish, of any size. */
interface FishKind {
  readonly kinds: readonly FishKinds[];
  readonly judge: JudgeFish;
  readonly fishIn: (search: FishSearch) => Iterable<CaughtFish>;
}

/** What is specific to a fish of one size. */
interface OfSize<Other extends string> {
  readonly teaching: Teaching;
  readonly isOffered: boolean;
  readonly kindOf: readonly Other[];
}

export const basicFish = ofKind(
  '',
  { kinds: basicKinds, judge: judgeBasic, fishIn: findBasicFish },
  { teaching: { place: 2010, cost: 5 }, isOffered: true, kindOf: ['X-chain'] },
  { teaching: { place: 2080, cost: 8 }, isOffered: true, kindOf: [] },
  { teaching: { place: 4060, cost: 12 }, isOffered: true, kindOf: [] },
);
export const sashimiFish = ofKind(
  'sashimi ',
  { kinds: basicKinds, judge: judgeSashimi, fishIn: findFinnedFish },
  { teaching: { place: 2100, cost: 8 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4050, cost: 12 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4200, cost: 17 }, isOffered: false, kindOf: [] },
);
export const finnedFish = ofKind(
  'finned ',
  { kinds: basicKinds, judge: judgeFinned, fishIn: findFinnedFish },
  { teaching: { place: 2090, cost: 8 }, isOffered: true, kindOf: [] },
  { teaching: { place: 4040, cost: 12 }, isOffered: true, kindOf: [] },
  { teaching: { place: 4190, cost: 17 }, isOffered: false, kindOf: [] },
);
export const frankenFish = ofKind(
  'franken ',
  { kinds: frankenKinds, judge: without(isFranken), fishIn: (search) => findComplexFish(search, frankenKinds) },
  { teaching: { place: 4210, cost: 16 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4220, cost: 18 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4340, cost: 25 }, isOffered: false, kindOf: [] },
);
export const finnedFrankenFish = ofKind(
  'finned franken ',
  { kinds: frankenKinds, judge: having(isFranken), fishIn: (search) => findComplexFish(search, frankenKinds) },
  { teaching: { place: 4280, cost: 20 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4290, cost: 22 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4370, cost: 28 }, isOffered: false, kindOf: [] },
);
export const mutantFish = ofKind(
  'mutant ',
  { kinds: mutantKinds, judge: without(isMutant), fishIn: (search) => findComplexFish(search, mutantKinds) },
  { teaching: { place: 4320, cost: 22 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4330, cost: 24 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4380, cost: 30 }, isOffered: false, kindOf: [] },
);
export const finnedMutantFish = ofKind(
  'finned mutant ',
  { kinds: mutantKinds, judge: having(isMutant), fishIn: (search) => findComplexFish(search, mutantKinds) },
  { teaching: { place: 4350, cost: 25 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4360, cost: 28 }, isOffered: false, kindOf: [] },
  { teaching: { place: 4390, cost: 32 }, isOffered: false, kindOf: [] },
);

/** The three sizes of a kind: X-wing, swordfish, jellyfish. */
function ofKind<const Word extends string, const Other extends string = never>(
  word: Word,
  kind: FishKind,
  two: OfSize<Other>,
  three: OfSize<Other>,
  four: OfSize<Other>,
) {
  return [
    fishOf(kind, 2, { name: `${word}X-wing`, plural: `${word}X-wings`, ...two }),
    fishOf(kind, 3, { name: `${word}swordfish`, plural: `${word}swordfish`, ...three }),
    fishOf(kind, 4, { name: `${word}jellyfish`, plural: `${word}jellyfish`, ...four }),
  ] as const;
}

function fishOf<const Name extends string, const Other extends string>(
  { kinds, judge, fishIn }: FishKind,
  size: number,
  own: OfSize<Other> & { readonly name: Name; readonly plural: string },
): TechniqueRecord<Name, Other> {
  return {
    ...own,
    otherNames: [],
    family: 'one digit',
    phrase: 'fish',
    page: { under: 'Fish', shows: 'removals' },
    recognise: (shape) => recognise(shape, size, kinds, judge),
    find: (position, wanted, needless) => find(position, fishIn({ position, size, wanted }), judge, needless),
  };
}

function recognise(shape: Shape, size: number, kinds: readonly FishKinds[], judge: JudgeFish): Recognition {
  const bases = basesOf(shape, size);
  if (bases === undefined) return undefined;
  const { grid } = shape.position;
  const answer = forEachConclusion(shape, (conclusion) => {
    const fish =
      conclusion.kind === 'impossible'
        ? fishAgainst(grid, bases, conclusion.candidate, kinds)
        : fishWithin(grid, bases, conclusion.candidates, basicKinds);
    return bestOf(fish, (each) => judge(grid, each));
  });
  const poor = bases.find((base) => countOf(base.members) < 2);
  if (answer === undefined || poor === undefined) return answer;
  return loosely(`${poor.house.name} has only one place for ${poor.digit}: a single, not the base of a fish`);
}

/** The sets as base houses of one digit, if there are exactly `size` of them. */
function basesOf({ sets }: Shape, size: number): readonly PlacesSet[] | undefined {
  const bases = readAsPlaces(sets);
  if (bases === undefined || bases.length !== size) return undefined;
  return bases.every((base) => base.digit === bases[0]!.digit) ? bases : undefined;
}

/** Those that fit only loosely come later; last come fish that could do without one of their bases, if those are kept. */
function* find(
  position: Position,
  caught: Iterable<CaughtFish>,
  judge: JudgeFish,
  needless: Needless = 'left out',
): Generator<Instance> {
  const later: Instance[] = [];
  const withNeedless: Instance[] = [];
  for (const { fish, removed } of caught) {
    const recognition = judge(position.grid, fish);
    if (recognition === undefined) continue;
    const sets = fish.bases.map((base) => placesIn(position, base.digit, base.house));
    const instance = plainInstance(sets, removalsOf(position, setOf(position.grid, removed)));
    if (!needsEverySet(position, instance)) {
      if (needless === 'kept') withNeedless.push(instance);
    } else if (recognition.kind === 'fits') yield instance;
    else later.push(instance);
  }
  yield* later;
  yield* withNeedless;
}

function judgeBasic(_grid: Grid, fish: Fish): Recognition {
  return fish.fins.length === 0 ? fits : undefined;
}

function judgeFinned(grid: Grid, fish: Fish): Recognition {
  if (fish.fins.length === 0) return undefined;
  if (isDegenerate(grid, fish) && lacksCorner(grid, fish))
    return loosely('without its fins this fish falls apart: it is sashimi');
  return fits;
}

function judgeSashimi(grid: Grid, fish: Fish): Recognition {
  if (fish.fins.length === 0) return undefined;
  return isDegenerate(grid, fish) || lacksCorner(grid, fish) ? fits : undefined;
}

function without(isOfKind: (fish: Fish) => boolean): JudgeFish {
  return (_grid, fish) => (isOfKind(fish) && fish.fins.length === 0 ? fits : undefined);
}

function having(isOfKind: (fish: Fish) => boolean): JudgeFish {
  return (_grid, fish) => (isOfKind(fish) && fish.fins.length > 0 ? fits : undefined);
}

function isFranken(fish: Fish): boolean {
  return [...baseHouses(fish), ...fish.covers].some((house) => house.kind === 'box');
}

function isMutant(fish: Fish): boolean {
  const bases = kindsOf(baseHouses(fish));
  const covers = kindsOf(fish.covers);
  const lines = ['row', 'column'] as const;
  return (
    lines.every((line) => bases.has(line)) ||
    lines.every((line) => covers.has(line)) ||
    lines.some((line) => bases.has(line) && covers.has(line))
  );
}

function baseHouses(fish: Fish): HouseShape[] {
  return fish.bases.map((base) => base.house);
}

function kindsOf(houses: readonly HouseShape[]): Set<HouseKind> {
  return new Set(houses.map((house) => house.kind));
}
