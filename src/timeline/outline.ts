/**
 * The outline of a scene's times: where each step begins and ends, and the times that were given within it, each looked up
 * and held against what it follows. What was given no time is filled in afterwards.
 */
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import { add, type Fraction, zero } from '../scene/fraction.ts';
import type { Located, Scene, Step, Time } from '../scene/scene.ts';
import { timeError, timeWarning } from './codes.ts';
import { type Frame, frameAt } from './film.ts';
import type { VideoLength } from './length.ts';
import { type Anchor, type Clock, type Moment, momentOf } from './moments.ts';
import type { StrokesOf } from './pace.ts';
import { frameAtTime, laterOf, printFrame } from './seconds.ts';
import { stepLength } from './step-length.ts';

export interface StepOutline {
  readonly step: Step;
  /** Seconds. */
  readonly begin: Fraction;
  /** As its `at` gave it. */
  readonly begun: Moment | undefined;
  /** By beat of `show`: the time it was given, where that can stand. */
  readonly beats: readonly (Moment | undefined)[];
  /** By item of `only`, `pencil`, `cascade`, in this order. */
  readonly items: readonly (Moment | undefined)[];
  readonly until: Moment | undefined;
}

export interface OutlineOptions {
  readonly clock: Clock;
  readonly length: VideoLength | undefined;
  readonly strokesOf: StrokesOf;
}

/** Something of a step that may have a time. */
interface Timed {
  readonly at: Located<Time> | undefined;
  readonly span: Span;
  /** For messages: `beat`, `item`. */
  readonly what: string;
}

/** The outline of every step, in order; a time that cannot stand is reported and left out. */
export function outlineSteps(
  scene: Scene,
  options: OutlineOptions,
): { readonly outlines: readonly StepOutline[]; readonly diagnostics: readonly Diagnostic[] } {
  const outlines: StepOutline[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const [index, step] of scene.steps.entries()) {
    outlines.push(outlineStep(step, scene.steps[index + 1], outlines.at(-1), options, diagnostics));
  }
  return { outlines, diagnostics };
}

/** Where a step ends by itself: at its `until`, else when what it has to say and to show is over. Seconds. */
export function ownEnd(outline: StepOutline, options: OutlineOptions): Fraction {
  if (outline.until !== undefined) return outline.until.seconds;
  return add(outline.begin, stepLength(outline, options.strokesOf));
}

/** Everything in `only`, `pencil` and `cascade`, in the order in which it is told. */
export function itemsOf(step: Step): readonly (Step['only'][number] | Step['pencil'][number] | Step['cascade'][number])[] {
  return [...step.only, ...step.pencil, ...step.cascade];
}

function outlineStep(
  step: Step,
  next: Step | undefined,
  before: StepOutline | undefined,
  options: OutlineOptions,
  diagnostics: Diagnostic[],
): StepOutline {
  const { clock } = options;
  const { begin, begun } = beginOf(step, next, before, options, diagnostics);
  const from = frameAtTime(clock.rate, begin);
  const anchor: Anchor = { base: begin, notBefore: from, until: undefined };
  const fixedEnd = step.until === undefined || step.until.value.kind === 'words' ? undefined : quietly(clock, step.until.value, anchor);
  const bound = leastAfter(from, [fixedEnd, fixedBegin(clock, next), options.length?.frameCount]);
  const within = { ...options, diagnostics, begin, from, bound };
  const beats = momentsOf((step.show ?? []).map(({ at, span }) => ({ at, span, what: 'beat' })), within);
  const items = momentsOf(itemsOf(step).map(({ at, span }) => ({ at, span, what: 'item' })), within);
  const latest = latestFrame(from, [...beats, ...items]);
  const until = step.until === undefined ? undefined : endOf(step.until, { ...anchor, notBefore: latest, until: bound }, from, within);
  return { step, begin, begun, beats, items, until };
}

interface Within extends OutlineOptions {
  readonly diagnostics: Diagnostic[];
  readonly begin: Fraction;
  readonly from: Frame;
  /** The frame by which the step is known to be over. */
  readonly bound: Frame | undefined;
}

