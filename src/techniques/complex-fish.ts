/**
 * Fish with boxes, or with rows and columns together, among their bases or covers, in a position.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { areApart, type OpenHouse, openPlaces, targetsOf } from './cover-search.ts';
import { type CaughtFish, type Fish, type FishKinds, type FishSearch, fishAgainst } from './fish-shape.ts';
import { digitsWanted } from './removals.ts';

/** How many places of bases are examined before the search ends. */
const effortBound = 200_000;

/** Fish of these kinds, with and without fins, whose bases share no place; basic fish are included. */
export function* findComplexFish(
  { position, size, wanted }: FishSearch,
  kinds: readonly FishKinds[],
): Generator<CaughtFish> {
  const effort = { left: effortBound };
  for (const digit of digitsWanted(position.grid, wanted)) {
    const open = openPlaces(position, digit);
    for (const each of kinds) {
      const houses = open.houses.filter(({ house }) => each.bases.includes(house.kind));
      for (const bases of combinations(houses, size)) {
        if (effort.left < 0) return;
        if (!areApart(bases)) continue;
        const targets = targetsOf(open, bases, each.covers, effort).filter((target) => isWanted(wanted, target));
        if (targets.length > 0) yield* caughtBy(position, digit, bases, targets, each);
      }
    }
  }
}

/** The fish of these bases; those with the same covers and fins are merged. */
function* caughtBy(
  position: Position,
  digit: Fish['digit'],
  bases: readonly OpenHouse[],
  targets: readonly Candidate[],
  kinds: FishKinds,
): Generator<CaughtFish> {
  const named = bases.map(({ house }) => ({ digit, house, members: placesIn(position, digit, house).members }));
  const caught = new Map<string, { fish: Fish; removed: Candidate[] }>();
  for (const target of targets) {
    for (const fish of fishAgainst(position.grid, named, target, [kinds])) {
      const key = `${fish.covers.map((cover) => cover.name).join()}/${fish.fins.join()}`;
      const known = caught.get(key);
      if (known === undefined) caught.set(key, { fish, removed: [target] });
      else known.removed.push(target);
    }
  }
  yield* caught.values();
}

function isWanted(wanted: readonly Conclusion[] | undefined, place: Candidate): boolean {
  return wanted === undefined || wanted.some((each) => each.kind === 'impossible' && each.candidate === place);
}
