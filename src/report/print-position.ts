/** A position as lines of text: in each cell its digit in brackets, or the digits still possible. */
import { has } from '../grid/candidates.ts';
import { cellAt } from '../grid/geometry.ts';
import { candidateAt, type Grid } from '../grid/grid.ts';
import type { Position } from '../proof/kernel.ts';

/** One line a row, a blank line between bands; columns of equal width. */
export function positionLines(position: Pick<Position, 'grid' | 'possible' | 'placed'>): string[] {
  const { grid } = position;
  const rows = grid.digits.map((row) => grid.digits.map((column) => cellText(position, row, column)));
  const widths = grid.digits.map((column) => Math.max(...rows.map((row) => row[column - 1]!.length)));
  return rows.flatMap((row, index) => {
    const line = row.map((text, column) => `${text.padEnd(widths[column]!)}${gapAfter(grid, column)}`).join('');
    const endsBand = grid.boxRows < grid.size && (index + 1) % grid.boxRows === 0 && index + 1 < grid.size;
    return endsBand ? [line.trimEnd(), ''] : [line.trimEnd()];
  });
}

function gapAfter(grid: Grid, column: number): string {
  return grid.boxColumns < grid.size && (column + 1) % grid.boxColumns === 0 ? '   ' : ' ';
}

function cellText(
  { grid, possible, placed }: Parameters<typeof positionLines>[0],
  row: number,
  column: number,
): string {
  const cell = cellAt(grid, row, column);
  const standing = grid.digits.find((digit) => has(placed, candidateAt(grid, cell, digit)));
  if (standing !== undefined) return `[${standing}]`;
  return grid.digits.filter((digit) => has(possible, candidateAt(grid, cell, digit))).join('');
}
