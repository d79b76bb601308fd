/**
 * Sets of candidates as bits, and the candidate itself: a digit in a cell.
 *
 * A candidate is numbered `cell * size + digit - 1`, so that the order of the numbers is the order in
 * which the project writes candidates: by row, column, digit.
 */

import { Bug } from './bug.ts';
import type { Grid } from './grid.ts';

declare const candidateBrand: unique symbol;
declare const setBrand: unique symbol;

/** A digit in a cell, `0` to `grid.candidateCount - 1`; made by `candidateAt`. */
export type Candidate = number & { readonly [candidateBrand]: true };

/** A set of candidates, 32 to a word, the lowest candidate in the lowest bit. Never changed after it was made. */
export interface Candidates {
  readonly [setBrand]: true;
  readonly length: number;
  readonly [word: number]: number;
}

type Words = number[] & { readonly [setBrand]: true };

/** The empty set for this grid. */
export function noCandidates(grid: Grid): Candidates {
  return blank((grid.candidateCount + 31) >> 5);
}

/** The candidate again, if it is one of this grid: no fraction, not negative, nothing but a number. */
export function inGrid(grid: Pick<Grid, 'candidateCount'>, candidate: Candidate): Candidate {
  if (candidate >>> 0 === candidate && candidate < grid.candidateCount) return candidate;
  throw new Bug(`candidate ${candidate} lies outside the grid`);
}

/** The set of these candidates, in any order, doubles ignored. */
export function setOf(grid: Pick<Grid, 'candidateCount'>, candidates: Iterable<Candidate>): Candidates {
  const words = blank((grid.candidateCount + 31) >> 5);
  for (const candidate of candidates) words[inGrid(grid, candidate) >> 5]! |= 1 << (candidate & 31);
  return words;
}

/** A copy that cannot be changed, nor be another set the next time that it is looked at: each word is read once. */
export function fixedSet(grid: Grid, candidates: Candidates): Candidates {
  return Object.freeze(setOf(grid, membersOf(candidates)));
}

/** Whether the candidate is in the set. */
export function has(set: Candidates, candidate: Candidate): boolean {
  return ((set[candidate >> 5]! >>> (candidate & 31)) & 1) === 1;
}

/** All that is in either. */
export function union(a: Candidates, b: Candidates): Candidates {
  const words = blank(a.length);
  for (let word = 0; word < a.length; word++) words[word] = a[word]! | b[word]!;
  return words;
}

/** All that is in both. */
export function intersection(a: Candidates, b: Candidates): Candidates {
  const words = blank(a.length);
  for (let word = 0; word < a.length; word++) words[word] = a[word]! & b[word]!;
  return words;
}

/** All that is in `a` and not in `b`. */
export function difference(a: Candidates, b: Candidates): Candidates {
  const words = blank(a.length);
  for (let word = 0; word < a.length; word++) words[word] = a[word]! & ~b[word]!;
  return words;
}

/** Whether nothing is in the set. */
export function isEmpty(set: Candidates): boolean {
  for (let word = 0; word < set.length; word++) if (set[word] !== 0) return false;
  return true;
}

/** Whether some candidate is in both. */
export function overlaps(a: Candidates, b: Candidates): boolean {
  for (let word = 0; word < a.length; word++) if ((a[word]! & b[word]!) !== 0) return true;
  return false;
}

/** Whether everything in `inner` is in `outer`. */
export function isWithin(inner: Candidates, outer: Candidates): boolean {
  for (let word = 0; word < inner.length; word++) if ((inner[word]! & ~outer[word]!) !== 0) return false;
  return true;
}

/** Whether both hold the same. */
export function isSame(a: Candidates, b: Candidates): boolean {
  for (let word = 0; word < a.length; word++) if (a[word] !== b[word]) return false;
  return true;
}

/** How many candidates are in the set. */
export function countOf(set: Candidates): number {
  let count = 0;
  for (let word = 0; word < set.length; word++) count += bitsIn(set[word]!);
  return count;
}

/** The candidates of the set in their order: by row, column, digit. */
export function membersOf(set: Candidates): Candidate[] {
  const members: Candidate[] = [];
  for (let word = 0; word < set.length; word++) {
    for (let rest = set[word]! >>> 0; rest !== 0; rest = (rest & (rest - 1)) >>> 0) {
      members.push(((word << 5) + (31 - Math.clz32(rest & -rest))) as Candidate);
    }
  }
  return members;
}

/** How many bits of a 32-bit word are set. */
export function bitsIn(word: number): number {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return (((bits + (bits >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}

/**
 * A plain array: V8 makes one several times faster than a typed array, and sets are made by the million. (So a callback of
 * `flatMap` must not return a bare set: it would be flattened.)
 */
function blank(length: number): Words {
  return new Array<number>(length).fill(0) as Words;
}
