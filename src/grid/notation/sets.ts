/**
 * Sets as named after `from`: `r9c13` (two cells), `7c58` (the places for 7 in two columns), `step towers`.
 */
import type { Grid } from '../grid.ts';
import type { Reading, SetName } from '../terms.ts';
import { cellsFollow, readCells } from './cells.ts';
import { placesFollow, readHouses } from './houses.ts';
import { readDigits } from './numbers.ts';
import { printSet } from './print.ts';
import { readingOf, readList, refuse, type Scan, startScan, take, takeWord } from './scan.ts';

/** A set with the place of the item that names it: `12c58` names four sets, all at the same place. */
export interface NamedSet {
  readonly name: SetName;
  readonly at: number;
  readonly length: number;
}

const wanted =
  'a set is a cell (r3c2), the places of a digit in a house (4r3, 4c2, 4b2), or what a step proved (step NAME)';

/** The sets of a list, in the order in which they are written; a set that is named again is not listed again. */
export function parseSets(grid: Grid, text: string): Reading<readonly NamedSet[]> {
  const scan = startScan(grid, text);
  const found = new Map<string, NamedSet>();
  readList(scan, wanted, () => {
    const at = scan.at;
    for (const name of readSets(scan)) {
      const key = printSet(grid, name);
      if (!found.has(key)) found.set(key, { name, at, length: scan.at - at });
    }
  });
  return readingOf(scan, [...found.values()]);
}

function readSets(scan: Scan): SetName[] {
  if (cellsFollow(scan)) return readCells(scan).map((cell) => ({ kind: 'cell', cell }));
  if (placesFollow(scan)) {
    const digits = readDigits(scan);
    const houses = readHouses(scan);
    return digits.flatMap((digit) => houses.map((house) => ({ kind: 'places' as const, digit, house })));
  }
  const from = scan.at;
  if (takeWord(scan, 'step')) {
    const id = take(scan, /\s+[a-z0-9-]+/iy)?.trimStart();
    if (id !== undefined) return [{ kind: 'step', id }];
  }
  refuse(scan, from, wanted);
  return [];
}
