/**
 * What a removal opens: the four corners of the cell, on its edge and thin, as a place prepared for the digit. Inside
 * the edge they would cover the small digits in its corners.
 */

import { cellOf } from '../grid/grid.ts';
import { spokenCandidates } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { line, type Path } from '../picture/path.ts';
import { strokePaths, strokeWidth } from '../picture/pen.ts';
import { cornerOf } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import type { Point } from '../scene/scene.ts';
import type { DrawnRecord } from './record.ts';
import { always, type MarkWords } from './words.ts';

export const beat = {
  strokes: ({ board }, { candidates }, { from }) =>
    candidates.map((candidate) => ({ shape: { kind: 'opens', candidate }, from, until: board.openUntil(candidate) })),
} satisfies DrawnRecord<'opens'>['beat'];

export const words = {
  clause: (shapes, { grid, sound }) => {
    const singles = shapes.map(({ candidate }) => candidate);
    const light = singles.length === 1 ? 'lights' : 'light';
    const as = sound ? ` as ${singles.length === 1 ? 'a single' : 'singles'}` : '';
    return `${spokenCandidates(grid, singles)} ${light} up${as}`;
  },
  isClaim: false,
  areJoined: true,
  isNews: true,
  answers: always,
} satisfies MarkWords<'opens'>;

export const painting = {
  comesIn: (_, motion) => motion.outline,
  candidates: ({ candidate }) => [candidate],
  isRinged: false,
  covers: none,
  onBoard: { corners: each(paintOpens) },
  onFrame: {},
} satisfies MarkPainting<'opens'>;

/** The length of an arm, in cells. */
const reach = 0.24;

/** The corners of one cell. */
function paintOpens(stage: BoardStage, { mark, ink }: Standing<'opens'>): void {
  const { look, film } = stage;
  const corner = cornerOf(film.grid, cellOf(film.grid, mark.shape.candidate));
  const colour = mark.group === undefined ? look.colours.placement : look.colours.groups[mark.group.colour];
  const width = strokeWidth(stage, look.strokes.outline * 0.7);
  strokePaths(stage, cornersOf(corner, reach * ink.progress), { colour, width, alpha: ink.alpha, cased: true });
}

function cornersOf([x, y]: Point, arm: number): Path[] {
  return [
    [x, y, 1, 1],
    [x + 1, y, -1, 1],
    [x + 1, y + 1, -1, -1],
    [x, y + 1, 1, -1],
  ].map(([cx, cy, dx, dy]) => line([cx! + arm * dx!, cy!], [cx!, cy!], [cx!, cy! + arm * dy!]));
}
