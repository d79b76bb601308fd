/**
 * What follows from a candidate by single chains: it strikes what conflicts with it; if that strikes one of a pair, the
 * other is true, and so on. Each step uses one set of two, so that strands are never joined.
 */
import { type Candidate, type Candidates, has, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { digitsIn, type OneOf, type Position, placesIn } from '../proof/kernel.ts';

export interface Consequences {
  /** For each candidate that is then true: the pairs that lead to it, none for the first candidate itself. */
  readonly isTrue: ReadonlyMap<Candidate, readonly OneOf[]>;
  /** For each possible candidate that is then false: the pairs that lead to it. */
  readonly isFalse: ReadonlyMap<Candidate, readonly OneOf[]>;
}

/** What follows if the candidate is true, by at most `mostPairs` successive pairs, each by the fewest that suffice. */
export function consequencesOf(position: Position, candidate: Candidate, mostPairs: number): Consequences {
  const pairs = pairsOf(position);
  const isTrue = new Map<Candidate, readonly OneOf[]>([[candidate, []]]);
  const isFalse = new Map<Candidate, readonly OneOf[]>();
  for (const [cause, path] of isTrue) {
    for (const struck of struckBy(position, cause)) {
      if (isFalse.has(struck)) continue;
      isFalse.set(struck, path);
      if (path.length === mostPairs) continue;
      for (const { set, other } of pairs.get(struck) ?? []) {
        if (!isTrue.has(other)) isTrue.set(other, [...path, set]);
      }
    }
  }
  return { isTrue, isFalse };
}

function struckBy({ grid, possible }: Position, cause: Candidate): Candidate[] {
  return membersOf(grid.conflicts[cause]!).filter((candidate) => has(possible, candidate));
}

/** A set of two candidates, seen from one of them. */
interface Pair {
  readonly set: OneOf;
  readonly other: Candidate;
}

const known = new WeakMap<Position, ReadonlyMap<Candidate, readonly Pair[]>>();

/** For each candidate: the sets of two that contain it; computed once, since a position never changes. */
function pairsOf(position: Position): ReadonlyMap<Candidate, readonly Pair[]> {
  const made = known.get(position) ?? makePairs(position);
  known.set(position, made);
  return made;
}

function makePairs(position: Position): Map<Candidate, Pair[]> {
  const pairs = new Map<Candidate, Pair[]>();
  const add = (from: Candidate, other: Candidate, set: OneOf) => {
    const own = pairs.get(from) ?? [];
    if (own.every((each) => each.other !== other)) pairs.set(from, [...own, { set, other }]);
  };
  for (const set of openSets(position)) {
    const [a, b, ...more] = membersOf(set.members);
    if (b === undefined || more.length > 0) continue;
    add(a!, b, set);
    add(b, a!, set);
  }
  return pairs;
}

/** All sets of cells, then of houses, that have two or more members; sets with the same members only once. */
export function openSets(position: Position): OneOf[] {
  const { grid } = position;
  const all = [
    ...grid.cells.map((cell) => digitsIn(position, cell)),
    ...grid.houses.flatMap((house) => grid.digits.map((digit) => placesIn(position, digit, house))),
  ];
  const shown = new Set<string>();
  return all.filter(({ members }) => {
    const key = keyOf(members);
    if (shown.has(key) || countOf(members) < 2) return false;
    shown.add(key);
    return true;
  });
}

function keyOf(members: Candidates): string {
  return membersOf(members).join();
}
