/**
 * When each conclusion of a step is presented: drawn by a beat or, if no beat draws it, taking effect on the board
 * anyway, since what is proved has entered the position whether or not the picture says so.
 *
 * - What a beat draws takes effect with its mark: a candidate after it is struck and held while the sentence continues,
 *   a digit as it is placed.
 * - Items of `only`, `pencil` and `cascade` have their own frames; no mark draws them sooner.
 * - What `so` concludes and `show` leaves undrawn takes effect at the end of the argument: when the last beat is
 *   complete, though not within the first three quarters of the step (a step may draw everything first and then talk),
 *   and before its lists and cascade, which come after `so`.
 */

import type { CheckedConclusion, CheckedStep } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { membersOf } from '../grid/candidates.ts';
import { cellOf, type Grid } from '../grid/grid.ts';
import { divide, fraction, multiply } from '../scene/fraction.ts';
import { type Frame, frameAt } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';
import { earlierOf } from '../timeline/seconds.ts';
import { between, evenly, framesIn, oneAfterAnother, type Pacing } from './pacing.ts';
import type { StagedBeat, StagedMark } from './staged-beat.ts';

export interface StagedConclusion {
  readonly checked: CheckedConclusion;
  readonly step: CheckedStep;
  /** The first frame of its drawing, or of its effect. */
  readonly from: Frame;
  /** The first frame at which the candidates that it ends are off the board; not before `from`. */
  readonly gone: Frame;
  /** The beat that draws it, and the first frame of that mark. */
  readonly drawn: { readonly beat: StagedBeat; readonly from: Frame } | undefined;
}

/** Whether the conclusion holds from then on: proved, and not by a false step. */
export function enters({ checked, step }: StagedConclusion): boolean {
  return checked.verdict === 'proved' && !step.step.fails;
}

export interface Staging {
  readonly grid: Grid;
  readonly pacing: Pacing;
  readonly draw: 'overlay' | 'writing' | 'board';
  /** From when the candidate's small digit is drawn; undefined if it never is. */
  readonly smallDigitFrom: (candidate: Candidate) => Frame | undefined;
}

/** Every conclusion of the step that may be drawn: not redundant ones, and none of a false step. */
export function stagedConclusions(
  staging: Staging,
  step: CheckedStep,
  times: ScheduledStep,
  beats: readonly StagedBeat[],
): StagedConclusion[] {
  if (step.step.fails) return [];
  const drawn = drawnBy(staging, step, times, beats);
  const settled = settledAt(staging.pacing, times, beats);
  return step.conclusions.flatMap((checked): StagedConclusion[] => {
    if (checked.verdict === 'redundant') return [];
    const drawing = drawn.get(checked);
    const due = itemFrameOf(staging, step, times, checked);
    // A cascade's digit is written when the cascade reaches it; a mark on it may come later.
    const isOfCascade = checked.origin === 'cascade' && checked.conclusion.kind === 'one-of';
    const staged = isOfCascade ? (due ?? settled) : (drawing?.from ?? due ?? settled);
    // A beat at the very end of the step is never seen, but what it draws has been proved anyway.
    const from = frameAt(Math.min(staged, times.until));
    const next = nextAfter(times, beats, from);
    return [{ checked, step, from, gone: goneAt(staging, times, checked, from, drawing?.beat, next), drawn: drawing }];
  });
}

type Drawing = NonNullable<StagedConclusion['drawn']>;

/** The first beat that draws each conclusion, with the frame: candidates of one beat one after another. */
function drawnBy(
  staging: Staging,
  step: CheckedStep,
  times: ScheduledStep,
  beats: readonly StagedBeat[],
): Map<CheckedConclusion, Drawing> {
  const drawn = new Map<CheckedConclusion, Drawing>();
  const open = step.conclusions.filter((checked) => checked.verdict !== 'redundant');
  for (const beat of beats) {
    const now = concludedBy(staging.grid, beat, open).filter((checked) => !drawn.has(checked));
    oneAfterAnother(staging.pacing, { from: beat.from, until: beat.room }, now.length).forEach((from, index) => {
      const checked = now[index]!;
      const due = itemFrameOf(staging, step, times, checked) ?? from;
      drawn.set(checked, { beat, from: frameAt(Math.max(from, due)) });
    });
  }
  return drawn;
}

function concludedBy(grid: Grid, { mark }: StagedBeat, open: readonly CheckedConclusion[]): CheckedConclusion[] {
  if (mark.kind === 'strike') {
    const removals = open.filter(({ conclusion }) => conclusion.kind === 'impossible');
    if (mark.candidates === 'all') return removals;
    return mark.candidates.flatMap((candidate) =>
      removals.filter(({ conclusion }) => conclusion.kind === 'impossible' && conclusion.candidate === candidate),
    );
  }
  if (mark.kind === 'place') {
    const placements = open.filter((checked) => placedCandidate(checked) !== undefined);
    if (mark.cells === 'all') return placements;
    return mark.cells.flatMap((cell) =>
      placements.filter((checked) => cellOf(grid, placedCandidate(checked)!) === cell),
    );
  }
  return [];
}

