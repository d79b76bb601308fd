/**
 * Sets of candidates as bits, and the candidate itself: a digit in a cell.
 *
 * A candidate is numbered `cell * size + digit - 1`, so that the order of the numbers is the order in
 * which the project writes candidates: by row, column, digit.
 */
import { Bug } from './bug.ts';
import type { Grid } from './grid.ts';

declare const candidateBrand: unique symbol;

/** A digit in a cell, `0` to `grid.candidateCount - 1`; made by `candidateAt`. */
export type Candidate = number & { readonly [candidateBrand]: true };

/**
 * A set of candidates, 32 to a word, the lowest candidate in the lowest bit. Nobody outside this file can make one, or
 * reach its words, so it never changes. (V8 reads frozen arrays at half the speed, and makes typed ones far slower.)
 */
class CandidateSet {
  readonly #words: readonly number[];
  constructor(words: readonly number[]) {
    this.#words = words;
    Object.freeze(this);
  }
  static wordsOf(set: CandidateSet): readonly number[] {
    return set.#words;
  }
  [Symbol.iterator](): Iterator<Candidate> {
    return membersOf(this)[Symbol.iterator]();
  }
  toJSON(): readonly Candidate[] {
    return membersOf(this);
  }
}
const { wordsOf } = CandidateSet;
Reflect.deleteProperty(CandidateSet.prototype, 'constructor'); // or a set would lead to its class, and to others over words kept
Object.freeze(CandidateSet.prototype);

export type Candidates = CandidateSet;

/** The candidate again, if it is one of this grid: no fraction, not negative, nothing but a number. */
export function inGrid(grid: Pick<Grid, 'candidateCount'>, candidate: Candidate): Candidate {
  if (candidate >>> 0 === candidate && candidate < grid.candidateCount) return candidate;
  throw new Bug(`candidate ${candidate} lies outside the grid`);
}

/** The set of these candidates, in any order, doubles ignored. */
export function setOf(grid: Pick<Grid, 'candidateCount'>, candidates: Iterable<Candidate>): Candidates {
  const words = new Array<number>((grid.candidateCount + 31) >> 5).fill(0);
  for (const candidate of candidates) words[inGrid(grid, candidate) >> 5]! |= 1 << (candidate & 31);
  return new CandidateSet(words);
}

/** Whether the candidate is in the set. */
export function has(set: Candidates, candidate: Candidate): boolean {
  return ((wordsOf(set)[candidate >> 5]! >>> (candidate & 31)) & 1) === 1;
}

/** All that is in either. */
export function union(a: Candidates, b: Candidates): Candidates {
  const ofB = wordsOf(b);
  return new CandidateSet(wordsOf(a).map((word, index) => word | ofB[index]!));
}

/** All that is in both. */
export function intersection(a: Candidates, b: Candidates): Candidates {
  const ofB = wordsOf(b);
  return new CandidateSet(wordsOf(a).map((word, index) => word & ofB[index]!));
}

/** All that is in `a` and not in `b`. */
export function difference(a: Candidates, b: Candidates): Candidates {
  const ofB = wordsOf(b);
  return new CandidateSet(wordsOf(a).map((word, index) => word & ~ofB[index]!));
}

/** Whether nothing is in the set. */
export function isEmpty(set: Candidates): boolean {
  return wordsOf(set).every((word) => word === 0);
}

/** Whether some candidate is in both, or in all three. */
export function overlaps(a: Candidates, b: Candidates, c: Candidates = b): boolean {
  const [ofB, ofC] = [wordsOf(b), wordsOf(c)];
  return wordsOf(a).some((word, index) => (word & ofB[index]! & ofC[index]!) !== 0);
}

/** Whether everything in `inner` is in `outer`. */
export function isWithin(inner: Candidates, outer: Candidates): boolean {
  const ofOuter = wordsOf(outer);
  return wordsOf(inner).every((word, index) => (word & ~ofOuter[index]!) === 0);
}

/** The candidates of the set in their order: by row, column, digit. */
export function membersOf(set: Candidates): Candidate[] {
  const members: Candidate[] = [];
  const words = wordsOf(set);
  for (let word = 0; word < words.length; word++) {
    for (let rest = words[word]! >>> 0; rest !== 0; rest = (rest & (rest - 1)) >>> 0) {
      members.push(((word << 5) + (31 - Math.clz32(rest & -rest))) as Candidate);
    }
  }
  return members;
}

/** The 32 candidates from `32 * index` on as the bits of a word, the lowest candidate lowest; undefined past the last. */
export function wordOf(set: Candidates, index: number): number | undefined {
  return wordsOf(set)[index];
}
