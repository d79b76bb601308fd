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
 * reach its words, so it never changes. (Frozen arrays would do as well, but V8 reads them at half the speed. And plain
 * arrays are made several times faster than typed ones: sets are made by the million.)
 */
class CandidateSet {
  readonly #words: readonly number[];
  constructor(words: readonly number[]) {
    this.#words = words;
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
  const words = blank((grid.candidateCount + 31) >> 5);
  for (const candidate of candidates) words[inGrid(grid, candidate) >> 5]! |= 1 << (candidate & 31);
  return new CandidateSet(words);
}

/** Whether the candidate is in the set. */
export function has(set: Candidates, candidate: Candidate): boolean {
  return ((wordsOf(set)[candidate >> 5]! >>> (candidate & 31)) & 1) === 1;
}

/** All that is in either. */
export function union(a: Candidates, b: Candidates): Candidates {
  const [ofA, ofB] = [wordsOf(a), wordsOf(b)];
  const words = blank(ofA.length);
  for (let word = 0; word < ofA.length; word++) words[word] = ofA[word]! | ofB[word]!;
  return new CandidateSet(words);
}

/** All that is in both. */
export function intersection(a: Candidates, b: Candidates): Candidates {
  const [ofA, ofB] = [wordsOf(a), wordsOf(b)];
  const words = blank(ofA.length);
  for (let word = 0; word < ofA.length; word++) words[word] = ofA[word]! & ofB[word]!;
  return new CandidateSet(words);
}

/** All that is in `a` and not in `b`. */
export function difference(a: Candidates, b: Candidates): Candidates {
  const [ofA, ofB] = [wordsOf(a), wordsOf(b)];
  const words = blank(ofA.length);
  for (let word = 0; word < ofA.length; word++) words[word] = ofA[word]! & ~ofB[word]!;
  return new CandidateSet(words);
}

/** Whether nothing is in the set. */
export function isEmpty(set: Candidates): boolean {
  for (const word of wordsOf(set)) if (word !== 0) return false;
  return true;
}

/** Whether some candidate is in both, or in all three. */
export function overlaps(a: Candidates, b: Candidates, c: Candidates = b): boolean {
  const [ofA, ofB, ofC] = [wordsOf(a), wordsOf(b), wordsOf(c)];
  for (let word = 0; word < ofA.length; word++) if ((ofA[word]! & ofB[word]! & ofC[word]!) !== 0) return true;
  return false;
}

/** Whether everything in `inner` is in `outer`. */
export function isWithin(inner: Candidates, outer: Candidates): boolean {
  const [ofInner, ofOuter] = [wordsOf(inner), wordsOf(outer)];
  for (let word = 0; word < ofInner.length; word++) if ((ofInner[word]! & ~ofOuter[word]!) !== 0) return false;
  return true;
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

/** A copy of the set's words, 32 candidates to each. */
export function wordsIn(set: Candidates): number[] {
  return [...wordsOf(set)];
}

function blank(length: number): number[] {
  return new Array<number>(length).fill(0);
}
