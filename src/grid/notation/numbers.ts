/**
 * Runs of figures: `12` is two numbers, 1 and 2, each checked against the grid.
 */

import { digit } from '../geometry.ts';
import type { Digit } from '../grid.ts';
import { lookAt, report, type Scan, skipBlanks, take } from './scan.ts';

/** What a number counts, in the words of the messages. */
export type Counted = 'row' | 'column' | 'box' | 'diagonal' | 'position' | 'digit';

const figures = /\d+/y;
const oneFigure = /\d/y;

const several: Readonly<Record<Counted, string>> = {
  row: 'rows',
  column: 'columns',
  box: 'boxes',
  diagonal: 'diagonals',
  position: 'positions in a box',
  digit: 'digits',
};

/**
 * The numbers of the run of figures here, ascending; empty where no figure stands here.
 * A number out of range or written twice is reported and left out.
 */
export function readNumbers(scan: Scan, counted: Counted): number[] {
  const run = lookAt(scan, figures) ?? '';
  const read: number[] = [];
  for (let figure = take(scan, oneFigure); figure !== undefined; figure = take(scan, oneFigure)) {
    const number = Number(figure);
    const fault = faultOf(scan, counted, number, run, read);
    if (fault === undefined) read.push(number);
    else report(scan, scan.at - 1, scan.at, fault);
  }
  return read.sort((a, b) => a - b);
}

function faultOf(scan: Scan, counted: Counted, number: number, run: string, read: number[]): string | undefined {
  if (read.includes(number)) return `${number} stands twice in "${run}"; write each ${counted} once`;
  const most = counted === 'diagonal' ? 2 : scan.grid.size;
  if (number >= 1 && number <= most) return undefined;
  const split = number === 0 && !run.startsWith('0') ? `"${run}" is read figure by figure, and ` : '';
  return `${split}there is no ${counted} ${number}: ${several[counted]} run from 1 to ${most}`;
}

/** Whether digits come next: a figure, or a bracket before a figure. */
export function digitsFollow(scan: Scan): boolean {
  return lookAt(scan, /\d|\(\s*\d/y) !== undefined;
}

/** The digits here, ascending: `27`, or in brackets `(27)`. A bracket that is not closed is reported. */
export function readDigits(scan: Scan): Digit[] {
  const from = scan.at;
  const opened = take(scan, /\(\s*/y) !== undefined;
  const read = readNumbers(scan, 'digit').map((number) => digit(scan.grid, number));
  if (opened) closeBracket(scan, from);
  return read;
}

/** Passes over the closing bracket of the one at `from`, or reports that it is missing. */
export function closeBracket(scan: Scan, from: number): void {
  const inside = scan.text.slice(from + 1, scan.at).trim();
  skipBlanks(scan);
  if (take(scan, /\)/y) === undefined) report(scan, from, scan.at, `this bracket is not closed; write (${inside})`);
}
