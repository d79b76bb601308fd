/**
 * A film as text embedded in a page, and back: the part of it that the picture needs.
 */
import type { Cell, Grid, HouseShape } from '../grid/grid.ts';
import type { Film } from '../timeline/film.ts';

type Written = Omit<Film, 'grid' | 'rate'> & {
  readonly rate: readonly [numerator: string, denominator: string];
  readonly grid: Omit<Grid, 'housesOf' | 'peers' | 'conflicts' | 'cells' | 'digits'>;
};

/** JSON (RFC 8259). */
export function filmAsText(film: Film): string {
  const { grid, rate } = film;
  const { housesOf: _houses, peers: _peers, conflicts: _conflicts, cells: _cells, digits: _digits, ...board } = grid;
  const written: Written = { ...film, grid: board, rate: [String(rate.numerator), String(rate.denominator)] };
  return JSON.stringify(written);
}

/** The film of that text. Its grid has the geometry, but not what a proof needs: `peers` and `conflicts` are empty. */
export function filmFromText(text: string): Film {
  const written = JSON.parse(text) as Written;
  const { grid, rate } = written;
  const cells = Array.from({ length: grid.cellCount }, (_, cell) => cell as Cell);
  return {
    ...written,
    rate: { numerator: BigInt(rate[0]), denominator: BigInt(rate[1]) },
    grid: {
      ...grid,
      cells,
      digits: Array.from({ length: grid.size }, (_, index) => (index + 1) as Grid['digits'][number]),
      housesOf: cells.map((cell) => grid.houses.filter((house: HouseShape) => house.cells.includes(cell))),
      peers: [],
      conflicts: [],
    },
  };
}
