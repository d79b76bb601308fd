/**
 * A word on a small tag near the candidate or cell that it names, with a stem that points there.
 */

import { nothingToJudge } from '../check/marks.ts';
import { spokenCandidates, spokenCells } from '../grid/notation/spoken.ts';
import { parseTargets } from '../grid/notation/targets.ts';
import type { Target } from '../grid/terms.ts';
import type { Inked } from '../picture/ink.ts';
import { type PlannedLabel, planLabels } from '../picture/label-plan.ts';
import { nearestOnLine } from '../picture/node-shape.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { line, rectangle, roundCorners } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth, writeWords } from '../picture/pen.ts';
import { distance } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { quoted } from '../scene/faults.ts';
import { notation } from '../scene/language-values.ts';
import { type Context, readNotation } from '../scene/reading.ts';
import type { BeatMarks, Point } from '../scene/scene.ts';
import { spanIn, type TextNode } from '../scene/yaml-tree.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, lastOf, type Stroke } from '../staging/strokes.ts';
import { cellsOfTargets } from '../staging/targets.ts';
import type { Mark } from '../timeline/film.ts';
import { halfSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never, oneLine } from './words.ts';

export const reading = (): MarkReading<'label'> =>
  markReading(
    { label: notation('A word tied to a cell or a candidate.', ['7r1c5 "roof"']) },
    ({ values: { label } }, context) => label && readLabel(label.node, context),
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => halfSecond,
  strokes,
} satisfies BeatRecord<'label'>['beat'];

export const words = {
  clause: ([shape], { grid }) => {
    if (shape === undefined) return '';
    const { candidate, cell, text } = shape;
    const at = candidate === undefined ? spokenCells(grid, [cell]) : spokenCandidates(grid, [candidate]);
    return `the word "${oneLine(text)}" stands at ${at}`;
  },
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'label'>;

export const painting = {
  comesIn: (_, motion) => motion.fade,
  candidates: ({ candidate }) => (candidate === undefined ? [] : [candidate]),
  isRinged: false,
  covers: none,
  onBoard: { tag: paintLabels },
  onFrame: {},
} satisfies MarkPainting<'label'>;

function paintLabels(stage: BoardStage, standing: readonly Standing<'label'>[]): void {
  const inks = new Map<Mark, Inked>(standing.map(({ mark, ink }) => [mark, ink]));
  for (const label of planLabels(stage)) {
    const ink = inks.get(label.mark);
    if (ink !== undefined) paintLabel(stage, label, ink.alpha * ink.progress);
  }
}

function paintLabel(
  stage: BoardStage,
  { mark, text, named, clear, middle, half, height }: PlannedLabel,
  alpha: number,
): void {
  const { look } = stage;
  const colour = colourOf(stage, mark);
  const [x, y] = middle;
  const body = roundCorners(rectangle(x - half[0], y - half[1], x + half[0], y + half[1]), height * 0.5);
  const foot = nearestOnLine([x - half[0] * 0.7, y], [x + half[0] * 0.7, y], named);
  const far = distance(foot, named);
  const along = (distanceFromFoot: number): Point => [
    foot[0] + ((named[0] - foot[0]) * distanceFromFoot) / far,
    foot[1] + ((named[1] - foot[1]) * distanceFromFoot) / far,
  ];
  const width = strokeWidth(stage, 0.04);
  strokePaths(stage, [line(foot, along(far - clear))], { colour, width, alpha, cased: true });
  strokePaths(stage, [body], { colour, width, alpha, cased: true });
  fillPaths(stage, [body], look.colours.card, alpha);
  writeWords(stage, [{ text, at: middle, height, weight: 600, colour: look.colours.text, alpha, casing: 0 }]);
}

function strokes({ board }: BeatContext, { target, text }: StagedMarks['label'], { from }: StagedBeat): Stroke[] {
  return cellsOfTargets(board, [target], from).map(({ cell, candidate }) => ({
    shape: { kind: 'label', cell, candidate, text },
    from,
    until: lastOf(board, candidate),
  }));
}

/** `7r1c5 "roof"`: one cell or candidate and a word; undefined after a report. */
function readLabel(node: TextNode, context: Context): BeatMarks['label'] | undefined {
  const { faults } = context;
  const match = /^([^"\u201c\u201d]*)["\u201c\u201d]([^"\u201c\u201d]*)["\u201c\u201d]\s*$/s.exec(node.text);
  const text = match?.[2]?.trim() ?? '';
  if (match === null || text === '') {
    faults.error(
      'notation',
      node.span,
      `${quoted(node.text)} is no label; write a cell or a candidate, and the word between double quotes: 4r3c2 "roof"`,
    );
    return undefined;
  }
  const targets = readNotation({ ...node, text: match[1]! }, parseTargets, context);
  const [target] = targets ?? [];
  if (targets === undefined) return undefined;
  if (target !== undefined && targets.length === 1 && isOnePlace(target)) return { kind: 'label', target, text };
  faults.error(
    'notation',
    spanIn(node, 0, match[1]!.trimEnd().length),
    'a label is tied to one cell (r3c2) or one candidate (4r3c2); write a beat for each',
  );
  return undefined;
}

function isOnePlace(target: Target): boolean {
  if (target.kind === 'cells') return target.cells.length === 1;
  return target.kind === 'candidates' && target.candidates.length === 1;
}
