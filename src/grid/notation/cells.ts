/**
 * Cells: `r3c5`, `r12c57` (every row with every column), `b7p156` (positions of a box), `r9c3|r8c1` (joined).
 */
import { cellAt, houseAt } from '../geometry.ts';
import type { Cell, Grid } from '../grid.ts';
import type { Reading } from '../terms.ts';
import { readNumbers } from './numbers.ts';
import { lookAt, readingOf, readList, refuse, report, type Scan, startScan, take } from './scan.ts';

const wanted = 'cells are written r3c2, r12c34 or b2p13';

/** The cells of a list, in reading order, none twice. */
export function parseCells(grid: Grid, text: string): Reading<readonly Cell[]> {
  const scan = startScan(grid, text);
  const found: Cell[] = [];
  readList(scan, wanted, () => {
    if (cellsFollow(scan)) found.push(...readCells(scan));
    else refuse(scan, scan.at, wanted);
  });
  return readingOf(scan, inOrder(found));
}

/** Whether a cell comes next. */
export function cellsFollow(scan: Scan): boolean {
  return lookAt(scan, /r\d+c\d|b\d+p\d/iy) !== undefined;
}

/**
 * The cells here, joined ones included, in reading order, none twice; `cellsFollow` must hold.
 * Numbers out of range are reported and left out, and so is a `|` with no cell after it.
 */
export function readCells(scan: Scan): Cell[] {
  const found = readProduct(scan);
  for (let bar = take(scan, /\s*\|\s*/y); bar !== undefined; bar = take(scan, /\s*\|\s*/y)) {
    if (cellsFollow(scan)) {
      found.push(...readProduct(scan));
    } else {
      const from = scan.at - bar.trimStart().length;
      take(scan, /[^\s,=\-−–]+/y);
      report(scan, from, scan.at, 'no cell stands after this |; cells are joined as in r1c3|r4c1');
    }
  }
  return inOrder(found);
}

function readProduct(scan: Scan): Cell[] {
  const isBox = take(scan, /[rb]/iy)?.toLowerCase() === 'b';
  const firsts = readNumbers(scan, isBox ? 'box' : 'row');
  take(scan, /[cp]/iy);
  const seconds = readNumbers(scan, isBox ? 'position' : 'column');
  return firsts.flatMap((first) =>
    seconds.map((second) =>
      isBox ? houseAt(scan.grid, 'box', first)!.cells[second - 1]! : cellAt(scan.grid, first, second),
    ),
  );
}

/** Ascending, none twice. */
function inOrder(cells: readonly Cell[]): Cell[] {
  return [...new Set(cells)].sort((a, b) => a - b);
}
