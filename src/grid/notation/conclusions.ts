/**
 * Conclusions: `r1c79<>7` or `-7r1c79` (impossible), `r8c4=8` or `+8r8c4` (placed), `either 7r1c5 7r2c8` (one of them).
 */
import { type Candidate, setOf } from '../candidates.ts';
import { type Cell, candidateAt, type Digit, type Grid } from '../grid.ts';
import type { Conclusion, Reading } from '../terms.ts';
import { candidatesFollow, readCandidates } from './candidates.ts';
import { cellsFollow, readCells } from './cells.ts';
import { digitsFollow, readDigits } from './numbers.ts';
import { lookAt, readingOf, readList, refuse, report, type Scan, startScan, take, takeWord } from './scan.ts';

/** A conclusion with the place of the item that states it: `r1c79<>7` states two, both at the same place. */
export interface StatedConclusion {
  readonly conclusion: Conclusion;
  readonly at: number;
  readonly length: number;
}

const wanted = 'a conclusion is written r3c2<>4 or r3c2<>14 (impossible), r3c2=4 (placed), or either 4r3c2 4r1c3';

/** The conclusions of a list in the order in which they are written, cell by cell; one that stands twice is listed twice. */
export function parseConclusions(grid: Grid, text: string): Reading<readonly StatedConclusion[]> {
  const scan = startScan(grid, text);
  return readingOf(scan, readConclusionList(scan));
}

/** All that is left of the text as a list of conclusions. */
export function readConclusionList(scan: Scan): StatedConclusion[] {
  const found: StatedConclusion[] = [];
  readList(scan, wanted, () => {
    const at = scan.at;
    const conclusions = readConclusions(scan);
    found.push(...conclusions.map((conclusion) => ({ conclusion, at, length: scan.at - at })));
  });
  return found;
}

function readConclusions(scan: Scan): Conclusion[] {
  const from = scan.at;
  if (takeWord(scan, 'either')) return readEither(scan, from);
  const sign = take(scan, /[-−–+]\s*/y);
  if (sign !== undefined && candidatesFollow(scan)) {
    const digits = readDigits(scan);
    return conclude(scan, from, sign.startsWith('+') ? 'placed' : 'impossible', readCells(scan), digits);
  }
  if (sign === undefined && cellsFollow(scan)) return readAfterCells(scan, from);
  refuse(scan, from, wanted);
  return [];
}

/** The rest of `r1c79<>7`, where its cells begin at `from`. */
function readAfterCells(scan: Scan, from: number): Conclusion[] {
  const cells = readCells(scan);
  const written = scan.text.slice(from, scan.at);
  const signAt = scan.at + (lookAt(scan, /\s*/y)?.length ?? 0);
  const sign = take(scan, /\s*[<>=≠!/]+\s*/y)?.trim();
  if (sign === undefined) {
    reportMissingSign(scan, from, written);
    return [];
  }
  const digitsAsWritten = lookAt(scan, /\d+/y);
  if (sign !== '<>' && sign !== '≠' && sign !== '=') {
    const meant = `${written}<>${digitsAsWritten ?? 4} (impossible) or ${written}=${digitsAsWritten?.[0] ?? 4} (placed)`;
    report(scan, signAt, signAt + sign.length, `"${sign}" stands where <> or = is expected; write ${meant}`);
    if (digitsAsWritten !== undefined) readDigits(scan);
    return [];
  }
  if (!digitsFollow(scan)) {
    scan.at = signAt + sign.length;
    const rest = take(scan, /[^\s,]+/y) ?? '';
    const there = rest === '' ? 'nothing stands' : `"${rest}" stands`;
    report(
      scan,
      from,
      scan.at,
      `${there} after "${written}${sign}" where a digit is expected; write ${written}${sign}4`,
    );
    return [];
  }
  return conclude(scan, from, sign === '=' ? 'placed' : 'impossible', cells, readDigits(scan));
}

/** After the cells `written` from `from`, where no sign follows; a digit that does is passed over with them. */
function reportMissingSign(scan: Scan, from: number, written: string): void {
  const digits = take(scan, /[^\S\n]+\d+(?![^\s,])/y)?.trimStart();
  if (digits === undefined) {
    refuse(scan, from, wanted);
    return;
  }
  const meant = `${written}<>${digits} (impossible) or ${written}=${digits[0]} (placed)`;
  report(scan, from, scan.at, `no sign stands between "${written}" and "${digits}"; write ${meant}`);
}

function conclude(
  scan: Scan,
  from: number,
  as: 'placed' | 'impossible',
  cells: readonly Cell[],
  digits: readonly Digit[],
): Conclusion[] {
  const candidates = cells.flatMap((cell) => digits.map((each) => candidateAt(scan.grid, cell, each)));
  if (as === 'impossible') return candidates.map((candidate) => ({ kind: 'impossible', candidate }));
  if (digits.length > 1) {
    const written = scan.text.slice(from, scan.at);
    const message = `"${written}" puts ${digits.length} digits into one cell; a placement has one digit, as in r3c2=4`;
    report(scan, from, scan.at, message);
  }
  return candidates.map((candidate) => oneOf(scan.grid, [candidate]));
}

/** The candidates after `either`, up to the first item that is none. */
function readEither(scan: Scan, from: number): Conclusion[] {
  const faultsBefore = scan.faults.length;
  const found: Candidate[] = [];
  let end = scan.at;
  while (take(scan, /[\s,]+/y) !== undefined && (candidatesFollow(scan) || passesOverSlip(scan))) {
    if (candidatesFollow(scan)) found.push(...readCandidates(scan));
    end = scan.at;
  }
  scan.at = end;
  if (new Set(found).size < 2 && scan.faults.length === faultsBefore) {
    const count = found.length === 0 ? 'none' : 'one';
    report(scan, from, end, `either names two candidates or more, and here is ${count}; write either 4r3c2 4r1c3`);
  }
  return [oneOf(scan.grid, found)];
}

/** Passes over a word between the candidates, or a cell without its digit, and reports it. */
function passesOverSlip(scan: Scan): boolean {
  const from = scan.at;
  const word = take(scan, /(?:or|and)(?![a-z0-9])/iy);
  if (word !== undefined) report(scan, from, scan.at, `leave out "${word}"; write either 4r3c2 4r1c3`);
  if (word !== undefined) return true;
  const cell = lookAt(scan, /[rb]\d+[cp]\d+(?![^\s,])(?!\s*[<>=≠])/iy);
  if (cell === undefined) return false;
  refuse(scan, from, 'either names candidates, as in either 4r3c2 4r1c3');
  return true;
}

function oneOf(grid: Grid, candidates: readonly Candidate[]): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, candidates) };
}
