/**
 * Kraken fish found in a position: rows covered by columns, or columns by rows, two or three of each, with up to four
 * fins and chains of at most three strong links each; what is removed is the digit of the fish in a cover.
 */
import { type Candidate, type Candidates, has, membersOf, setOf, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { candidatesInHouse, cellOf, type Digit, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { basicKinds } from './fish-shape.ts';
import { type Consequences, consequencesOf } from './implications.ts';
import { isWanted } from './leading-to-one.ts';
import { needsEverySet } from './minimal-argument.ts';
import { hasPlainFish } from './plain-fish.ts';
import { digitsWanted, plainInstance, removalsOf } from './removals.ts';
import { cellsOf } from './seen-by-all.ts';
import type { Instance, Needless } from './technique.ts';

const mostFins = 4;
const mostLinks = 3;
/** How many choices of bases and covers are examined. */
const fishBound = 10_000;

export function* findKrakens(
  position: Position,
  wanted?: readonly Conclusion[],
  needless: Needless = 'left out',
): Generator<Instance> {
  const followed = new Map<Candidate, Consequences>();
  const search = { position, wanted, left: fishBound, followed };
  for (const size of [2, 3]) {
    const found = digitsWanted(position.grid, wanted).flatMap((digit) => [...krakensOf(search, digit, size)]);
    found.sort((a, b) => a.sets.length - b.sets.length);
    for (const instance of found) if (needless === 'kept' || needsEverySet(position, instance)) yield instance;
  }
}

interface Search {
  readonly position: Position;
  readonly wanted: readonly Conclusion[] | undefined;
  readonly followed: Map<Candidate, Consequences>;
  left: number;
}

function* krakensOf(search: Search, digit: Digit, size: number): Generator<Instance> {
  const { position } = search;
  const { grid } = position;
  for (const kinds of basicKinds) {
    const lines = grid.houses
      .filter((house) => kinds.bases.includes(house.kind))
      .map((house) => placesIn(position, digit, house));
    const open = lines.filter((set) => countOf(set.members) > 1 && countOf(set.members) <= size + mostFins);
    for (const bases of combinations(open, size)) {
      const all = bases.map((base) => base.members).reduce(union);
      const cells = cellsOf(grid, all);
      const covers = grid.houses.filter(
        (house) => kinds.covers.includes(house.kind) && cells.some((cell) => house.cells.includes(cell)),
      );
      if (covers.length <= size) continue;
      for (const chosen of combinations(covers, size)) {
        if (--search.left < 0) return;
        yield* caughtBy(search, { digit, bases, all, covers: chosen });
      }
    }
  }
}

interface FinnedFish {
  readonly digit: Digit;
  readonly bases: readonly OneOf[];
  readonly all: Candidates;
  readonly covers: readonly HouseShape[];
}

function* caughtBy(search: Search, { digit, bases, all, covers }: FinnedFish): Generator<Instance> {
  const { position } = search;
  const { grid } = position;
  const isCovered = (place: Candidate) => covers.some((cover) => cover.cells.includes(cellOf(grid, place)));
  const places = membersOf(all);
  const fins = places.filter((place) => !isCovered(place));
  if (fins.length === 0 || fins.length > mostFins || places.length - fins.length <= bases.length) return;
  if (bases.some((base) => !membersOf(base.members).some(isCovered))) return;
  const inCovers = setOf(
    grid,
    covers.flatMap((cover) => candidatesInHouse(grid, digit, cover)),
  );
  for (const conclusion of removalsOf(position, inCovers)) {
    if (conclusion.kind !== 'impossible' || has(all, conclusion.candidate) || !isWanted(conclusion, search.wanted))
      continue;
    const paths = fins.map((fin) => consequencesIn(search, fin).isFalse.get(conclusion.candidate));
    const known = paths.filter((path) => path !== undefined);
    if (known.length < paths.length || known.every((path) => path.length === 0)) continue;
    const links = known.flat();
    if (links.some((set) => bases.includes(set))) continue; // a fin whose chain uses a base is not a fin of this fish
    const sets = [...new Set([...bases, ...links])];
    if (!hasPlainFish(grid, sets, conclusion)) yield plainInstance(sets, [conclusion]);
  }
}

function consequencesIn({ position, followed }: Search, candidate: Candidate): Consequences {
  const known = followed.get(candidate) ?? consequencesOf(position, candidate, mostLinks);
  followed.set(candidate, known);
  return known;
}
