/**
 * A placement: a frame that closes in from the edge of the cell. With `overlay` it says which cell; with `writing` and
 * `board` the digit is written within it.
 */

import { nothingToJudge } from '../check/marks.ts';
import { parseCells } from '../grid/notation/cells.ts';
import { printCell } from '../grid/notation/print.ts';
import { inSeries, spokenCells } from '../grid/notation/spoken.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, rectangle, roundCorners } from '../picture/path.ts';
import { casingWidth, fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { cornerOf } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import { claimsFor, type MarkReading, markReading } from '../scene/beats.ts';
import type { Claims } from '../scene/claims.ts';
import { notation } from '../scene/language-values.ts';
import { type Context, itemsIn, readNotation, saysAll } from '../scene/reading.ts';
import type { BeatMarks } from '../scene/scene.ts';
import type { TextNode } from '../scene/yaml-tree.ts';
import { conclusionStrokes } from '../staging/conclusion-strokes.ts';
import { conclusionCount, oneByOne, quarterSecond } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { always, type MarkWords, unlessSound } from './words.ts';

export const reading = (): MarkReading<'place'> =>
  markReading(
    { place: notation("Writes the step's placements: all, or cells.", ['all', 'r8c4']) },
    ({ keys, values: { place } }, context) => {
      const claims = claimsFor(keys.place, context);
      return place && claims && readPlace(place.node, claims, context);
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: ({ cells }, step) => oneByOne(quarterSecond, cells === 'all' ? conclusionCount(step) : cells.length),
  strokes: (context, _, drawn) => conclusionStrokes(context, drawn),
} satisfies BeatRecord<'place'>['beat'];

export const words = {
  clause: (shapes, manner) => {
    const digits = shapes.map(
      ({ cell, digit }) => `${digit === 8 ? 'an' : 'a'} ${digit} in ${spokenCells(manner.grid, [cell])}`,
    );
    const written = manner.overlay ? 'marked as placed' : 'written';
    return `${inSeries(digits)} ${digits.length === 1 ? 'is' : 'are'} ${written}${unlessSound(manner)}`;
  },
  isClaim: true,
  areJoined: true,
  isNews: true,
  answers: always,
} satisfies MarkWords<'place'>;

export const painting = {
  comesIn: (_, motion) => motion.place,
  candidates: none,
  isRinged: false,
  covers: ({ cell }) => [cell],
  onBoard: {
    tint: each((stage, one) => paintPlacement(stage, one, 'tint')),
    frame: each((stage, one) => paintPlacement(stage, one, 'frame')),
  },
  onFrame: {},
} satisfies MarkPainting<'place'>;

/** The tint under the digits, or the frame over them. */
function paintPlacement(stage: BoardStage, { mark, ink }: Standing<'place'>, part: 'tint' | 'frame'): void {
  const { look } = stage;
  const [x, y] = cornerOf(stage.film.grid, mark.shape.cell);
  const width = strokeWidth(stage, look.strokes.outline);
  const inset = width / 2 + casingWidth(stage) + look.strokes.houseLine / 2 + 0.02;
  const frame = roundCorners(rectangle(x + inset, y + inset, x + 1 - inset, y + 1 - inset), look.strokes.cornerRadius);
  const colour = mark.group === undefined ? look.colours.placement : look.colours.groups[mark.group.colour];
  if (part === 'tint') fillPaths(stage, [frame], colour, look.inks.fill * 0.6 * ink.progress * ink.alpha);
  else strokePaths(stage, [begun(frame, ink.progress)], { colour, width, alpha: ink.alpha, cased: true });
}

/** The placements that are written; undefined after a report. */
function readPlace(node: TextNode, claims: Claims, context: Context): BeatMarks['place'] | undefined {
  const { faults, grid } = context;
  if (saysAll(node)) {
    if (claims.placesAny) return { kind: 'place', cells: 'all' };
    faults.error(
      'not-concluded',
      node.span,
      'this step places nothing; add the placement to so, or leave the beat out',
    );
    return undefined;
  }
  const cells = readNotation(node, parseCells, context);
  for (const { span, value } of cells === undefined ? [] : itemsIn(node, parseCells, grid)) {
    const strange = value.filter((cell) => !claims.places(cell)).map((each) => printCell(grid, each));
    if (strange.length === 0) continue;
    const message = `the step places nothing in ${strange.join(' ')}; a written digit is a claim, so add it to so or leave it out`;
    faults.error('not-concluded', span, message);
  }
  return cells === undefined ? undefined : { kind: 'place', cells };
}
