/**
 * The two sides of a cluster of strong links, each side circled in its own colour.
 */

import type { JudgedStep } from '../check/marks.ts';
import { sidesOf } from '../check/sides.ts';
import { membersOf } from '../grid/candidates.ts';
import { parseCandidates } from '../grid/notation/candidates.ts';
import { printCandidate } from '../grid/notation/print.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import type { ReadList, ReadText } from '../scene/definition.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { groupNamed } from '../scene/groups.ts';
import { name, notation } from '../scene/language-values.ts';
import { type Context, readNotation } from '../scene/reading.ts';
import type { BeatMarks } from '../scene/scene.ts';
import { listOf, optional } from '../scene/structures.ts';
import type { TextNode } from '../scene/yaml-tree.ts';
import { oneAfterAnother } from '../staging/pacing.ts';
import { markGroupOf, type StagedBeat, type StagedMarks, sideGroups } from '../staging/staged-beat.ts';
import type { BeatContext, Stroke } from '../staging/strokes.ts';
import { halfSecond } from '../timeline/pace.ts';
import { ringAfter } from './circle.ts';
import type { BeatRecord } from './record.ts';

export const reading = (): MarkReading<'sides'> =>
  markReading(
    {
      sides: notation('The two colours of the cluster of strong links that this candidate belongs to.', ['7r1c5']),
      groups: optional(listOf(name('A colour group.'), 'The groups of the two sides: [a, b].')),
    },
    ({ values: { sides, groups } }, context) => sides && readSides(sides.node, groups, context),
  );

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
function strokes(context: BeatContext, mark: StagedMarks['sides'], beat: StagedBeat): Stroke[] {
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

/** A candidate, and the groups of the two sides; undefined after a report. */
function readSides(
  node: TextNode,
  value: ReadList<ReadText<string, void>> | undefined,
  context: Context,
): BeatMarks['sides'] | undefined {
  const { faults } = context;
  const candidates = readNotation(node, parseCandidates, context);
  const names = (value?.items ?? []).map((item) => groupNamed(item?.node, context));
  if (value !== undefined && names.length !== 2) {
    faults.error(
      'notation',
      value.span,
      `${names.length} ${names.length === 1 ? 'group stands' : 'groups stand'} here; "sides" has two, as in groups: [a, b]`,
    );
  }
  if (candidates !== undefined && candidates.length !== 1) {
    faults.error(
      'notation',
      node.span,
      `${candidates.length} candidates are given here; "sides" takes one, as in 4r3c2`,
    );
  }
  const [candidate] = candidates ?? [];
  const [first, second] = names;
  if (candidate === undefined) return undefined;
  return {
    kind: 'sides',
    candidate: { value: candidate, span: node.span },
    groups: first === undefined || second === undefined ? undefined : [first, second],
  };
}
