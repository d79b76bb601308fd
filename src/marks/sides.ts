/**
 * The two sides of a cluster of strong links, each side circled in its own colour.
 */

import type { JudgedStep } from '../check/marks.ts';
import { sidesOf } from '../check/sides.ts';
import { membersOf } from '../grid/candidates.ts';
import { printCandidate } from '../grid/notation/print.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { BeatMarks } from '../scene/scene.ts';
import { oneAfterAnother } from '../telling/pacing.ts';
import type { BeatContext, Stroke } from '../telling/strokes.ts';
import { markGroupOf, sideGroups, type ToldBeat, type ToldMarks } from '../telling/told-beat.ts';
import { halfSecond } from '../timeline/pace.ts';
import { ringAfter } from './circle.ts';
import type { BeatRecord } from './record.ts';

export const beat = {
  judge,
  seconds: () => halfSecond,
  strokes,
} satisfies BeatRecord<'sides'>['beat'];

function judge({ before: { grid }, argument }: JudgedStep, { candidate }: BeatMarks['sides']): Diagnostic[] {
  const { value, span } = candidate;
  if (sidesOf(grid, argument.sets, value) !== undefined) return [];
  const named = printCandidate(grid, value);
  const pairs = argument.sets.filter((set) => membersOf(set.members).length === 2).map(({ name }) => name);
  const why =
    argument.sets.length === 0
      ? 'this step has no argument in its so or chain'
      : `${pairs.length === 0 ? 'none of its sets has two members' : `its sets of two members are ${pairs.join(' ')}`}`;
  const message = `${named} belongs to no cluster of strong links here: ${why}; name the sets of two whose colours are meant after from, and a candidate of one of them here`;
  return [{ code: 'sides-of-nothing', severity: 'error', span, message }];
}

/** The cluster of the candidate, its own side first, each side in its own colour. */
function strokes(context: BeatContext, mark: ToldMarks['sides'], beat: ToldBeat): Stroke[] {
  const { board, groups, step } = context;
  const found = sidesOf(board.grid, step.argument.sets, mark.candidate.value);
  if (found === undefined) return [];
  const [own, other] = mark.groups?.map((name) => markGroupOf(groups, name)) ?? [];
  const [first, second] = sideGroups(groups);
  const placed = [
    ...found.own.map((candidate) => ({ candidate, group: own ?? first })),
    ...found.other.map((candidate) => ({ candidate, group: other ?? second })),
  ].filter(({ candidate }) => board.showsUntil(candidate) > beat.from);
  const frames = oneAfterAnother(context.pacing, { from: beat.from, until: beat.room }, placed.length);
  const circles = placed.map(
    ({ candidate, group }, index): Stroke => ({
      shape: { kind: 'circle', candidate },
      from: frames[index] ?? beat.from,
      until: board.showsUntil(candidate),
      group,
    }),
  );
  return [...circles, ...circles.flatMap((stroke) => ringAfter(context, stroke))];
}
