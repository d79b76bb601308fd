/**
 * The outline of a scene's times: where each step begins and ends, and the times that were given within it, each
 * looked up and held against what it follows. What was given no time is filled in afterwards.
 */

import type { Place as Anchor, Clock } from '../scene/anchors/anchor.ts';
import type { Time } from '../scene/anchors/anchors.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { add, type Fraction, fraction, subtract, zero } from '../scene/fraction.ts';
import type { Step, TimedScene } from '../scene/scene.ts';
import { type Moment, momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { endOf, momentsOf } from './given-times.ts';
import { frameAtTime, laterOf, printFrame, timeOfFrame } from './seconds.ts';
import { stepLength } from './step-length.ts';
import { itemsOf, lastGiven, latestFrame, latestOf, type OutlineOptions, type StepOutline } from './step-outline.ts';
import { goesBack, orReport, pastEnd, timeWarning } from './time-faults.ts';

/** The outline of every step, in order; a time that cannot stand is reported and left out. */
export function outlineSteps(
  scene: TimedScene,
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
  const fixedEnd =
    step.until === undefined || step.until.value.kind === 'words'
      ? undefined
      : quietly(clock, step.until.value, anchor);
  const bound = leastAfter(from, [fixedEnd, fixedBegin(clock, next), options.length?.frameCount]);
  const within = { ...options, diagnostics, begin, from, bound };
  const beats = momentsOf(
    (step.show ?? []).map(({ at, span }) => ({ at, span, what: 'beat' })),
    within,
  );
  const items = momentsOf(
    itemsOf(step).map(({ at, span }) => ({ at, span, what: 'item' })),
    within,
  );
  const latest = latestFrame(from, [...beats, ...items]);
  const until =
    step.until === undefined ? undefined : endOf(step.until, { ...anchor, notBefore: latest, until: bound }, within);
  return { step, begin, begun, beats, items, until };
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
  if (step.at === undefined)
    return { begin: spokenBegin(step, anchor, after, clock, diagnostics) ?? after, begun: undefined };
  const found = momentOf(clock, step.at.value, anchor);
  const moment = orReport(found, step.at.span, diagnostics, whatCameBefore(step.at.value, before, clock));
  if (moment === undefined) return { begin: after, begun: undefined };
  if (moment.frame < latest && before !== undefined) {
    diagnostics.push(goesBack(step.at.span, moment, before, clock));
    return { begin: laterOf(moment.seconds, before.begin), begun: undefined };
  }
  if (length !== undefined && moment.frame >= length.frameCount) {
    // What follows is measured as if the step began where it would without the time: one wrong time is one fault.
    diagnostics.push(pastEnd(step.at.span, `step "${step.id}" begins`, moment.frame, clock, length));
    return { begin: after, begun: undefined };
  }
  return { begin: moment.seconds, begun: moment };
}

/** Words are looked for after the last time written in the step before, which may itself be the one that is wrong. */
function whatCameBefore(time: Time, before: StepOutline | undefined, clock: Clock): Diagnostic['notes'] {
  const last = time.kind !== 'words' || before === undefined ? undefined : lastGiven(before);
  if (last === undefined) return undefined;
  return [{ span: last.span, message: `the words must come after this, at ${printFrame(clock.rate, last.frame)}` }];
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
  const print = (seconds: Fraction) => printFrame(clock.rate, frameAtTime(clock.rate, seconds));
  const alike = clock.alike(step.say.value, withinAnchor(anchor, clock));
  if (alike !== undefined) {
    const message = `step "${step.id}" says "${oneLine(step.say.value)}", and ${clock.narration.name} has "${alike.text}" at ${print(alike.seconds)}, where the step begins; let it say the words spoken, if they were meant to be the same`;
    diagnostics.push(timeWarning('said-otherwise', step.say.span, message));
    return alike.seconds;
  }
  const near = clock.nearest(step.say.value, {});
  const nearest = near === undefined ? '' : `; the nearest words are "${near.text}" at ${print(near.seconds)}`;
  const instead = `so it begins at ${print(after)}`;
  const mend = 'give the step an "at", or let it say the words spoken';
  const message = `what step "${step.id}" says is not spoken in ${clock.narration.name} after what comes before it, ${instead}${nearest}; ${mend}`;
  diagnostics.push(timeWarning('say-not-found', step.say.span, message));
  return undefined;
}

/** The times between which words of the anchor are looked for. A frame may begin just after the word that is on it. */
function withinAnchor({ notBefore, until }: Anchor, { rate }: Clock): { from: Fraction; until?: Fraction } {
  const half = fraction(rate.denominator, 2n * rate.numerator);
  const from = subtract(timeOfFrame(rate, notBefore), half);
  return until === undefined ? { from } : { from, until: subtract(timeOfFrame(rate, until), half) };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
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
