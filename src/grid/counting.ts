/**
 * Sets of candidates counted and compared.
 */
import { type Candidates, isWithin, wordOf } from './candidates.ts';

/** How many candidates are in the set. */
export function countOf(set: Candidates): number {
  let count = 0;
  let word = wordOf(set, 0);
  for (let index = 1; word !== undefined; index++) {
    count += bitsIn(word);
    word = wordOf(set, index);
  }
  return count;
}

/** The words of the set in order, 32 candidates to each, the lowest in the lowest bit. */
export function wordsIn(set: Candidates): number[] {
  const words: number[] = [];
  for (let word = wordOf(set, 0); word !== undefined; word = wordOf(set, words.length)) words.push(word);
  return words;
}

/** Whether both hold the same. */
export function isSame(a: Candidates, b: Candidates): boolean {
  return isWithin(a, b) && isWithin(b, a);
}

/** How many bits of a 32-bit word are set. */
export function bitsIn(word: number): number {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return (((bits + (bits >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}
