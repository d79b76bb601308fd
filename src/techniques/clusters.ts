/**
 * Clusters of conjugate pairs of a digit: houses where it has exactly two places, joined where they share a place.
 */
import { type Candidate, type Candidates, has, membersOf, overlaps, setOf, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { type Digit, digitOf, type Grid } from '../grid/grid.ts';
import { type OneOf, type Position, placesIn } from '../proof/kernel.ts';

export interface Cluster {
  readonly digit: Digit;
  readonly places: Candidates;
  /**
   * All places of one colour are true, and all of the other false. The first colour contains the first place on the
   * board.
   */
  readonly colours: readonly [Candidates, Candidates];
  /** Pairs that join all its places, each pair of places once, from the first house of the grid that has it. */
  readonly pairs: readonly OneOf[];
}

/** The clusters of the digit, by their first place; computed once, since a position never changes. */
export function clusters(position: Position, digit: Digit): readonly Cluster[] {
  const byDigit = known.get(position) ?? new Map<Digit, readonly Cluster[]>();
  known.set(position, byDigit);
  const made = byDigit.get(digit) ?? makeClusters(position, digit);
  byDigit.set(digit, made);
  return made;
}

const known = new WeakMap<Position, Map<Digit, readonly Cluster[]>>();

function makeClusters(position: Position, digit: Digit): Cluster[] {
  const pairs = new Map<string, OneOf>();
  for (const house of position.grid.houses) {
    const set = placesIn(position, digit, house);
    const key = membersOf(set.members).join();
    if (countOf(set.members) === 2 && !pairs.has(key)) pairs.set(key, set);
  }
  return clustersOf(position.grid, digit, [...pairs.values()]);
}

/** The clusters after joining further pairs to these: either/ors of two places that cannot both be true. */
export function joinedOf(grid: Grid, all: readonly Cluster[], sets: readonly OneOf[]): readonly Cluster[] {
  const digit = digitOf(grid, membersOf(sets[0]!.members)[0]!);
  const further = sets.filter((set) => {
    if (set.source.kind === 'places') return false;
    const [a, b] = membersOf(set.members);
    return has(grid.conflicts[a!]!, b!);
  });
  return further.length === 0 ? all : clustersOf(grid, digit, [...all.flatMap((cluster) => cluster.pairs), ...further]);
}

/** If two places of one colour see each other: that colour is false, the other true. */
export function wrapOf(
  grid: Grid,
  { colours: [a, b] }: Cluster,
): { readonly isFalse: Candidates; readonly isTrue: Candidates } | undefined {
  if (clashes(grid, a)) return { isFalse: a, isTrue: b };
  if (clashes(grid, b)) return { isFalse: b, isTrue: a };
  return undefined;
}

function clashes(grid: Grid, colour: Candidates): boolean {
  return membersOf(colour).some((place) => overlaps(grid.conflicts[place]!, colour));
}

function clustersOf(grid: Grid, digit: Digit, pairs: readonly OneOf[]): Cluster[] {
  const left = new Set(membersOf(pairs.map((pair) => pair.members).reduce(union, setOf(grid, []))));
  const found: Cluster[] = [];
  while (left.size > 0) {
    const colourOf = coloured(pairs, Math.min(...left));
    const own = [...colourOf.keys()];
    for (const place of own) left.delete(place);
    const places = setOf(grid, own);
    const ofColour = (wanted: 0 | 1) =>
      setOf(
        grid,
        own.filter((place) => colourOf.get(place) === wanted),
      );
    found.push({
      digit,
      places,
      colours: [ofColour(0), ofColour(1)],
      pairs: pairs.filter((pair) => overlaps(pair.members, places)),
    });
  }
  return found;
}

/** The places that can be reached from this one, with their colours. */
function coloured(pairs: readonly OneOf[], start: number): Map<Candidate, 0 | 1> {
  const first = pairs.flatMap((pair) => membersOf(pair.members)).find((place) => place === start)!;
  const colourOf = new Map<Candidate, 0 | 1>([[first, 0]]);
  for (const [place, colour] of colourOf) {
    for (const pair of pairs) {
      if (!has(pair.members, place)) continue;
      for (const other of membersOf(pair.members)) if (!colourOf.has(other)) colourOf.set(other, colour === 0 ? 1 : 0);
    }
  }
  return colourOf;
}
