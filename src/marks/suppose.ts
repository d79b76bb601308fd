/**
 * A supposition played out in ghost ink: what it forces, one thing after another, until the clash.
 */

import type { JudgedStep } from '../check/marks.ts';
import { playStep, suppositionsOf } from '../check/suppositions.ts';
import { parseCandidates } from '../grid/notation/candidates.ts';
import { printCandidate, printSet } from '../grid/notation/print.ts';
import { parseSets } from '../grid/notation/sets.ts';
import { claimsFor, type MarkReading, markReading } from '../scene/beats.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { notation } from '../scene/language-values.ts';
import { type Context, readNotation } from '../scene/reading.ts';
import type { BeatMarks } from '../scene/scene.ts';
import { spanIn, type TextNode } from '../scene/yaml-tree.ts';
import { playedOut } from '../staging/ghosts.ts';
import { exactFramesIn, linkApartMost } from '../staging/pacing.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import type { BeatContext, Stroke } from '../staging/strokes.ts';
import { frameAt } from '../timeline/film.ts';
import { halfSecond, linkCount, oneByOne } from '../timeline/pace.ts';
import { candidatesOfMark } from './paintings.ts';
import type { BeatRecord } from './record.ts';

export const reading = (): MarkReading<'suppose'> =>
  markReading(
    {
      suppose: notation(
        'Plays the proof out in ghost ink from a candidate taken as true, as not true (no), or each of a set.',
        ['7r1c7', 'no 7r1c5', 'each 7c5'],
      ),
    },
    ({ keys, values: { suppose } }, context) =>
      suppose && claimsFor(keys.suppose, context) && readSuppose(suppose.node, context),
  );

export const beat = {
  judge,
  seconds: ({ suppose }, step) => {
    // A ghost for each end of a link or member of a set, roughly, and some time to see the clash; three times that for
    // a set.
    const ghosts = Math.max(4, linkCount(step) + 3, 2 * step.from.length + 3);
    return oneByOne(halfSecond, suppose.kind === 'each' ? 3 * ghosts : ghosts);
  },
  strokes,
} satisfies BeatRecord<'suppose'>['beat'];

/** A step that does not hold, or is not meant to, is played out as far as possible: its fault is reported elsewhere. */
function judge(judged: JudgedStep, { suppose, span }: BeatMarks['suppose']): Diagnostic[] {
  const { step, sound, before, argument } = judged;
  const { grid } = before;
  const played = { ...judged, possibleBefore: before.possible };
  const suppositions = suppositionsOf(grid, played, suppose);
  if (suppositions.length === 0) {
    const message =
      suppose.kind !== 'each'
        ? `${printCandidate(grid, suppose.candidate)} is not possible any more when the step begins, so there is nothing to suppose of it`
        : `there is no set ${printSet(grid, suppose.set)} to take the members of: name a cell or the places of a digit, or an either/or that the step has after from`;
    return [{ code: 'suppose-nothing', severity: 'error', span, message }];
  }
  if (!sound || step.fails) return [];
  if (argument.sets.length === 0) {
    const message =
      'there is no argument to play out: "suppose" follows the chain or the sets that the step draws its so from';
    return [{ code: 'suppose-not-forced', severity: 'error', span, message }];
  }
  const stuck = suppositions.find((each) => playStep(grid, played, each).end.kind === 'none');
  if (stuck === undefined) return [];
  const named = `${printCandidate(grid, stuck.candidate)} taken as ${stuck.isTrue ? 'true' : 'not true'}`;
  const message = `forcing alone does not get there: with ${named} the argument comes to no clash, and its conclusions do not fall, without a choice between cases; suppose another candidate, or tell the cases in steps of their own`;
  return [{ code: 'suppose-not-forced', severity: 'error', span, message }];
}

/**
 * The proof played out over the beat's time; then the ghosts disappear, even with `keep`. It ends when the first of the
 * step's conclusions takes effect, since the supposition may then be gone.
 */
function strokes(
  context: BeatContext,
  { suppose }: StagedMarks['suppose'],
  { from, room: atMost }: StagedBeat,
): Stroke[] {
  const { board, pacing, step, staged } = context;
  const room = frameAt(Math.min(atMost, ...staged.filter((each) => each.from > from).map((each) => each.from)));
  const mostApart = exactFramesIn(pacing, linkApartMost);
  return playedOut(board.grid, step, suppose, { from, room, mostApart }).map(({ shape, from: first, until }) => ({
    shape,
    from: first,
    until: Math.min(until, ...candidatesOfMark(shape).map((candidate) => board.showsUntil(candidate))),
  }));
}

/** `7r1c7`, `no 7r1c5` or `each 7c5`; undefined after a report. */
function readSuppose(node: TextNode, context: Context): BeatMarks['suppose'] | undefined {
  const match = /^\s*(no|each)\s/i.exec(node.text);
  const word = match?.[1]?.toLowerCase();
  const from = match?.[0].length ?? 0;
  const what: TextNode = { ...node, text: node.text.slice(from), offsets: node.offsets.slice(from) };
  const { span } = node;
  if (word === 'each') {
    const set = onlyOne(what, readNotation(what, parseSets, context), 'one set, as in each 4c2', context);
    return set === undefined ? undefined : { kind: 'suppose', suppose: { kind: 'each', set: set.name }, span };
  }
  const due = 'one candidate, as in 4r3c2 or no 4r3c2';
  const candidate = onlyOne(what, readNotation(what, parseCandidates, context), due, context);
  if (candidate === undefined) return undefined;
  return { kind: 'suppose', suppose: { kind: word === 'no' ? 'not' : 'true', candidate }, span };
}

function onlyOne<T>(node: TextNode, named: readonly T[] | undefined, due: string, { faults }: Context): T | undefined {
  if (named === undefined) return undefined;
  if (named.length === 1) return named[0];
  const span = spanIn(node, 0, node.text.length);
  faults.error('notation', span, `${named.length} stand here; "suppose" takes ${due}`);
  return undefined;
}
