/** The cells that have no digit yet, as sets. */
import type { Cell } from '../grid/grid.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type OneOf, type Position } from '../proof/kernel.ts';

/** The candidates of a cell, which its source names. */
export interface CellOneOf extends OneOf {
  readonly source: { readonly kind: 'cell'; readonly cell: Cell };
}

/** The open cells in order; computed once, since a position never changes. */
export function openCells(position: Position): readonly CellOneOf[] {
  const made = known.get(position) ?? makeOpenCells(position);
  known.set(position, made);
  return made;
}

const known = new WeakMap<Position, readonly CellOneOf[]>();

function makeOpenCells(position: Position): CellOneOf[] {
  return position.grid.cells
    .filter((cell) => !isPlaced(position, cell))
    .map((cell) => digitsIn(position, cell))
    .filter((set): set is CellOneOf => set.source.kind === 'cell');
}
