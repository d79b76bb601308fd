/**
 * A line around a patch of cells, inside its edge, so that the lines of two neighbours are side by side. A patch may be
 * in several pieces and have holes.
 */

import { nothingToJudge } from '../check/marks.ts';
import { spokenCells } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { edgesOf } from '../picture/patch.ts';
import { begun, begunDashes, type Path } from '../picture/path.ts';
import { strokePaths, strokeWidth } from '../picture/pen.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { targets } from '../scene/targets.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, standing } from '../staging/strokes.ts';
import { cellsOfTargets } from '../staging/targets.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never } from './words.ts';

export const reading = (): MarkReading<'outline'> =>
  markReading(
    { outline: targets(['cells', 'house'], 'A line round a house or a patch of cells.', ['b2', 'r12c456']) },
    ({ values }, context) => {
      const found = values.outline?.read(context);
      return found && { kind: 'outline', targets: found };
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes,
} satisfies BeatRecord<'outline'>['beat'];

export const words = {
  clause: ([shape], { grid }) =>
    `a ${shape?.line === 'dashed' ? 'dashed ' : ''}line is drawn round ${spokenCells(grid, shape?.cells ?? [])}`,
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'outline'>;

export const painting = {
  comesIn: (_, motion) => motion.outline,
  candidates: none,
  isRinged: false,
  covers: none,
  onBoard: { line: each(paintOutline) },
  onFrame: {},
} satisfies MarkPainting<'outline'>;

/** The lines around one patch. */
function paintOutline(stage: BoardStage, { mark, ink }: Standing<'outline'>): void {
  const { look } = stage;
  const { shape } = mark;
  const width = strokeWidth(stage, look.strokes.outline);
  const edges = edgesOf(stage.film.grid, shape.cells, width / 2, look.strokes.cornerRadius);
  const lines = edges.flatMap((edge) => patterned(edge, shape.line, mark.group?.index, ink.progress));
  strokePaths(stage, lines, { colour: colourOf(stage, mark), width, alpha: ink.alpha, cased: true, cap: 'butt' });
}

/**
 * The part of a line that is drawn. Each group has its own dashes in addition to its colour, unless the mark says
 * which.
 */
function patterned(
  edge: Path,
  kind: 'solid' | 'dashed' | undefined,
  group: number | undefined,
  progress: number,
): Path[] {
  if (kind === 'dashed') return begunDashes(edge, 0.3, 0.2, progress);
  switch (kind === 'solid' || group === undefined ? 0 : group % 4) {
    case 1:
      return begunDashes(edge, 0.5, 0.14, progress);
    case 2:
      return begunDashes(edge, 0.22, 0.14, progress);
    case 3:
      return begunDashes(edge, 0.09, 0.12, progress);
    default:
      return [begun(edge, progress)];
  }
}

function strokes({ board }: BeatContext, { targets, line }: StagedMarks['outline'], beat: StagedBeat): Stroke[] {
  return targets
    .map((target) => cellsOfTargets(board, [target], beat.from).map(({ cell }) => cell))
    .filter((cells) => cells.length > 0)
    .map((cells) => standing({ kind: 'outline', cells, ...(line === undefined ? {} : { line }) }, beat));
}
