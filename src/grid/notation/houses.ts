/**
 * Houses: `r3`, `c58` (two columns), `b2`; on boards with diagonals `d1` and `d2`.
 */
import { houseAt } from '../geometry.ts';
import type { Grid, HouseKind, HouseShape } from '../grid.ts';
import type { Reading } from '../terms.ts';
import { readNumbers } from './numbers.ts';
import { lookAt, readingOf, readList, refuse, type Scan, startScan, take } from './scan.ts';

const wanted = 'houses are written r3, c24 or b2';

const kinds: Readonly<Record<string, HouseKind>> = { r: 'row', c: 'column', b: 'box', d: 'diagonal' };

/** The houses of a list, in the order in which they are written, none twice. */
export function parseHouses(grid: Grid, text: string): Reading<readonly HouseShape[]> {
  const scan = startScan(grid, text);
  const found = new Set<HouseShape>();
  readList(scan, wanted, () => {
    if (!housesFollow(scan)) return refuse(scan, scan.at, wanted);
    for (const house of readHouses(scan)) found.add(house);
  });
  return readingOf(scan, [...found]);
}

/** Whether the letter of a house and a number come next. */
export function housesFollow(scan: Scan): boolean {
  return lookAt(scan, hasDiagonals(scan) ? /[rcbd]\d/iy : /[rcb]\d/iy) !== undefined;
}

/** Whether digits and a house come next, as in `7c58` or `(7)c58`; candidates begin so too. */
export function placesFollow(scan: Scan): boolean {
  const found = lookAt(scan, /(?:\(\s*\d+\s*\)|\(?\d+)[rcbd]\d/iy);
  return found !== undefined && (hasDiagonals(scan) || !/d/i.test(found));
}

/** The houses here, by number; `housesFollow` must hold. Numbers out of range are reported and left out. */
export function readHouses(scan: Scan): HouseShape[] {
  const kind = kinds[take(scan, /[rcbd]/iy)!.toLowerCase()]!;
  return readNumbers(scan, kind).map((number) => houseAt(scan.grid, kind, number)!);
}

function hasDiagonals({ grid }: Scan): boolean {
  return grid.houses.some((house) => house.kind === 'diagonal');
}
