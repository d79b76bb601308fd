/**
 * The frames of one step: its beats, its items, and what the recording itself removes.
 */

import type { Clock } from '../scene/anchor.ts';
import type { Time } from '../scene/anchors.ts';
import { add, compare, divide, type Fraction, fraction, multiply, subtract } from '../scene/fraction.ts';
import type { Located } from '../scene/scene.ts';
import { type Moment, momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { perConclusion } from './pace.ts';
import { earlierOf, frameAtTime } from './seconds.ts';
import { spreadBeats, spreadItems } from './spread.ts';
import { beatsToSpread, claimSeconds, claimsFirst, itemsToSpread } from './step-length.ts';
import { type Begin, itemsOf, type StepOutline, type Timing } from './step-outline.ts';
import { orReport, pastEnd, timeError } from './time-faults.ts';
import type { Report } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

/** Shown from frame `from` to frame `until`, `until` excluded. */
export interface ScheduledStep {
  readonly id: string;
  readonly from: Frame;
  readonly until: Frame;
  /** By beat of `show`, in ascending order; empty without `show`. One that begins at `until` is never seen. */
  readonly beats: readonly ScheduledBeat[];
  /** By item: when it is written down. */
  readonly only: readonly Frame[];
  readonly pencil: readonly Frame[];
  /** By item, by conclusion. */
  readonly cascade: readonly (readonly Frame[])[];
  /** Without `show`: the claim of `so` and `chain` is drawn before this frame, since the items begin then. */
  readonly claimUntil: Frame;
}

export interface ScheduledBeat {
  /** The first frame with any ink of its mark. */
  readonly from: Frame;
  /** Of a strike with `gone`: the first frame on which the recording no longer shows the candidate. */
  readonly gone: Frame | undefined;
}

export interface StepEnd extends Timing {
  /** When the step is over, in seconds. */
  readonly end: Fraction;
  readonly frameCount: number;
}

/** A step as scheduled, except for what the recording removes. */
export type StepFrames = Omit<ScheduledStep, 'beats'> & { readonly beats: readonly Frame[] };

/** The step's frames, all within the video. Parts without a time of their own are placed within the step. */
export function framesOfStep(outline: StepOutline, options: StepEnd): StepFrames {
  const { step } = outline;
  const begin = outline.begin.seconds;
  const { clock, frameCount, end } = options;
  const from = frameAt(Math.min(outline.begin.frame, frameCount));
  const until = frameAt(Math.min(Math.max(from, frameAtTime(clock.rate, end)), frameCount));
  const framesOf = (starts: readonly Start[]): readonly Frame[] => framesInStep(starts, { from, until }, clock);
  const starts = spreadBeats(beatsToSpread(outline, options.strokesOf), { begin, end });
  const beats = framesOf(starts.map((seconds, index) => ({ seconds, given: outline.beats[index] })));
  const itemsFrom = beginOfItems(outline, starts, options);
  const things = spreadItems(itemsToSpread(outline), itemsFrom, end).flatMap((own, item) =>
    own.map((seconds, thing) => ({ item, seconds, given: thing === 0 ? outline.items[item] : undefined })),
  );
  const thingFrames = framesOf(things);
  const items = itemsOf(step).map((_, item) => thingFrames.filter((_frame, index) => things[index]!.item === item));
  const [onlyCount, pencilCount] = [step.only.length, step.pencil.length];
  return {
    id: step.id,
    from,
    until,
    beats,
    only: items.slice(0, onlyCount).map((own) => own[0]!),
    pencil: items.slice(onlyCount, onlyCount + pencilCount).map((own) => own[0]!),
    cascade: items.slice(onlyCount + pencilCount),
    claimUntil: claimsFirst(step) && items.length > 0 ? within(frameAtTime(clock.rate, itemsFrom), from, until) : until,
  };
}

interface FrameRange {
  readonly from: Frame;
  readonly until: Frame;
}

/** `seconds` as spread; `given` if the time was written. */
interface Start {
  readonly seconds: Fraction;
  readonly given: Moment | undefined;
}

/**
 * Frames, in ascending order. A part with a given time is at that time, even at the step's end; the others are before
 * the end if possible.
 */
function framesInStep(starts: readonly Start[], { from, until }: FrameRange, clock: Clock): readonly Frame[] {
  let before = from;
  return starts.map(({ seconds, given }) => {
    const frame = frameAtTime(clock.rate, seconds);
    const placed = given?.frame === frame ? frameAt(Math.min(frame, until)) : within(frame, from, until);
    before = frameAt(Math.max(before, placed));
    return before;
  });
}

/** The frame, limited to the range from `from` to the last before `until`. */
function within(frame: Frame, from: Frame, until: Frame): Frame {
  return frameAt(Math.max(from, Math.min(frame, until - 1)));
}

/**
 * Items come after the step's argument: after the last beat, or after the claim is drawn, with the step's time divided
 * in proportion to what each needs. A step that only writes down begins immediately.
 */
function beginOfItems(outline: StepOutline, starts: readonly Fraction[], { end, strokesOf }: StepEnd): Fraction {
  const { step } = outline;
  const begin = outline.begin.seconds;
  const items = itemsToSpread(outline);
  if (!claimsFirst(step) || items.length === 0) return begin;
  const free =
    step.show === undefined ? sharedOut(outline, { end, strokesOf }) : afterBeats(outline, starts, { end, strokesOf });
  const firstGiven = items.find((item) => item.at !== undefined)?.at;
  return firstGiven === undefined ? free : earlierOf(free, firstGiven);
}

type Pace = Pick<StepEnd, 'end' | 'strokesOf'>;

function sharedOut(outline: StepOutline, { end, strokesOf }: Pace): Fraction {
  const claim = claimSeconds(outline.step, strokesOf);
  const weight = itemsToSpread(outline).reduce((sum, item) => sum + item.weight, 0);
  const all = add(claim, multiply(perConclusion, fraction(weight)));
  const begin = outline.begin.seconds;
  return add(begin, multiply(subtract(end, begin), divide(claim, all)));
}

/** Once the last beat is drawn; or halfway from its start to the step's end, if that is sooner. */
function afterBeats(outline: StepOutline, starts: readonly Fraction[], { end, strokesOf }: Pace): Fraction {
  const last = starts.at(-1);
  if (last === undefined) return outline.begin.seconds;
  if (compare(last, end) >= 0) return last;
  const drawn = add(last, beatsToSpread(outline, strokesOf).at(-1)!.wait);
  return earlierOf(drawn, multiply(add(last, end), fraction(1, 2)));
}

/**
 * When the recording no longer shows what a beat strikes, as its `gone` says; undefined if that is not possible.
 * `from`: the beat's first frame.
 */
export function goneAt(
  { value, span }: Located<Time>,
  from: Frame,
  begin: Begin,
  { clock, length, frameCount }: Pick<StepEnd, 'clock' | 'frameCount'> & { readonly length: VideoLength | undefined },
  report: Report,
): Frame | undefined {
  const found = momentOf(clock, value, { base: begin.seconds, notBefore: from, until: undefined });
  const moment = orReport(found, span, report);
  if (moment === undefined) return undefined;
  const { frame } = moment;
  if (frame < from) {
    const message = `the candidates are gone at ${clock.print(frame)}, before they are struck (${clock.print(from)}); give a later time`;
    report(timeError('time-goes-back', span, message));
    return undefined;
  }
  if (length !== undefined && frame > length.frameCount)
    report(pastEnd(span, 'the candidates are gone', frame, clock, length));
  return frameAt(Math.min(frame, frameCount));
}
