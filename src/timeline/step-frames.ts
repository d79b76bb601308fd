/**
 * The frames of one step: its beats, its items, and what the recording takes away by itself.
 */
import type { Diagnostic } from '../scene/diagnostic.ts';
import { add, compare, divide, type Fraction, fraction, multiply, subtract } from '../scene/fraction.ts';
import type { Beat } from '../scene/scene.ts';
import { timeError, timeWarning } from './codes.ts';
import { type Frame, frameAt } from './film.ts';
import { type Moment, momentOf } from './moments.ts';
import { itemsOf, type OutlineOptions, pastEnd, type StepOutline } from './outline.ts';
import { perConclusion } from './pace.ts';
import { earlierOf, frameAtTime, printFrame } from './seconds.ts';
import { spreadBeats, spreadItems } from './spread.ts';
import { beatsToSpread, claimSeconds, claimsFirst, itemsToSpread } from './step-length.ts';

/** Shown from frame `from` to frame `until`, `until` not included. */
export interface ScheduledStep {
  readonly id: string;
  readonly from: Frame;
  readonly until: Frame;
  /** By beat of `show`, never going back; empty without `show`. One that begins at `until` is never seen. */
  readonly beats: readonly ScheduledBeat[];
  /** By item: when it is written down. */
  readonly only: readonly Frame[];
  readonly pencil: readonly Frame[];
  /** By item, by conclusion. */
  readonly cascade: readonly (readonly Frame[])[];
  /** Without `show`: the claim of `so` and `chain` has drawn itself before this frame, for the items come then. */
  readonly claimUntil: Frame;
}

export interface ScheduledBeat {
  /** The first frame with any ink of its mark. */
  readonly from: Frame;
  /** Of a strike with `gone`: the first frame on which the recording no longer shows the candidate. */
  readonly gone: Frame | undefined;
}

export interface StepEnd extends OutlineOptions {
  /** When the step is over, in seconds. */
  readonly end: Fraction;
  readonly frameCount: number;
  /** Faults found are added here. */
  readonly diagnostics: Diagnostic[];
}

/** The step's frames, all within the video. What has no time of its own comes to lie within the step. */
export function scheduleStep(outline: StepOutline, options: StepEnd): ScheduledStep {
  const { step } = outline;
  const { clock, frameCount } = options;
  const from = frameAt(Math.min(frameAtTime(clock.rate, outline.begin), frameCount));
  const until = frameAt(Math.min(Math.max(from, frameAtTime(clock.rate, options.end)), frameCount));
  const starts = spreadBeats(beatsToSpread(outline, options.strokesOf), { begin: outline.begin, end: options.end });
  const inStep = (seconds: Fraction): Frame => within(frameAtTime(clock.rate, seconds), from, until);
  const beatFrames = starts.map((seconds, index) => beatFrame(outline.beats[index], seconds, { from, until }, options));
  const itemsFrom = beginOfItems(outline, starts, options);
  const items = spreadItems(itemsToSpread(outline), itemsFrom, options.end).map((things) => things.map(inStep));
  const [onlyCount, pencilCount] = [step.only.length, step.pencil.length];
  options.diagnostics.push(
    ...neverSeen(outline, { from, until }, options),
    ...held(outline, beatFrames, until, options),
    ...spokenAgain(outline, until, options),
  );
  return {
    id: step.id,
    from,
    until,
    beats: (step.show ?? []).map((beat, index) => ({ from: beatFrames[index]!, gone: goneAt(beat, beatFrames[index]!, outline, options) })),
    only: items.slice(0, onlyCount).map((things) => things[0]!),
    pencil: items.slice(onlyCount, onlyCount + pencilCount).map((things) => things[0]!),
    cascade: items.slice(onlyCount + pencilCount),
    claimUntil: claimsFirst(step) && items.length > 0 ? inStep(itemsFrom) : until,
  };
}

interface FrameRange {
  readonly from: Frame;
  readonly until: Frame;
}

/** A beat with a time stands there, even on the last frame's edge; one without comes no later than the step's last frame. */
function beatFrame(given: Moment | undefined, seconds: Fraction, { from, until }: FrameRange, { clock }: StepEnd): Frame {
  const frame = frameAtTime(clock.rate, seconds);
  return given !== undefined && given.frame === frame ? frameAt(Math.min(frame, until)) : within(frame, from, until);
}

/** The frame, brought within `from` and the last before `until`. */
function within(frame: Frame, from: Frame, until: Frame): Frame {
  return frameAt(Math.max(from, Math.min(frame, until - 1)));
}

/**
 * Items come after what the step argues: after the last beat, or after the claim has drawn itself, for which the step's time is shared
 * out by what either needs. A step that only writes down begins at once.
 */
function beginOfItems(outline: StepOutline, starts: readonly Fraction[], { end, strokesOf }: StepEnd): Fraction {
  const { step, begin } = outline;
  const items = itemsToSpread(outline);
  if (!claimsFirst(step) || items.length === 0) return begin;
  const free = step.show === undefined ? sharedOut(outline, { end, strokesOf }) : afterBeats(outline, starts, { end, strokesOf });
  const firstGiven = items.find((item) => item.at !== undefined)?.at;
  return firstGiven === undefined ? free : earlierOf(free, firstGiven);
}

type Pace = Pick<StepEnd, 'end' | 'strokesOf'>;

function sharedOut(outline: StepOutline, { end, strokesOf }: Pace): Fraction {
  const claim = claimSeconds(outline.step, strokesOf);
  const weight = itemsToSpread(outline).reduce((sum, item) => sum + item.weight, 0);
  const all = add(claim, multiply(perConclusion, fraction(weight)));
  return add(outline.begin, multiply(subtract(end, outline.begin), divide(claim, all)));
}

