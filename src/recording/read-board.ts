/**
 * A board read from one picture: which digits stand in its cells, and which of them were given.
 */
import { columnOf, rowOf } from '../grid/geometry.ts';
import type { Digit, Grid } from '../grid/grid.ts';
import { cellOfBoard, readSide } from './board-cells.ts';
import { inkOf } from './cell-ink.ts';
import { type CellReading, cellReadings, type Reading } from './cell-reading.ts';
import type { Corners } from './corners.ts';
import type { DigitShapes } from './digit-shapes.ts';
import { inkGroups } from './ink-groups.ts';
import { type LikelyGivens, likelyGivens } from './likely-givens.ts';
import type { RgbPicture } from './picture.ts';
import { rectifiedRgb } from './rectify.ts';

export interface BoardReading {
  /** By cell. */
  readonly givens: readonly (Digit | undefined)[];
  /** By cell: digits that were written; a cell has one of the two at most. */
  readonly placed: readonly (Digit | undefined)[];
  /** `r3c5`: what stands there, or whether anything does, is not certain. */
  readonly doubtful: readonly string[];
  /** Whether the givens have exactly one solution. */
  readonly isUnique: boolean;
  /** How many colours the digits have. */
  readonly inkCount: number;
}

/** A written digit that is not clear by this much, a logarithm of odds, is doubtful. */
const clear = 2.5;
/** Of all ways to say which colours are those of givens so many are tried. */
const mostChoices = 8;

/** `corners`: of the grid's outer square. */
export function readBoard(picture: RgbPicture, corners: Corners, grid: Grid, shapes: DigitShapes): BoardReading {
  const flat = rectifiedRgb(picture, corners, grid.size * readSide);
  const inks = grid.cells.map((cell) =>
    inkOf(cellOfBoard(flat, columnOf(grid, cell) - 1, rowOf(grid, cell) - 1, readSide)),
  );
  return sorted(grid, cellReadings(inks, grid.size, shapes));
}

/** Which digits are givens: those of the colours with which there is exactly one solution. */
function sorted(grid: Grid, cells: readonly CellReading[]): BoardReading {
  const filled = grid.cells.filter(
    (cell) => cells[cell]!.mark !== undefined && cells[cell]!.readings[0].digit !== undefined,
  );
  const groups = inkGroups(filled.map((cell) => cells[cell]!.mark!.colour)).map((group) =>
    group.map((index) => filled[index]!),
  );
  const choices = givenChoices(groups, (cell) => cells[cell]!.mark!.contrast);
  let best: { readonly likely: LikelyGivens; readonly chosen: ReadonlySet<number> } | undefined;
  for (const chosen of choices) {
    const likely = likelyGivens(
      grid,
      grid.cells.map((cell) => readingsAs(cells[cell]!, chosen.has(cell))),
    );
    if (best === undefined || likely.isUnique) best = { likely, chosen };
    if (likely.isUnique) break;
  }
  const { likely, chosen } = best!;
  const placed = grid.cells.map((cell) =>
    chosen.has(cell) || cells[cell]!.mark === undefined ? undefined : cells[cell]!.readings[0].digit,
  );
  const isDoubtful = (cell: number) => {
    const { mark, readings, isCovered } = cells[cell]!;
    if (mark === undefined) return isCovered;
    if (chosen.has(cell)) return likely.isDoubtful[cell]!;
    return readings[0].digit === undefined || (readings[1]?.cost ?? Number.POSITIVE_INFINITY) < clear;
  };
  return {
    givens: likely.givens,
    placed: placed as readonly (Digit | undefined)[],
    doubtful: grid.cells.filter(isDoubtful).map((cell) => `r${rowOf(grid, cell)}c${columnOf(grid, cell)}`),
    isUnique: likely.isUnique,
    inkCount: groups.length,
  };
}

function readingsAs({ readings }: CellReading, isGiven: boolean): readonly Reading[] {
  return isGiven ? readings : [{ digit: undefined, cost: 0 }];
}

/**
 * Sets of cells that may be the givens, the most likely first: one colour alone, beginning with the one that stands out
 * most; then two together; then all.
 */
function givenChoices(
  groups: readonly (readonly number[])[],
  contrastIn: (cell: number) => number,
): readonly ReadonlySet<number>[] {
  const median = (cells: readonly number[]) =>
    cells.map(contrastIn).sort((a, b) => a - b)[Math.floor(cells.length / 2)]!;
  const ordered = [...groups].sort((a, b) => median(b) - median(a));
  const pairs = ordered.flatMap((one, index) => ordered.slice(index + 1).map((other) => [...one, ...other]));
  return [...ordered, ...pairs, ordered.flat()].slice(0, mostChoices).map((cells) => new Set(cells));
}
