/**
 * The symmetry of the givens of a puzzle: cells that are given or blank together.
 */
import { cellAt, columnOf, rowOf } from '../grid/geometry.ts';
import type { Cell, Grid } from '../grid/grid.ts';

/**
 * `rotational`: half a turn about the centre; `diagonal`: mirrored in the line from the top left to the bottom right;
 * `mirror`: mirrored in the vertical line through the centre. Common practice.
 */
export const symmetries = ['rotational', 'diagonal', 'mirror', 'none'] as const;
export type Symmetry = (typeof symmetries)[number];

/** The board's cells in groups of one or two that go together, by their first cell. */
export function cellsTogether(grid: Grid, symmetry: Symmetry): readonly (readonly Cell[])[] {
  return grid.cells.flatMap((cell) => {
    const twin = twinOf(grid, cell, symmetry);
    if (twin < cell) return [];
    return [twin === cell ? [cell] : [cell, twin]];
  });
}

function twinOf(grid: Grid, cell: Cell, symmetry: Symmetry): Cell {
  const [row, column] = [rowOf(grid, cell), columnOf(grid, cell)];
  const across = grid.size + 1;
  switch (symmetry) {
    case 'rotational':
      return cellAt(grid, across - row, across - column);
    case 'diagonal':
      return cellAt(grid, column, row);
    case 'mirror':
      return cellAt(grid, row, across - column);
    case 'none':
      return cell;
    default:
      return symmetry satisfies never;
  }
}
