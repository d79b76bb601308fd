/**
 * The sets of an argument as the places that they are about.
 */
import type { ArgumentSet } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { type Cell, cellOf, type Grid, type HouseShape } from '../grid/grid.ts';

/** The house of a set that is named by a digit and a house (`7c5`); undefined for any other. */
export function houseOfSet(grid: Grid, { name }: ArgumentSet): HouseShape | undefined {
  const match = /^\d+([rcbd]\d+)$/.exec(name);
  return grid.houses.find((house) => house.name === match?.[1]);
}

/** The cells of candidates, ascending, each once. */
export function cellsOf(grid: Grid, candidates: readonly Candidate[]): Cell[] {
  return ascending(candidates.map((candidate) => cellOf(grid, candidate)));
}

/** Cells, ascending, each once. */
export function ascending(cells: readonly Cell[]): Cell[] {
  return [...new Set(cells)].sort((a, b) => a - b);
}
