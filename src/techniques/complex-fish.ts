/**
 * Fish with boxes, or with rows and columns together, among their bases or covers. There are many choices of bases, so the
 * search goes by what the bases prove: the covers are sought only for that. It ends after a number of proofs.
 */
import { type Candidate, type Candidates, countOf, has, overlaps, union } from '../grid/candidates.ts';
import { candidateAt, type Digit, type HouseKind } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isPlaced, type OneOf, type Position, placesIn, prove } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { type CaughtFish, type Fish, type FishKinds, type FishSearch, fishAgainst } from './fish-shape.ts';
import { digitsWanted } from './removals.ts';
import { readAsPlaces } from './set-reading.ts';

/** How many candidates are tried against choices of bases. */
const proofBound = 40_000;

/** Fish of these kinds, with fins and without, bases with no place in common; the basic ones among them too. */
export function* findComplexFish(
  { position, size, wanted }: FishSearch,
  kinds: readonly FishKinds[],
): Generator<CaughtFish> {
  const search = { left: proofBound };
  for (const digit of digitsWanted(position.grid, wanted)) {
    const targets = openPlaces(position, digit).filter((place) => wanted === undefined || isWanted(wanted, place));
    for (const each of kinds) {
      for (const bases of combinations(basesOf(position, digit, each.bases), size)) {
        if (search.left < 0) return;
        if (!areApart(bases)) continue;
        const all = bases.map((base) => base.members).reduce(union);
        yield* fishWith(
          position,
          bases,
          targets.filter((target) => !has(all, target)),
          each,
          search,
        );
      }
    }
  }
}

function* fishWith(
  position: Position,
  bases: readonly OneOf[],
  targets: readonly Candidate[],
  kinds: FishKinds,
  search: { left: number },
): Generator<CaughtFish> {
  const named = readAsPlaces(bases)!;
  const caught = new Map<string, { fish: Fish; removed: Candidate[] }>();
  for (const candidate of targets) {
    if (!bases.some((base) => overlaps(base.members, position.grid.conflicts[candidate]!))) continue;
    search.left--;
    if (prove(position, bases, { kind: 'impossible', candidate }).kind !== 'proved') continue;
    for (const fish of fishAgainst(position.grid, named, candidate, [kinds])) {
      const key = `${fish.covers.map((cover) => cover.name).join()}/${fish.fins.join()}`;
      const known = caught.get(key);
      if (known === undefined) caught.set(key, { fish, removed: [candidate] });
      else known.removed.push(candidate);
    }
  }
  yield* caught.values();
}

function basesOf(position: Position, digit: Digit, kinds: readonly HouseKind[]): OneOf[] {
  return position.grid.houses
    .filter((house) => kinds.includes(house.kind))
    .map((house) => placesIn(position, digit, house))
    .filter((set) => countOf(set.members) > 1);
}

function areApart(bases: readonly OneOf[]): boolean {
  let seen: Candidates | undefined;
  for (const { members } of bases) {
    if (seen !== undefined && overlaps(seen, members)) return false;
    seen = seen === undefined ? members : union(seen, members);
  }
  return true;
}

function isWanted(wanted: readonly Conclusion[], place: Candidate): boolean {
  return wanted.some((each) => each.kind === 'impossible' && each.candidate === place);
}

function openPlaces(position: Position, digit: Digit): Candidate[] {
  return position.grid.cells
    .filter((cell) => !isPlaced(position, cell))
    .map((cell) => candidateAt(position.grid, cell, digit))
    .filter((candidate) => has(position.possible, candidate));
}
