import { digit } from '../../src/grid/geometry.ts';
import type { Digit, Grid } from '../../src/grid/grid.ts';

/** Givens as one sees them: a symbol a cell, `.` and `0` blank, spaces and line breaks ignored; cells left over are blank. */
export function givensFrom(grid: Grid, text: string): (Digit | undefined)[] {
  const symbols = [...text.replace(/\s/g, '')];
  return symbols.map((symbol) => (symbol === '.' || symbol === '0' ? undefined : digit(grid, Number(symbol))));
}
