/**
 * The sets of an argument read as what they name: cells, or the places of a digit in houses.
 */
import type { Candidates } from '../grid/candidates.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import type { OneOf } from '../proof/kernel.ts';
import { digitsOf } from './seen-by-all.ts';

export interface CellSet {
  readonly cell: Cell;
  readonly members: Candidates;
}

export interface PlacesSet {
  readonly digit: Digit;
  readonly house: HouseShape;
  readonly members: Candidates;
}

/** The sets as cells, each once; undefined if one of them is not a cell's, or if there are none. */
export function readAsCells(sets: readonly OneOf[]): readonly CellSet[] | undefined {
  const cells = new Map<Cell, CellSet>();
  for (const { source, members } of sets) {
    if (source.kind !== 'cell') return undefined;
    cells.set(source.cell, { cell: source.cell, members });
  }
  return cells.size === 0 ? undefined : [...cells.values()];
}

/**
 * The sets as places of digits in houses, each once; undefined if one of them is something else, or if there are none.
 */
export function readAsPlaces(sets: readonly OneOf[]): readonly PlacesSet[] | undefined {
  const places = new Map<string, PlacesSet>();
  for (const { source, members } of sets) {
    if (source.kind !== 'places') return undefined;
    places.set(`${source.digit}${source.house.name}`, { digit: source.digit, house: source.house, members });
  }
  return places.size === 0 ? undefined : [...places.values()];
}

/** The digit that all candidates of all sets share, if no set is a cell's or the guardians of a deadly pattern. */
export function digitOfAll(grid: Grid, sets: readonly OneOf[]): Digit | undefined {
  const digits = new Set<Digit>();
  for (const { source, members } of sets) {
    if (source.kind === 'cell' || source.kind === 'guardians') return undefined;
    for (const digit of digitsOf(grid, members)) digits.add(digit);
  }
  return digits.size === 1 ? [...digits][0] : undefined;
}
