/**
 * Focus: a veil over every cell except those named. Marks are drawn above it, and stay.
 */

import { nothingToJudge } from '../check/marks.ts';
import type { Cell } from '../grid/grid.ts';
import { spokenCells } from '../grid/notation/spoken.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { rectangle } from '../picture/path.ts';
import { fillPaths } from '../picture/pen.ts';
import { cornerOf } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { targets } from '../scene/targets.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, standing } from '../staging/strokes.ts';
import { cellsOfTargets } from '../staging/targets.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never } from './words.ts';

export const reading = (): MarkReading<'focus'> =>
  markReading(
    { focus: targets(['cells', 'house', 'candidates', 'digit'], 'Everything else dims.') },
    ({ values }, context) => {
      const found = values.focus?.read(context);
      return found && { kind: 'focus', targets: found };
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes,
  ends:
    () =>
    ({ shape }) =>
      shape.kind === 'focus',
} satisfies BeatRecord<'focus'>['beat'];

export const words = {
  clause: ([shape], { grid }) => `all is dimmed but ${spokenCells(grid, shape?.cells ?? [])}`,
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'focus'>;

export const painting = {
  comesIn: (_, motion) => motion.focus,
  candidates: none,
  isRinged: false,
  covers: () => 'board',
  onBoard: { veil: paintVeil },
  onFrame: {},
} satisfies MarkPainting<'focus'>;

/** One veil for everything in focus at the time. */
function paintVeil(stage: BoardStage, standing: readonly Standing<'focus'>[]): void {
  const clear = new Map<Cell, number>();
  let strongest = 0;
  for (const { mark, ink } of standing) {
    const part = ink.progress * ink.alpha;
    strongest = Math.max(strongest, part);
    for (const cell of mark.shape.cells) clear.set(cell, Math.max(clear.get(cell) ?? 0, part));
  }
  if (strongest === 0) return;
  const { film, look } = stage;
  const veiled = film.grid.cells.filter((cell) => !clear.has(cell));
  const areas = veiled.map((cell) => {
    const [x, y] = cornerOf(film.grid, cell);
    return rectangle(x, y, x + 1, y + 1);
  });
  fillPaths(stage, areas, look.colours.veil, look.inks.veil * strongest);
}

function strokes({ board }: BeatContext, { targets }: StagedMarks['focus'], beat: StagedBeat): Stroke[] {
  const cells = cellsOfTargets(board, targets, beat.from).map(({ cell }) => cell);
  return cells.length === 0 ? [] : [standing({ kind: 'focus', cells }, beat)];
}
