/**
 * Tinted cells. In addition to its colour each group has its own hatching, as in a printed map, so that two fills can
 * be distinguished without their colours. If two fills are on one cell, the later covers the earlier.
 */

import { nothingToJudge } from '../check/marks.ts';
import type { Cell, Grid } from '../grid/grid.ts';
import { mix } from '../picture/colour.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { line, type Path, rectangle } from '../picture/path.ts';
import { fillPaths, strokePaths } from '../picture/pen.ts';
import { cornerOf } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import type { Point } from '../scene/scene.ts';
import { targets } from '../scene/targets.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, lastOf, type Stroke } from '../staging/strokes.ts';
import { cellsOfTargets } from '../staging/targets.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { areCells, type MarkWords, never } from './words.ts';

export const reading = (): MarkReading<'fill'> =>
  markReading(
    {
      fill: targets(
        ['cells', 'house', 'candidates', 'digit'],
        'Tints cells, houses, the cell of a candidate, or (a bare digit) every cell where it is open.',
      ),
    },
    ({ values }, context) => {
      const found = values.fill?.read(context);
      return found && { kind: 'fill', targets: found };
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes,
} satisfies BeatRecord<'fill'>['beat'];

export const words = {
  clause: (shapes, { grid, colour }) => {
    const cells = [...new Set(shapes.flatMap((each) => each.cells))];
    return `${areCells(grid, cells)} tinted${colour === undefined ? '' : ` ${colour}`}`;
  },
  isClaim: false,
  areJoined: true,
  isNews: true,
  answers: never,
} satisfies MarkWords<'fill'>;

export const painting = {
  comesIn: (_, motion) => motion.fill,
  candidates: none,
  isRinged: false,
  covers: ({ cells }) => cells,
  onBoard: { tint: paintFills },
  onFrame: {},
} satisfies MarkPainting<'fill'>;

/** Cell by cell. */
function paintFills(stage: BoardStage, standing: readonly Standing<'fill'>[]): void {
  const byCell = new Map<Cell, Standing[]>();
  for (const one of standing) {
    for (const cell of one.mark.shape.cells) byCell.set(cell, [...(byCell.get(cell) ?? []), one]);
  }
  for (const [cell, fills] of byCell) {
    let uncovered = 1;
    for (const fill of [...fills].reverse()) {
      const inked = fill.ink.alpha * fill.ink.progress;
      paintFill(stage, cell, fill, inked * uncovered);
      uncovered *= 1 - inked;
    }
  }
}

function paintFill(stage: BoardStage, cell: Cell, { mark }: Standing, part: number): void {
  if (part <= 0) return;
  const { look, film } = stage;
  const colour = colourOf(stage, mark);
  const [x, y] = cornerOf(film.grid, cell);
  // A tint without a group is lighter: it only says where to look.
  const alpha = look.inks.fill * (mark.group === undefined ? 0.75 : 1) * part;
  fillPaths(stage, [rectangle(x, y, x + 1, y + 1)], colour, alpha);
  const hatching = hatchingOf(mark.group?.index, film.grid, cell);
  if (hatching.length > 0) {
    const deep = mix(colour, look.colours.casing, 0.25);
    strokePaths(stage, hatching, { colour: deep, width: 0.022, alpha: alpha * 1.2, cased: false, cap: 'butt' });
  }
}

/** Lines over a cell: none, rising, falling, level, upright, both slants. */
function hatchingOf(group: number | undefined, grid: Grid, cell: Cell): Path[] {
  const corner = cornerOf(grid, cell);
  switch (group === undefined ? 0 : group % 6) {
    case 1:
      return slants(corner, true);
    case 2:
      return slants(corner, false);
    case 3:
      return spread.map((part) => line([corner[0], corner[1] + part], [corner[0] + 1, corner[1] + part]));
    case 4:
      return spread.map((part) => line([corner[0] + part, corner[1]], [corner[0] + part, corner[1] + 1]));
    case 5:
      return [...slants(corner, true), ...slants(corner, false)];
    default:
      return [];
  }
}

const spread = [1 / 8, 3 / 8, 5 / 8, 7 / 8];

/** Slanted lines, a quarter of a cell apart along each side, that continue from cell to cell. */
function slants([x, y]: Point, rising: boolean): Path[] {
  return spread.flatMap((part) => {
    const near: Path = rising ? line([x, y + part], [x + part, y]) : line([x, y + 1 - part], [x + part, y + 1]);
    const far: Path = rising ? line([x + part, y + 1], [x + 1, y + part]) : line([x + part, y], [x + 1, y + 1 - part]);
    return [near, far];
  });
}

/** One fill for all cells that are shown for the same time. */
function strokes({ board }: BeatContext, { targets }: StagedMarks['fill'], { from }: StagedBeat): Stroke[] {
  const byEnd = new Map<number, Cell[]>();
  for (const { cell, candidate } of cellsOfTargets(board, targets, from)) {
    const until = lastOf(board, candidate);
    byEnd.set(until, [...(byEnd.get(until) ?? []), cell]);
  }
  return [...byEnd].map(([until, cells]) => ({ shape: { kind: 'fill', cells }, from, until }));
}