/** Once the last beat is drawn; halfway from its start to the step's end where that is sooner. */
function afterBeats(outline: StepOutline, starts: readonly Fraction[], { end, strokesOf }: Pace): Fraction {
  const last = starts.at(-1);
  if (last === undefined) return outline.begin;
  if (compare(last, end) >= 0) return last;
  const drawn = add(last, beatsToSpread(outline, strokesOf).at(-1)!.wait);
  return earlierOf(drawn, multiply(add(last, end), fraction(1, 2)));
}

function goneAt(beat: Beat, from: Frame, outline: StepOutline, { clock, length, frameCount, diagnostics }: StepEnd): Frame | undefined {
  if (beat.mark.kind !== 'strike' || beat.mark.gone === undefined) return undefined;
  const { value, span } = beat.mark.gone;
  const found = momentOf(clock, value, { base: outline.begin, notBefore: from, until: undefined });
  if (!found.ok) {
    if (found.fault !== undefined) diagnostics.push(timeError(found.fault.code, span, found.fault.message));
    return undefined;
  }
  const { frame } = found.moment;
  if (frame < from) {
    const message = `the candidates are gone at ${printFrame(clock.rate, frame)}, before they are struck (${printFrame(clock.rate, from)}); give a later time`;
    diagnostics.push(timeError('time-goes-back', span, message));
    return undefined;
  }
  if (length !== undefined && frame > length.frameCount) diagnostics.push(pastEnd(span, 'the candidates are gone', frame, clock, length));
  return frameAt(Math.min(frame, frameCount));
}

function neverSeen(outline: StepOutline, { from, until }: FrameRange, { clock, length, frameCount }: StepEnd): readonly Diagnostic[] {
  const { step } = outline;
  const print = (frame: number) => printFrame(clock.rate, frame);
  const begin = frameAtTime(clock.rate, outline.begin);
  // A step that begins past the end by its own `at` has been reported there.
  if (begin >= frameCount && length !== undefined) return outline.begun === undefined ? [pastEnd(step.idSpan, `step '${step.id}' begins`, begin, clock, length)] : [];
  if (from === until) {
    const message = `step '${step.id}' begins and ends on one frame (${print(from)}) and is never seen; give it time, or leave it out`;
    return [timeWarning('never-seen', step.at?.span ?? step.idSpan, message)];
  }
  return timedParts(outline).flatMap(({ moment, span, what }) => {
    if (moment.frame < until) return [];
    const message = `this ${what} comes on the frame on which its step ends (${print(until)}) and is never seen; give an earlier time`;
    return [timeWarning('never-seen', span, message)];
  });
}

/** Beats that a question keeps waiting: beyond the step's end, or beyond the time that they were given. */
function held(outline: StepOutline, frames: readonly Frame[], until: Frame, options: StepEnd): readonly Diagnostic[] {
  const { clock } = options;
  const show = outline.step.show ?? [];
  let ask: { readonly beat: Beat; readonly answer: Frame } | undefined;
  for (const [index, beat] of show.entries()) {
    const given = outline.beats[index];
    if (ask !== undefined && ask.answer >= until) {
      const message = `this question holds the beats after it until ${printFrame(clock.rate, ask.answer)}, and its step ends at ${printFrame(clock.rate, until)}; give a shorter \`hold\`, or the step more time`;
      return [timeError('hold-too-long', ask.beat.span, message)];
    }
    if (ask !== undefined && given !== undefined && frames[index]! > given.frame) {
      const message = `this beat is at ${printFrame(clock.rate, given.frame)}, and the question before it holds it back until ${printFrame(clock.rate, frames[index]!)}; give a later time, or the question a shorter \`hold\``;
      const note = { span: ask.beat.span, message: 'the question before it' };
      return [timeWarning('held-back', beat.at?.span ?? beat.span, message, [note])];
    }
    if (beat.mark.kind !== 'ask') continue;
    ask = { beat, answer: frameAt(frames[index]! + frameAtTime(clock.rate, beat.mark.hold)) };
  }
  return [];
}

/** Words that are spoken once more before the step is over. */
function spokenAgain(outline: StepOutline, until: Frame, { clock }: StepEnd): readonly Diagnostic[] {
  const { step, begun } = outline;
  const parts = [
    ...(begun === undefined || step.at === undefined ? [] : [{ moment: begun, span: step.at.span, time: step.at.value }]),
    ...timedParts(outline),
  ];
  return parts.flatMap(({ moment, span, time }) => {
    const again = moment.again.find((place) => frameAtTime(clock.rate, place.seconds) < until);
    if (again === undefined || time.kind !== 'words') return [];
    const at = printFrame(clock.rate, frameAtTime(clock.rate, again.seconds));
    const message = `"${time.words}" is spoken again within this step, at ${at}; the first place, at ${printFrame(clock.rate, moment.frame)}, is taken (words 2 "..." takes the second)`;
    return [timeWarning('phrase-twice', span, message)];
  });
}

/** The beats and items of a step whose times can stand. */
function timedParts({ step, beats, items }: StepOutline) {
  const parts = [
    ...(step.show ?? []).map((beat, index) => ({ at: beat.at, moment: beats[index], what: 'beat' })),
    ...itemsOf(step).map((item, index) => ({ at: item.at, moment: items[index], what: 'item' })),
  ];
  return parts.flatMap(({ at, moment, what }) => (at === undefined || moment === undefined ? [] : [{ moment, what, span: at.span, time: at.value }]));
}
