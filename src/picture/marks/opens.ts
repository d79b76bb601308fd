/**
 * What a removal opens: the four corners of a placement's frame, thin, as a place laid ready for the digit. The frame
 * itself closes when the digit is placed.
 */

import { cellOf } from '../../grid/grid.ts';
import type { Point } from '../../scene/scene.ts';
import { line, type Path } from '../path.ts';
import { strokePaths, strokeWidth } from '../pen.ts';
import { cornerOf } from '../small-digits.ts';
import type { BoardStage, Standing } from '../stage.ts';

/** Parts of a cell. */
const inset = 0.09;
const reach = 0.2;

/** The corners of one cell. */
export function paintOpens(stage: BoardStage, { mark, ink }: Standing): void {
  if (mark.shape.kind !== 'opens') return;
  const { look, film } = stage;
  const corner = cornerOf(film.grid, cellOf(film.grid, mark.shape.candidate));
  const colour = mark.group === undefined ? look.colours.placement : look.colours.groups[mark.group.colour];
  const width = strokeWidth(stage, look.strokes.outline * 0.7);
  strokePaths(stage, cornersOf(corner, reach * ink.progress), { colour, width, alpha: ink.alpha, cased: true });
}

function cornersOf([x, y]: Point, arm: number): Path[] {
  return [
    [x + inset, y + inset, 1, 1],
    [x + 1 - inset, y + inset, -1, 1],
    [x + 1 - inset, y + 1 - inset, -1, -1],
    [x + inset, y + 1 - inset, 1, -1],
  ].map(([cx, cy, dx, dy]) => line([cx! + arm * dx!, cy!], [cx!, cy!], [cx!, cy! + arm * dy!]));
}
