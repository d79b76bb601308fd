/**
 * Candidates: `7r3c5`, `27r3c5` (a 2 and a 7 there), `(7)r3c5` (the same as the first), `7r12c5` (in two cells).
 */
import type { Candidate } from '../candidates.ts';
import { candidateAt, type Grid } from '../grid.ts';
import type { Reading } from '../terms.ts';
import { readCells } from './cells.ts';
import { readDigits } from './numbers.ts';
import { lookAt, readingOf, readList, refuse, type Scan, startScan } from './scan.ts';

const wanted = 'candidates are written 4r3c2, 14r3c2 or 4r12c3';

/** The candidates of a list, by row, column and digit, none twice. */
export function parseCandidates(grid: Grid, text: string): Reading<readonly Candidate[]> {
  const scan = startScan(grid, text);
  return readingOf(scan, readCandidateList(scan));
}

/** All that is left of the text as a list of candidates. */
export function readCandidateList(scan: Scan): Candidate[] {
  const found: Candidate[] = [];
  readList(scan, wanted, () => {
    if (candidatesFollow(scan)) found.push(...readCandidates(scan));
    else refuse(scan, scan.at, wantedInPlaceOf(scan));
  });
  return inOrder(found);
}

/** What would be right here: of a conclusion, the candidates that it is about. */
function wantedInPlaceOf(scan: Scan): string {
  const cell = '(?:r\\d+c\\d+|b\\d+p\\d+)';
  const conclusion = lookAt(scan, new RegExp(`${cell}(?:\\|${cell})*(?:<>|≠|=)\\d+(?=[\\s,]|$)`, 'iy'));
  if (conclusion === undefined) return wanted;
  const [cells, digits] = conclusion.split(/<>|≠|=/);
  return `as candidates it is written ${digits}${cells}`;
}

/** Whether digits with cells come next; a bracket may be left open. */
export function candidatesFollow(scan: Scan): boolean {
  return lookAt(scan, /(?:\(\s*\d+\s*\)|\(?\d+)(?:r\d+c\d|b\d+p\d)/iy) !== undefined;
}

/** The candidates here, ascending; `candidatesFollow` must hold. Faults are reported and left out. */
export function readCandidates(scan: Scan): Candidate[] {
  const digits = readDigits(scan);
  const cells = readCells(scan);
  return cells.flatMap((cell) => digits.map((each) => candidateAt(scan.grid, cell, each)));
}

function inOrder(candidates: readonly Candidate[]): Candidate[] {
  return [...new Set(candidates)].sort((a, b) => a - b);
}
