/**
 * A reach: a row of dots from a candidate of the argument to one that it rules out, with a bar across its end. Links
 * are lines; dots say that nothing is concluded along them except that two candidates that see each other cannot both
 * be true.
 */

import { spokenCandidates } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, length, line, type Path, pointAlong } from '../picture/path.ts';
import { strokePaths, strokeWidth } from '../picture/pen.ts';
import { distance } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import type { Point } from '../scene/scene.ts';
import { oneAfterAnother } from '../staging/pacing.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, spread } from '../staging/strokes.ts';
import type { DrawnRecord } from './record.ts';
import { always, type MarkWords } from './words.ts';

export const beat = {
  strokes,
} satisfies DrawnRecord<'reach'>['beat'];

export const words = {
  clause: (shapes, { grid }) => {
    const from = spokenCandidates(grid, [...new Set(shapes.map((line) => line.from))]);
    const to = spokenCandidates(grid, [...new Set(shapes.map((line) => line.to))]);
    if (shapes.length === 1) return `a thin line runs from ${from} to ${to}: not both true`;
    return `thin lines run from ${from} to ${to}: no two that are joined are both true`;
  },
  isClaim: false,
  areJoined: true,
  isNews: true,
  answers: always,
} satisfies MarkWords<'reach'>;

export const painting = {
  comesIn: (_, motion) => motion.sight,
  candidates: ({ from, to }) => [from, to],
  isRinged: true,
  covers: none,
  onBoard: { dots: each(paintReach) },
  onFrame: {},
} satisfies MarkPainting<'reach'>;

/** Parts of a cell. */
const dot = 0.045;
const apart = 0.125;
const barHalf = 0.1;

/** The dots and the bar of one reach, along its planned route. */
function paintReach(stage: BoardStage, { mark, ink }: Standing<'reach'>): void {
  const plan = stage.links().find((each) => each.mark === mark);
  if (plan === undefined) return;
  const long = length(plan.path);
  // Rings that touch leave no room for a line; the eye needs none there.
  if (long < apart) return;
  const width = strokeWidth(stage, dot);
  const stroke = { colour: colourOf(stage, mark), width, alpha: ink.alpha, cased: true } as const;
  strokePaths(stage, dotsAlong(begun(plan.path, ink.progress)), stroke);
  if (ink.progress === 1) strokePaths(stage, [barAt(plan.path, long)], { ...stroke, cap: 'round' });
}

function dotsAlong(path: Path): Path[] {
  const count = Math.floor(length(path) / apart);
  return Array.from({ length: count + 1 }, (_, index) => line(pointAlong(path, index * apart)));
}

function barAt(path: Path, long: number): Path {
  const end = pointAlong(path, long);
  const before = pointAlong(path, Math.max(0, long - 0.12));
  const far = distance(before, end);
  const across: Point = [(-(end[1] - before[1]) / far) * barHalf, ((end[0] - before[0]) / far) * barHalf];
  return line([end[0] - across[0], end[1] - across[1]], [end[0] + across[0], end[1] + across[1]]);
}

/** Lines to what is removed, one after another; each disappears with one of its ends. */
function strokes(context: BeatContext, { reaches }: StagedMarks['reach'], { from, room }: StagedBeat): Stroke[] {
  const lines = reaches.map((line) => ({ shape: { kind: 'reach', ...line } as const, on: [line.from, line.to] }));
  return spread(context, lines, from, (count) => oneAfterAnother(context.pacing, { from, until: room }, count));
}
