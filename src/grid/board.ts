/**
 * What a board is made of, as types: they are gone before anything runs. `grid.ts` makes the values.
 */
import type { Candidates } from './candidates.ts';
import type { BoardRule, BoxShape } from './grid.ts';

declare const cellBrand: unique symbol;
declare const digitBrand: unique symbol;
declare const houseBrand: unique symbol;

/** A cell, `0` to `size * size - 1`, row by row from the top left; made by `cellAt`. */
export type Cell = number & { readonly [cellBrand]: true };
/** A digit, `1` to `size`; made by `digit`. */
export type Digit = number & { readonly [digitBrand]: true };
/** The number of a house in `grid.houses`. */
export type House = number & { readonly [houseBrand]: true };

export type HouseKind = 'row' | 'column' | 'box' | 'diagonal';

/** A region that holds every digit once. */
export interface HouseShape {
  readonly house: House;
  readonly kind: HouseKind;
  /** Counted from 1 within its kind. */
  readonly number: number;
  /** As written: `r3`, `c5`, `b2`, `d1`. */
  readonly name: string;
  /** `size` cells, in reading order; `b7p3` is the third of box 7. */
  readonly cells: readonly Cell[];
}

export interface Grid {
  /** Cells in a row, and digits: 4 to 9. */
  readonly size: number;
  /** Rows of a box, and columns; both are `size`, as if the board were one box, where regions replace the boxes. */
  readonly boxRows: number;
  readonly boxColumns: number;
  readonly cellCount: number;
  readonly candidateCount: number;
  readonly cells: readonly Cell[];
  readonly digits: readonly Digit[];
  /** Rows, then columns, then boxes (or the regions in their place), then diagonals. */
  readonly houses: readonly HouseShape[];
  /** By cell: the houses that hold it. */
  readonly housesOf: readonly (readonly HouseShape[])[];
  /** By cell: the cells that cannot hold the same digit, in order; the cell itself is not among them. */
  readonly peers: readonly (readonly Cell[])[];
  /** By candidate: all candidates that cannot be true together with it; not itself. */
  readonly conflicts: readonly Candidates[];
}

/** A board: boxes of one shape, or regions in their place, and further rules. */
export interface BoardPlan {
  /** By cell: the number of its region, from 0; `size` regions of `size` cells each, numbered in reading order. */
  readonly regions: BoxShape | readonly number[];
  readonly rules: readonly BoardRule[];
}