function beginOf(
  step: Step,
  next: Step | undefined,
  before: StepOutline | undefined,
  options: OutlineOptions,
  diagnostics: Diagnostic[],
): { readonly begin: Fraction; readonly begun: Moment | undefined } {
  const { clock, length } = options;
  const after = before === undefined ? zero : ownEnd(before, options);
  const latest = before === undefined ? frameAt(0) : latestOf(clock, before);
  const bound = leastAfter(latest, [fixedBegin(clock, next), length?.frameCount]);
  const anchor: Anchor = { base: before?.begin ?? zero, notBefore: latest, until: bound };
  if (step.at === undefined) return { begin: spokenBegin(step, anchor, after, clock, diagnostics) ?? after, begun: undefined };
  const found = momentOf(clock, step.at.value, anchor);
  if (!found.ok) {
    if (found.fault !== undefined) diagnostics.push(timeError(found.fault.code, step.at.span, found.fault.message));
    return { begin: after, begun: undefined };
  }
  const { moment } = found;
  if (moment.frame < latest && before !== undefined) {
    diagnostics.push(goesBack(step.at.span, moment, before, options));
    return { begin: laterOf(moment.seconds, before.begin), begun: undefined };
  }
  if (length !== undefined && moment.frame >= length.frameCount) {
    diagnostics.push(pastEnd(step.at.span, `step '${step.id}' begins`, moment.frame, clock, length));
  }
  return { begin: moment.seconds, begun: moment };
}

/** Where the narration speaks what the step says, if it does. */
function spokenBegin(
  step: Step,
  anchor: Anchor,
  after: Fraction,
  clock: Clock,
  diagnostics: Diagnostic[],
): Fraction | undefined {
  if (step.say === undefined || typeof clock.narration === 'string') return undefined;
  const time: Time = { kind: 'words', words: step.say.value, occurrence: 1, fallback: undefined };
  const found = momentOf(clock, time, anchor);
  if (found.ok) return found.moment.seconds;
  const near = clock.nearest(step.say.value, {});
  const nearest = near === undefined ? '' : `; the nearest words are "${near.text}" at ${printFrame(clock.rate, frameAtTime(clock.rate, near.seconds))}`;
  const message = `what step '${step.id}' says is not spoken in ${clock.narration.name} after the step before, so it begins when that ends, at ${printFrame(clock.rate, frameAtTime(clock.rate, after))}${nearest}; give the step an \`at\`, or let it say the words spoken`;
  diagnostics.push(timeWarning('say-not-found', step.say.span, message));
  return undefined;
}

/** Times of beats or items, each not before the one before it; undefined where none was given or it cannot stand. */
function momentsOf(timed: readonly Timed[], within: Within): readonly (Moment | undefined)[] {
  let notBefore = within.from;
  let beforeSpan: Span | undefined;
  return timed.map(({ at, what }) => {
    if (at === undefined) return undefined;
    const found = momentOf(within.clock, at.value, { base: within.begin, notBefore, until: within.bound });
    const refused = found.ok ? whyNotHere(found.moment, at.span, what, { notBefore, beforeSpan }, within) : undefined;
    if (!found.ok) {
      if (found.fault !== undefined) within.diagnostics.push(timeError(found.fault.code, at.span, found.fault.message));
      return undefined;
    }
    if (refused !== undefined) {
      within.diagnostics.push(refused);
      return undefined;
    }
    notBefore = found.moment.frame;
    beforeSpan = at.span;
    return found.moment;
  });
}

function whyNotHere(
  moment: Moment,
  span: Span,
  what: string,
  before: { readonly notBefore: Frame; readonly beforeSpan: Span | undefined },
  { clock, length, bound, from }: Within,
): Diagnostic | undefined {
  const print = (frame: number) => printFrame(clock.rate, frame);
  if (moment.frame < before.notBefore) {
    const other = before.beforeSpan === undefined ? 'its step begins' : `the ${what} before it comes`;
    const message = `this ${what} is at ${print(moment.frame)}, before ${other} (${print(before.notBefore)}); give a later time, or move the ${what} up`;
    const note = before.beforeSpan === undefined ? [] : [{ span: before.beforeSpan, message: `the ${what} before it` }];
    return timeError('time-goes-back', span, message, note);
  }
  if (length !== undefined && moment.frame >= length.frameCount) return pastEnd(span, `this ${what} is`, moment.frame, clock, length);
  if (bound === undefined || moment.frame <= bound || bound <= from) return undefined;
  const message = `this ${what} is at ${print(moment.frame)}, after its step has ended (${print(bound)}); give an earlier time, or let the step last longer`;
  return timeError('time-past-step', span, message);
}

