/**
 * Lines of sight: from a written digit over the cells in which it shuts out its copies, as far as they do work.
 *
 * A line runs from the digit to the last open cell that it reaches (`everywhere`, `along`), or across the house that it
 * is to reach (`into`) where that has an open cell in its way. In a box the cells in neither the digit's row nor its
 * column stand by themselves.
 */
import { type Cell, columnOf, type Grid, type HouseShape, rowOf } from '../grid/grid.ts';
import type { Sight } from '../scene/scene.ts';
import type { MarkShape } from '../timeline/film.ts';

export type SightShape = Extract<MarkShape, { readonly kind: 'sight' }>;

/** The lines of this sight; `isOpen` tells the cells without a digit. None where it would shut out nothing. */
export function linesOfSight(grid: Grid, sight: Sight, isOpen: (cell: Cell) => boolean): SightShape[] {
  const { cell: of, way } = sight;
  switch (way.kind) {
    case 'everywhere':
      return grid.housesOf[of]!.flatMap((house) =>
        house.kind === 'box'
          ? shapeOf(of, house, apartIn(grid, of, house).filter(isOpen))
          : shapeOf(
              of,
              house,
              raysAlong(grid, of, house).flatMap((ray) => upToLast(ray, isOpen)),
            ),
      );
    case 'along':
      return shapeOf(
        of,
        way.house,
        raysAlong(grid, of, way.house).flatMap((ray) => upToLast(ray, isOpen)),
      );
    case 'into': {
      const inside = (cell: Cell) => way.house.cells.includes(cell);
      const lines = grid.housesOf[of]!.filter((house) => house.kind !== 'box').flatMap((house) => {
        const rays = raysAlong(grid, of, house).filter((ray) => ray.some((cell) => inside(cell) && isOpen(cell)));
        return shapeOf(
          of,
          house,
          rays.flatMap((ray) => upToLast(ray, inside)),
        );
      });
      const box = grid.housesOf[of]!.find((house) => house.kind === 'box');
      const apart = box === undefined ? [] : apartIn(grid, of, box).filter((cell) => inside(cell) && isOpen(cell));
      return [...lines, ...(box === undefined ? [] : shapeOf(of, box, apart))];
    }
    default:
      return way satisfies never;
  }
}

function shapeOf(of: Cell, house: HouseShape, cells: readonly Cell[]): SightShape[] {
  return cells.length === 0 ? [] : [{ kind: 'sight', of, cells, house }];
}

/** The cells of a row or column on either side of the digit, each side from the digit outwards. */
function raysAlong(grid: Grid, of: Cell, house: HouseShape): Cell[][] {
  const line = house.cells.filter(
    (cell) => rowOf(grid, cell) === rowOf(grid, of) || columnOf(grid, cell) === columnOf(grid, of),
  );
  return [line.filter((cell) => cell < of).reverse(), line.filter((cell) => cell > of)];
}

function upToLast(ray: readonly Cell[], reaches: (cell: Cell) => boolean): Cell[] {
  return ray.slice(0, ray.findLastIndex(reaches) + 1);
}

/** The cells of the digit's box that its row and column do not pass. */
function apartIn(grid: Grid, of: Cell, box: HouseShape): Cell[] {
  return box.cells.filter(
    (cell) => rowOf(grid, cell) !== rowOf(grid, of) && columnOf(grid, cell) !== columnOf(grid, of),
  );
}