/** The candidate that a conclusion places, if it is a placement. */
export function placedCandidate({ conclusion }: Pick<CheckedConclusion, 'conclusion'>): Candidate | undefined {
  if (conclusion.kind !== 'one-of') return undefined;
  const [only, ...others] = membersOf(conclusion.candidates);
  return others.length === 0 ? only : undefined;
}

/** The frame of the conclusion's own item; undefined for those of `so`. */
function itemFrameOf(
  { grid, pacing }: Staging,
  step: CheckedStep,
  times: ScheduledStep,
  checked: CheckedConclusion,
): Frame | undefined {
  switch (checked.origin) {
    case 'so':
      return undefined;
    case 'only':
      return times.only[checked.item];
    case 'pencil': {
      const { conclusion } = checked;
      const lists = step.step.pencil[checked.item]?.lists ?? [];
      const frames = listFrames(pacing, step, times, checked.item);
      const list = lists.findIndex(
        ({ cell }) => conclusion.kind === 'impossible' && cell === cellOf(grid, conclusion.candidate),
      );
      return frames[list] ?? times.pencil[checked.item];
    }
    case 'cascade': {
      const place = step.conclusions.filter(({ origin }) => origin === 'cascade').indexOf(checked);
      return times.cascade.flat()[place];
    }
    default:
      return checked.origin satisfies never;
  }
}

/**
 * When each cell of a `pencil` item is written: all at the item's frame, but if the step has no `show`, cell by cell
 * over the time until the next item (at most a second and a half each).
 */
export function listFrames(pacing: Pacing, step: CheckedStep, times: ScheduledStep, item: number): Frame[] {
  const { lists } = step.step.pencil[item] ?? { lists: [] };
  const from = times.pencil[item] ?? times.from;
  if (step.step.show !== undefined) return lists.map(() => from);
  const later = [...times.pencil, ...times.cascade.flat()].filter((frame) => frame > from);
  const room = multiply(fraction(Math.min(times.until, ...later) - from), fraction(3, 4));
  const share = divide(room, fraction(Math.max(1, lists.length)));
  return evenly(from, lists.length, earlierOf(fraction(framesIn(pacing, 1.5)), share));
}

function settledAt(pacing: Pacing, times: ScheduledStep, beats: readonly StagedBeat[]): Frame {
  const firstItem = Math.min(times.until, ...times.only, ...times.pencil, ...times.cascade.flat());
  const stands = Math.max(...beats.map((beat) => beat.from + framesIn(pacing, pacing.motion.linkLongest)), times.from);
  const end = Math.max(stands, between(times.from, times.until, fraction(3, 4)));
  return frameAt(Math.max(times.from, Math.min(end, firstItem)));
}

/**
 * When the step continues after this frame, since what comes next may rest on it: its next item, or its next beat that
 * is neither about the removals themselves nor text; its end if there is none.
 */
function nextAfter(times: ScheduledStep, beats: readonly StagedBeat[], from: Frame): number {
  const moves = beats.filter(({ mark }) => !staysWith.includes(mark.kind)).map((beat) => beat.from);
  const items = [...times.only, ...times.pencil, ...times.cascade.flat()];
  return Math.min(times.until, ...[...moves, ...items].filter((frame) => frame > from));
}

const staysWith: readonly StagedMark['kind'][] = ['strike', 'reach', 'opens', 'note', 'label', 'ask'];

/**
 * What is struck out stays visible while the sentence continues, until the step does; what a digit removes fades a
 * moment after it is written, so that the argument that led to it can be seen together with it.
 */
function goneAt(
  staging: Staging,
  times: ScheduledStep,
  checked: CheckedConclusion,
  from: Frame,
  beat: StagedBeat | undefined,
  next: number,
): Frame {
  const { pacing } = staging;
  const { strike, strikeHold, place } = pacing.motion;
  const withinStep = (frame: number) => frameAt(Math.max(from, Math.min(frame, times.until)));
  if (checked.conclusion.kind === 'one-of') {
    const written = from + framesIn(pacing, place);
    if (checked.origin !== 'so') return withinStep(written);
    return withinStep(Math.max(written, Math.min(written + framesIn(pacing, strikeHold), next)));
  }
  if (beat === undefined) return from;
  const struck = from + framesIn(pacing, strike);
  if (beat.gone !== undefined) return withinStep(Math.max(beat.gone, struck));
  if (beat.until !== undefined) return withinStep(Math.max(beat.until, struck));
  // If the board shows no small digit that could disappear, there is only the strike to see.
  const small = staging.smallDigitFrom(checked.conclusion.candidate);
  if (staging.draw === 'overlay' || small === undefined || small > from) return times.until;
  return withinStep(Math.max(struck + framesIn(pacing, strikeHold), next));
}
