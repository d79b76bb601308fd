/**
 * Deadly patterns: `12r34c58`, `12r1c14 12r2c47 12r3c17`, `grid`, `grid without 7r1c5 3r4c4`.
 */
import { setOf } from '../candidates.ts';
import type { Grid } from '../grid.ts';
import type { Deadly, PatternPart, Reading } from '../terms.ts';
import { candidatesFollow, readCandidateList } from './candidates.ts';
import { readCells } from './cells.ts';
import { readDigits } from './numbers.ts';
import {
  isAtEnd,
  readingOf,
  readList,
  refuse,
  report,
  type Scan,
  skipBlanks,
  startScan,
  take,
  takeWord,
} from './scan.ts';

const wanted = 'a deadly pattern is digits and cells (12r34c24), or grid, or grid without 4r3c2';

/** A pattern of cells with its digits, part by part as written; or the whole grid. */
export function parseDeadly(grid: Grid, text: string): Reading<Deadly> {
  const scan = startScan(grid, text);
  skipBlanks(scan);
  const deadly = takeWord(scan, 'grid') ? readGrid(scan) : readPattern(scan);
  return readingOf(scan, deadly);
}

function readPattern(scan: Scan): Deadly {
  const parts: PatternPart[] = [];
  readList(scan, wanted, () => {
    if (!candidatesFollow(scan)) return refuse(scan, scan.at, wanted);
    const digits = readDigits(scan);
    parts.push({ digits, cells: readCells(scan) });
  });
  return { kind: 'pattern', parts };
}

function readGrid(scan: Scan): Deadly {
  take(scan, /[\s,]+/y);
  if (isAtEnd(scan)) return { kind: 'grid', without: undefined };
  const from = scan.at;
  if (takeWord(scan, 'without')) {
    return { kind: 'grid', without: setOf(scan.grid, readCandidateList(scan)) };
  }
  scan.at = scan.text.trimEnd().length;
  const rest = scan.text.slice(from, scan.at);
  report(scan, from, scan.at, `"${rest}" stands after grid; write grid alone, or grid without 4r3c2 1r4c4`);
  return { kind: 'grid', without: undefined };
}
