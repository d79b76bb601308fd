/**
 * Reading a notation text from left to right while noting every fault.
 *
 * A reader that meets a fault reports it and goes on: with the next figure where the fault is a number out of
 * range, with the next item of the list where the text makes no sense. So one reading names all that is wrong.
 */
import { distance } from 'fastest-levenshtein';
import type { Grid } from '../grid.ts';
import type { NotationFault, Reading } from '../terms.ts';
import { identify } from './identify.ts';

/** A text being read: `at` is the UTF-16 offset of what comes next. */
export interface Scan {
  readonly grid: Grid;
  readonly text: string;
  readonly faults: NotationFault[];
  at: number;
}

const blanks = /\s+/y;
const separators = /[\s,]+/y;
/** A word of letters; one that goes on with a figure is none. */
const letters = /[a-z]+(?![a-z0-9])/iy;
const item = /[^\s,]+/y;

/** A scan that stands at the start of the text. */
export function startScan(grid: Grid, text: string): Scan {
  return { grid, text, faults: [], at: 0 };
}

/** What the scan comes to: the value, or the faults in the order of their places. */
export function readingOf<T>(scan: Scan, value: T): Reading<T> {
  if (scan.faults.length === 0) return { ok: true, value };
  return { ok: false, faults: scan.faults.toSorted((a, b) => a.at - b.at || a.length - b.length) };
}

/** What the pattern (sticky) matches right here, if it does; nothing is passed over. */
export function lookAt(scan: Scan, pattern: RegExp): string | undefined {
  pattern.lastIndex = scan.at;
  return pattern.exec(scan.text)?.[0];
}

/** The same, and passes over it. */
export function take(scan: Scan, pattern: RegExp): string | undefined {
  const found = lookAt(scan, pattern);
  if (found !== undefined) scan.at += found.length;
  return found;
}

/** Passes over blanks and line breaks. */
export function skipBlanks(scan: Scan): void {
  take(scan, blanks);
}

/** Whether nothing is left. */
export function isAtEnd(scan: Scan): boolean {
  return scan.at >= scan.text.length;
}

/** Notes a fault of the text from offset `from` to `to`, `to` not included. */
export function report(scan: Scan, from: number, to: number, message: string): void {
  scan.faults.push({ at: from, length: to - from, message });
}

/**
 * Notes that the item from `from` to the next blank or comma is not what is wanted, and passes over it.
 * The message says what it is instead, where that can be told.
 */
export function refuse(scan: Scan, from: number, wanted: string): void {
  scan.at = from;
  const found = take(scan, item) ?? '';
  report(scan, from, scan.at, `"${found}" ${identify(found) ?? 'cannot be read'}; ${wanted}`);
}

/** Passes over this word, in any case. A word that is nearly this one is taken for it, and reported. */
export function takeWord(scan: Scan, word: string): boolean {
  const found = lookAt(scan, letters);
  if (found === undefined) return false;
  const changes = distance(found.toLowerCase(), word);
  if (changes > word.length / 2) return false;
  scan.at += found.length;
  if (changes > 0) report(scan, scan.at - found.length, scan.at, `"${found}" is not known; write ${word}`);
  return true;
}

/**
 * Reads items apart from one another by blanks or commas up to the end of the text. `readItem` starts at an item
 * and passes over it, or refuses it; what it leaves of an item is reported. `wanted` says what would be right.
 */
export function readList(scan: Scan, wanted: string, readItem: () => void): void {
  const start = scan.at;
  take(scan, separators);
  if (isAtEnd(scan)) report(scan, start, scan.text.length, `nothing is written here; ${wanted}`);
  while (!isAtEnd(scan)) {
    const from = scan.at;
    readItem();
    reportLeftOver(scan, from, wanted);
    take(scan, separators);
  }
}

function reportLeftOver(scan: Scan, from: number, wanted: string): void {
  const leftOver = lookAt(scan, item);
  if (leftOver === undefined) return;
  const read = scan.text.slice(from, scan.at);
  const known = identify(read + leftOver);
  scan.at += leftOver.length;
  if (known !== undefined) report(scan, from, scan.at, `"${read}${leftOver}" ${known}; ${wanted}`);
  else if (read === '') report(scan, from, scan.at, `"${leftOver}" cannot be read; ${wanted}`);
  else report(scan, scan.at - leftOver.length, scan.at, `"${leftOver}" after "${read}" cannot be read; ${wanted}`);
}
