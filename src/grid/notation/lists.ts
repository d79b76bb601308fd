/**
 * What a viewer writes down: `only` (`4b5 in r4c46`, the places of a digit) and `pencil` (`2358r9c1`, the digits of a cell).
 */
import type { Cell, Digit, Grid, HouseShape } from '../grid.ts';
import type { OnlyPlaces, PencilList, Reading } from '../terms.ts';
import { candidatesFollow } from './candidates.ts';
import { cellsFollow, readCells } from './cells.ts';
import { placesFollow, readHouses } from './houses.ts';
import { readDigits } from './numbers.ts';
import { printCell, printCells, printDigits } from './print.ts';
import { isAtEnd, readingOf, readList, refuse, report, type Scan, startScan, take, takeWord } from './scan.ts';

const wantedPlaces = 'places are written 4b2 in r12c3: a digit, a house, in, and cells of the house';
const wantedList = 'a pencil list is digits and cells, as in 14r3c2, 14r12c3 or 14b2p13';

/** The texts of `only` in order; `24b5 in r4c46` gives one for each digit. */
export function parseOnly(grid: Grid, text: string): Reading<readonly OnlyPlaces[]> {
  const scan = startScan(grid, text);
  const found: OnlyPlaces[] = [];
  readList(scan, wantedPlaces, () => {
    if (candidatesFollow(scan) || !placesFollow(scan)) {
      refuse(scan, scan.at, wantedPlaces);
      take(scan, /(?:[\s,]+(?![\d(])[^\s,]+)*/y); // its places are not read without it
      return;
    }
    found.push(...readOnly(scan));
  });
  return readingOf(scan, found);
}

/** The lists of `pencil`, one a cell, in the order in which they are written; a cell may have one list. */
export function parsePencil(grid: Grid, text: string): Reading<readonly PencilList[]> {
  const scan = startScan(grid, text);
  const found = new Map<Cell, PencilList>();
  readList(scan, wantedList, () => {
    if (!candidatesFollow(scan)) return refuse(scan, scan.at, wantedList);
    const from = scan.at;
    const digits = readDigits(scan);
    for (const cell of readCells(scan)) {
      const before = found.get(cell);
      if (before !== undefined) reportSecondList(scan, from, before);
      else found.set(cell, { cell, digits });
    }
  });
  return readingOf(scan, [...found.values()]);
}

function reportSecondList(scan: Scan, from: number, before: PencilList): void {
  const cell = printCell(scan.grid, before.cell);
  const first = `${printDigits(before.digits)}${cell}`;
  report(scan, from, scan.at, `${cell} has its list already, ${first}; write one list a cell`);
}

function readOnly(scan: Scan): OnlyPlaces[] {
  const from = scan.at;
  const digits = readDigits(scan);
  const houses = readHouses(scan);
  const written = scan.text.slice(from, scan.at);
  const [house, ...others] = houses;
  if (others.length > 0) {
    report(
      scan,
      from,
      scan.at,
      `"${written}" names ${houses.length} houses; write each with its own cells, as in 4b2 in r12c3`,
    );
  }
  const end = scan.at;
  take(scan, /\s+/y);
  if (!takeWord(scan, 'in')) {
    scan.at = end;
    report(scan, from, end, `the word in and cells must follow "${written}"; ${wantedPlaces}`);
  }
  const cells = readPlaces(scan, from, others.length > 0 ? undefined : house);
  if (house === undefined) return [];
  return digits.map((digit: Digit) => ({ digit, house, cells }));
}

/** The cells after `in`, up to the first item that is none; those outside the house are reported. */
function readPlaces(scan: Scan, from: number, house: HouseShape | undefined): Cell[] {
  const found = new Set<Cell>();
  let end = scan.at;
  while (take(scan, /[\s,]+/y) !== undefined && cellsFollow(scan)) {
    const at = scan.at;
    const cells = readCells(scan);
    end = scan.at;
    for (const cell of cells) found.add(cell);
    const outside = house === undefined ? [] : cells.filter((cell) => !house.cells.includes(cell));
    if (outside.length > 0) reportOutside(scan, at, outside, house!);
  }
  const isOver = isAtEnd(scan) || placesFollow(scan);
  scan.at = end;
  if (found.size === 0 && isOver && scan.faults.every((fault) => fault.at < from)) {
    report(scan, from, end, `no cells follow "${scan.text.slice(from, end)}"; ${wantedPlaces}`);
  }
  return [...found].sort((a, b) => a - b);
}

function reportOutside(scan: Scan, at: number, outside: readonly Cell[], house: HouseShape): void {
  const verb = outside.length === 1 ? 'lies' : 'lie';
  const all = printCells(scan.grid, house.cells);
  report(scan, at, scan.at, `${printCells(scan.grid, outside)} ${verb} outside ${house.name}; its cells are ${all}`);
}
