/**
 * Lines of sight: from a written digit over the cells in which it rules out its copies, as far as they have an effect.
 *
 * A line runs from the digit to the last open cell that it reaches (`everywhere`, `along`), or across the house that it
 * should reach (`into`) if that has an open cell in its way. On a diagonal that has every digit once, it runs along
 * that. Cells of the box that no such line passes are separate, and so are those that share no house with the digit (a
 * knight's or a king's move away).
 */
import { columnOf, rowOf } from '../grid/geometry.ts';
import type { Cell, Grid, HouseShape } from '../grid/grid.ts';
import type { Sight } from '../scene/scene.ts';
import type { MarkShape } from '../timeline/film.ts';

export type SightShape = Extract<MarkShape, { readonly kind: 'sight' }>;

/** The lines of this sight; `isOpen`: whether a cell has no digit. Empty if it would rule out nothing. */
export function linesOfSight(grid: Grid, sight: Sight, isOpen: (cell: Cell) => boolean): SightShape[] {
  const { cell: of, way } = sight;
  switch (way.kind) {
    case 'everywhere':
      return [
        ...grid.housesOf[of]!.flatMap((house) =>
          house.kind === 'box'
            ? shapeOf(of, house, apartIn(grid, of, house).filter(isOpen))
            : shapeOf(
                of,
                house,
                raysAlong(grid, of, house).flatMap((ray) => upToLast(ray, isOpen)),
              ),
        ),
        ...shapeOf(of, undefined, byRule(grid, of).filter(isOpen)),
      ];
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
      const within = (cells: readonly Cell[]) => cells.filter((cell) => inside(cell) && isOpen(cell));
      const apart = box === undefined ? [] : within(apartIn(grid, of, box));
      return [...lines, ...shapeOf(of, box, apart), ...shapeOf(of, undefined, within(byRule(grid, of)))];
    }
    default:
      return way satisfies never;
  }
}

function shapeOf(of: Cell, house: HouseShape | undefined, cells: readonly Cell[]): SightShape[] {
  return cells.length === 0 ? [] : [{ kind: 'sight', of, cells, house }];
}

/** The cells of a row, a column or a diagonal on either side of the digit, each side from the digit outwards. */
function raysAlong(grid: Grid, of: Cell, house: HouseShape): Cell[][] {
  const line =
    house.kind === 'diagonal'
      ? house.cells
      : house.cells.filter(
          (cell) => rowOf(grid, cell) === rowOf(grid, of) || columnOf(grid, cell) === columnOf(grid, of),
        );
  return [line.filter((cell) => cell < of).reverse(), line.filter((cell) => cell > of)];
}

function upToLast(ray: readonly Cell[], reaches: (cell: Cell) => boolean): Cell[] {
  return ray.slice(0, ray.findLastIndex(reaches) + 1);
}

/** The cells of the digit's box that its lines do not pass. */
function apartIn(grid: Grid, of: Cell, box: HouseShape): Cell[] {
  const lines = grid.housesOf[of]!.filter((house) => house.kind !== 'box');
  return box.cells.filter((cell) => cell !== of && !lines.some((house) => house.cells.includes(cell)));
}

/** The cells that the digit rules out only by an additional rule: it shares no house with them. */
function byRule(grid: Grid, of: Cell): Cell[] {
  return grid.peers[of]!.filter((cell) => !grid.housesOf[of]!.some((house) => house.cells.includes(cell)));
}
