/**
 * What a mark is put on: cells (`r12c5`), houses (`c58`), candidates (`7r1c5`, `7c5`), or a bare digit (`7`).
 */
import { candidatesInHouse, type Grid } from '../grid.ts';
import type { Reading, Target } from '../terms.ts';
import { candidatesFollow, readCandidates } from './candidates.ts';
import { cellsFollow, readCells } from './cells.ts';
import { housesFollow, placesFollow, readHouses } from './houses.ts';
import { digitsFollow, readDigits } from './numbers.ts';
import { readingOf, readList, refuse, type Scan, startScan } from './scan.ts';

const wanted = 'a mark is put on cells (r3c2), houses (c3, b2), candidates (4r3c2, 4c3) or a digit (4)';

/**
 * The targets of a list in order: one for the cells of an item, one for each house, one for the candidates of an
 * item, one for each bare digit. `7c5` is every place of column 5 for a 7, possible or not.
 */
export function parseTargets(grid: Grid, text: string): Reading<readonly Target[]> {
  const scan = startScan(grid, text);
  const found: Target[] = [];
  readList(scan, wanted, () => found.push(...readTargets(scan)));
  return readingOf(scan, found);
}

function readTargets(scan: Scan): Target[] {
  if (candidatesFollow(scan)) return [{ kind: 'candidates', candidates: readCandidates(scan) }];
  if (placesFollow(scan)) return readPlacesAsCandidates(scan);
  if (cellsFollow(scan)) return [{ kind: 'cells', cells: readCells(scan) }];
  if (housesFollow(scan)) return readHouses(scan).map((house) => ({ kind: 'house', house }));
  if (digitsFollow(scan)) return readDigits(scan).map((digit) => ({ kind: 'digit', digit }));
  refuse(scan, scan.at, wanted);
  return [];
}

function readPlacesAsCandidates(scan: Scan): Target[] {
  const digits = readDigits(scan);
  return readHouses(scan).map((house) => {
    const candidates = digits.flatMap((digit) => candidatesInHouse(scan.grid, digit, house));
    return { kind: 'candidates', candidates: candidates.sort((a, b) => a - b) };
  });
}
