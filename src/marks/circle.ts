/**
 * A circle around a candidate. Each group has its own kind of ring in addition to its colour: plain, double, dashed,
 * notched, beaded, cornered, with a tinted disc inside. A circle without a group is a pencil-like loop whose ends do
 * not meet, with nothing inside.
 */

import type { JudgedStep } from '../check/marks.ts';
import { type Candidate, has, membersOf, setOf } from '../grid/candidates.ts';
import { printCandidate } from '../grid/notation/print.ts';
import { type MarkPainting, none } from '../picture/painting.ts';
import { begun } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { ringOf } from '../picture/ring-lines.ts';
import { roomFor, roundRoom, withinWalls } from '../picture/ring-room.ts';
import { pointOfCandidate } from '../picture/small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../picture/stage.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat, BeatMarks } from '../scene/scene.ts';
import { targets } from '../scene/targets.ts';
import { oneAfterAnother } from '../staging/pacing.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, spread, writtenBy } from '../staging/strokes.ts';
import { candidatesOfTargets } from '../staging/targets.ts';
import { oneByOne, quarterSecond, targetCount } from '../timeline/pace.ts';
import type { BeatRecord } from './record.ts';
import { areCandidates, inColour, type MarkWords } from './words.ts';

export const reading = (): MarkReading<'circle'> =>
  markReading(
    { circle: targets(['candidates', 'digit'], 'Circles candidates; a bare digit: every place still open to it.') },
    ({ values }, context) => {
      const found = values.circle?.read(context);
      return found && { kind: 'circle', targets: found };
    },
  );

export const beat = {
  judge,
  seconds: ({ targets }) => oneByOne(quarterSecond, targetCount(targets)),
  strokes,
} satisfies BeatRecord<'circle'>['beat'];

export const words = {
  clause: (shapes, manner) => {
    const candidates = shapes.map(({ candidate }) => candidate);
    return `${areCandidates(manner.grid, candidates)} circled${inColour(manner)}`;
  },
  isClaim: false,
  areJoined: true,
  isNews: true,
  answers: ({ candidate }, isConcluded) => isConcluded(candidate),
} satisfies MarkWords<'circle'>;

export const painting = {
  comesIn: (_, motion) => motion.circle,
  candidates: ({ candidate }) => [candidate],
  isRinged: true,
  covers: none,
  onBoard: {
    disc: (stage, standing) => paintCircles(stage, standing, 'discs'),
    ring: (stage, standing) => paintCircles(stage, standing, 'rings'),
  },
  onFrame: {},
} satisfies MarkPainting<'circle'>;

/** The discs (under the digits) or the rings (over them). */
function paintCircles(stage: BoardStage, standing: readonly Standing<'circle'>[], part: 'discs' | 'rings'): void {
  const uncovered = new Map<Candidate, number>();
  const seen: (readonly [Standing, Candidate, number])[] = [];
  for (const one of [...standing].reverse()) {
    const { candidate } = one.mark.shape;
    const left = uncovered.get(candidate) ?? 1;
    seen.unshift([one, candidate, left]);
    uncovered.set(candidate, left * (1 - one.ink.progress * one.ink.alpha));
  }
  for (const [one, candidate, left] of seen) {
    if (left <= 0) continue;
    if (part === 'discs') paintDisc(stage, one, candidate, left);
    else paintRing(stage, one, candidate, left);
  }
}

function paintDisc(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  if (mark.group === undefined) return;
  const centre = pointOfCandidate(stage.film, candidate);
  const alpha = stage.look.inks.disc * ink.progress * ink.alpha * left;
  fillPaths(stage, [roundRoom(centre, roomFor(stage, candidate))], colourOf(stage, mark), alpha);
}

function paintRing(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  const centre = pointOfCandidate(stage.film, candidate);
  const width = strokeWidth(stage, stage.look.strokes.circle);
  const room = roomFor(stage, candidate);
  const ring = ringOf(mark.group?.index, centre, room.radius, width);
  const colour = colourOf(stage, mark);
  const alpha = ink.alpha * left;
  const paths = ring.paths.map((path) => begun(withinWalls(path, centre, room), ink.progress));
  strokePaths(stage, paths, { colour, width: width * ring.weight, alpha, cased: true, cap: ring.cap });
}

function judge({ before }: JudgedStep, { targets }: BeatMarks['circle'], { span }: Beat): Diagnostic[] {
  const { grid, possible } = before;
  const gone = targets.flatMap((target) => {
    const isGone = target.kind === 'candidates' && !target.candidates.some((each) => has(possible, each));
    return isGone ? target.candidates : [];
  });
  if (gone.length === 0) return [];
  const which = membersOf(setOf(grid, gone))
    .map((candidate) => printCandidate(grid, candidate))
    .join(' ');
  const message = `${which} is no longer possible when the step begins, so no circle is drawn for it`;
  return [{ code: 'circle-on-nothing', severity: 'warning', span, message }];
}

/** One after another, so that the first begins with the beat; those already shown are not drawn again. */
function strokes(context: BeatContext, { targets }: StagedMarks['circle'], { from, room }: StagedBeat): Stroke[] {
  const circles = candidatesOfTargets(context.board, targets, from).map((candidate) => ({
    shape: { kind: 'circle', candidate } as const,
    on: [candidate],
  }));
  const drawn = spread(context, circles, from, (count) =>
    oneAfterAnother(context.pacing, { from, until: room }, count),
  );
  return [...drawn, ...drawn.flatMap((stroke) => ringAfter(context, stroke))];
}

/**
 * If the step writes the digit that its `show` has circled, the ring goes around that digit until the step ends. A step
 * without `show` circles the place so that it is found, and the frame of the placement then says enough.
 */
export function ringAfter(context: BeatContext, { shape, from, group }: Stroke): Stroke[] {
  if (shape.kind !== 'circle' || context.step.step.show === undefined) return [];
  const written = writtenBy(context, shape.candidate);
  if (written === undefined || written.from <= from) return [];
  const { cell, digit } = written;
  const ring = { shape: { kind: 'ring', cell, digit }, from: written.from, until: context.until } as const;
  return [group === undefined ? ring : { ...ring, group }];
}
