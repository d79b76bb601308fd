/**
 * The search behind fish of any houses: given base houses of a digit, what could be removed if one cover fewer than
 * there are bases covers all their places, except those that the removed candidate sees anyway.
 *
 * The open places of the digit are numbered and kept as bits of three words (96 places are enough for 9x9), passed as
 * numbers, since this runs some hundred thousand times.
 */
import { Bug } from '../grid/bug.ts';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { cellOf, type Digit, type Grid, type HouseKind, type HouseShape } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { type Position, placesIn } from '../proof/kernel.ts';

/** The open places of a digit, and which houses they lie in. */
export interface OpenPlaces {
  readonly candidates: readonly Candidate[];
  /** For each place, the places that it sees: three words each. */
  readonly sees: Int32Array;
  readonly houses: readonly OpenHouse[];
}

/** A house where the digit is open, with its places as numbers and as bits. */
export interface OpenHouse {
  readonly house: HouseShape;
  readonly places: readonly number[];
  readonly words: Words;
}

type Words = readonly [number, number, number];

/** The remaining effort; the search ends when `left` falls below zero. */
export interface Effort {
  left: number;
}

const wordBits = 32;

export function openPlaces(position: Position, digit: Digit): OpenPlaces {
  const { grid } = position;
  const open = grid.houses.map((house) => ({ house, set: placesIn(position, digit, house) }));
  const candidates = [...new Set(open.flatMap(({ set }) => membersOf(set.members)))]
    .filter((candidate) => !isPlaced(position, cellOf(grid, candidate)))
    .sort((a, b) => a - b);
  if (candidates.length > 3 * wordBits) throw new Bug('more places of a digit than the search has bits');
  const houses = open.flatMap(({ house, set }): OpenHouse[] => {
    const places = candidates.flatMap((candidate, place) => (has(set.members, candidate) ? [place] : []));
    return places.length > 1 ? [{ house, places, words: wordsOf(places) }] : [];
  });
  return { candidates, sees: seesOf(grid, candidates), houses };
}

/** The places that these bases, no two of which share one, may make impossible with covers of these kinds. */
export function targetsOf(
  { candidates, sees, houses }: OpenPlaces,
  bases: readonly OpenHouse[],
  kinds: readonly HouseKind[],
  effort: Effort,
): Candidate[] {
  const allowed = houses.filter(
    ({ house }) => kinds.includes(house.kind) && !bases.some((base) => base.house === house),
  );
  const places = bases.flatMap((base, index) => base.places.map((place) => ({ place, base: index })));
  const coversOf = places.map(({ place }) => allowed.filter((cover) => cover.places.includes(place)));
  const bare = bases.map((base) => base.places.length);
  let [found0, found1, found2] = [0, 0, 0];

  const look = (
    at: number,
    covers: number,
    c0: number,
    c1: number,
    c2: number,
    t0: number,
    t1: number,
    t2: number,
  ): void => {
    let index = at;
    while (index < places.length && isSet(places[index]!.place, c0, c1, c2)) index++;
    if (index === places.length) {
      found0 |= t0;
      found1 |= t1;
      found2 |= t2;
      return;
    }
    if (--effort.left < 0) return;
    const { place, base } = places[index]!;
    if (covers > 0) {
      for (const { words } of coversOf[index]!) {
        look(index + 1, covers - 1, c0 | words[0], c1 | words[1], c2 | words[2], t0, t1, t2);
      }
    }
    const [s0, s1, s2] = [t0 & sees[3 * place]!, t1 & sees[3 * place + 1]!, t2 & sees[3 * place + 2]!];
    if ((s0 | s1 | s2) === 0 || bare[base]! === 1) return; // a base that is seen entirely is not a base of a fish
    bare[base]!--;
    look(index + 1, covers, c0, c1, c2, s0, s1, s2);
    bare[base]!++;
  };

  const [b0, b1, b2] = wordsOf(places.map(({ place }) => place));
  look(0, bases.length - 1, 0, 0, 0, ~b0, ~b1, ~b2);
  return candidates.filter((_, place) => isSet(place, found0, found1, found2));
}

/** Whether the houses have no place in common. */
export function areApart(houses: readonly OpenHouse[]): boolean {
  let [a, b, c] = [0, 0, 0];
  for (const { words } of houses) {
    if ((a & words[0]) | (b & words[1]) | (c & words[2])) return false;
    [a, b, c] = [a | words[0], b | words[1], c | words[2]];
  }
  return true;
}

function wordsOf(places: readonly number[]): Words {
  const words: [number, number, number] = [0, 0, 0];
  for (const place of places) words[Math.floor(place / wordBits)]! |= 1 << (place % wordBits);
  return words;
}

function isSet(place: number, a: number, b: number, c: number): boolean {
  const word = place < wordBits ? a : place < 2 * wordBits ? b : c;
  return ((word >>> (place % wordBits)) & 1) === 1;
}

function seesOf(grid: Grid, candidates: readonly Candidate[]): Int32Array {
  const sees = new Int32Array(3 * candidates.length);
  for (const [place, candidate] of candidates.entries()) {
    const seen = candidates.flatMap((other, index) => (has(grid.conflicts[candidate]!, other) ? [index] : []));
    sees.set(wordsOf(seen), 3 * place);
  }
  return sees;
}