function endOf(until: Located<Time>, anchor: Anchor, from: Frame, { clock, length, diagnostics }: Within): Moment | undefined {
  // Words that end a step may be spoken on the very frame on which the next one begins.
  const found = momentOf(clock, until.value, { ...anchor, until: anchor.until === undefined ? undefined : frameAt(anchor.until + 1) });
  if (!found.ok) {
    if (found.fault !== undefined) diagnostics.push(timeError(found.fault.code, until.span, found.fault.message));
    return undefined;
  }
  const { moment } = found;
  const print = (frame: number) => printFrame(clock.rate, frame);
  if (moment.frame < anchor.notBefore) {
    const other = moment.frame < from ? `the step begins (${print(from)})` : `the last of its beats and items comes (${print(anchor.notBefore)})`;
    diagnostics.push(timeError('time-goes-back', until.span, `the step ends at ${print(moment.frame)}, before ${other}; give a later end`));
    return undefined;
  }
  if (length !== undefined && moment.frame > length.frameCount) {
    diagnostics.push(pastEnd(until.span, 'the step ends', moment.frame, clock, length));
    return undefined;
  }
  return moment;
}

/** A time after the last frame, with what made the video so short. */
export function pastEnd(span: Span, subject: string, frame: Frame, clock: Clock, length: VideoLength): Diagnostic {
  const why = { length: 'by `length`', footage: 'as long as its footage', audio: 'as long as its audio' }[length.source];
  const mend = length.source === 'length' ? 'give an earlier time, or a greater `length`' : 'give an earlier time, or a `length`';
  const message = `${subject} at ${printFrame(clock.rate, frame)}, and the video, ${why}, ends at ${printFrame(clock.rate, length.frameCount)}; ${mend}`;
  return timeError('time-past-end', span, message);
}

function goesBack(span: Span, moment: Moment, before: StepOutline, { clock }: OutlineOptions): Diagnostic {
  const print = (frame: number) => printFrame(clock.rate, frame);
  const at = `the step begins at ${print(moment.frame)}`;
  const { step } = before;
  const begin = frameAtTime(clock.rate, before.begin);
  if (moment.frame < begin) {
    const untimed = before.begun === undefined && step.at === undefined;
    const mend = untimed ? `give '${step.id}' an \`at\` too, or this one a later time` : 'give a later time, or move the step up';
    const message = `${at}, before the step before it, '${step.id}', begins (${print(begin)}); ${mend}`;
    return timeError('time-goes-back', span, message, [{ span: step.at?.span ?? step.idSpan, message: `'${step.id}' begins at ${print(begin)}` }]);
  }
  if (before.until !== undefined && step.until !== undefined && moment.frame < before.until.frame) {
    const end = print(before.until.frame);
    const message = `${at}, before the step before it, '${step.id}', ends (${end}); give a later time, or an earlier \`until\` there`;
    return timeError('time-goes-back', span, message, [{ span: step.until.span, message: `'${step.id}' ends at ${end}` }]);
  }
  const latest = latestOf(clock, before);
  const late = [...(step.show ?? []), ...itemsOf(step)].find((_, index) => [...before.beats, ...before.items][index]?.frame === latest);
  const message = `${at}, before the last beat or item of '${step.id}', the step before it, has come (${print(latest)}); give a later time, or an earlier one there`;
  const note = late?.at === undefined ? [] : [{ span: late.at.span, message: `this is at ${print(latest)}` }];
  return timeError('time-goes-back', span, message, note);
}

/** The latest time that was given within a step, its `until` with the rest. */
function latestOf(clock: Clock, outline: StepOutline): Frame {
  return latestFrame(frameAtTime(clock.rate, outline.begin), [...outline.beats, ...outline.items, outline.until]);
}

function latestFrame(from: Frame, moments: readonly (Moment | undefined)[]): Frame {
  return moments.reduce<Frame>((latest, moment) => (moment !== undefined && moment.frame > latest ? moment.frame : latest), from);
}

/** Where a step begins, where its `at` alone says so. */
function fixedBegin(clock: Clock, step: Step | undefined): Frame | undefined {
  const time = step?.at?.value;
  if (time === undefined || time.kind === 'words' || time.kind === 'after') return undefined;
  return quietly(clock, time, { base: zero, notBefore: frameAt(0), until: undefined });
}

/** The frame of a time; its fault is reported where the time stands. */
function quietly(clock: Clock, time: Time, anchor: Anchor): Frame | undefined {
  const found = momentOf(clock, time, anchor);
  return found.ok ? found.moment.frame : undefined;
}

/** The least of the frames that lie after `from`; one before it is a fault of its own and bounds nothing. */
function leastAfter(from: Frame, frames: readonly (number | undefined)[]): Frame | undefined {
  const after = frames.filter((frame) => frame !== undefined && frame > from);
  return after.length === 0 ? undefined : frameAt(Math.min(...after.filter((frame) => frame !== undefined)));
}
