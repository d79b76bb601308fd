/**
 * The faults of the times of a scene that could not be read as a whole: those that hold whatever the unread parts are
 * meant to be. A fault that may follow from an error already reported is left out until that error is fixed.
 */
import { isSameEverywhere, type Time, whyNowhere } from '../scene/anchors.ts';
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import type { Doubts, StepDoubt } from '../scene/doubts.ts';
import type { TimedScene } from '../scene/scene.ts';
import { clockOf } from './clock.ts';
import type { Narration } from './narration.ts';
import { type ScheduleOptions, scheduleWith } from './schedule.ts';
import { timesOf } from './times-of.ts';

/** They depend on when a step ends, and so also on the next step. */
const ofTheEnd = ['hold-too-long', 'held-back', 'never-seen', 'phrase-twice', 'time-past-step'];
/** A label is wrong on its own, and so is a time that needs a narration when there is none. */
const ofTheVideo = [
  ...['drop-frame', 'dropped-label', 'out-of-range', 'mixed-timecode', 'time-before-start'],
  ...['no-narration', 'time-past-end'],
];

/** In order of place. `narration` as for `scheduleWith`. */
export function certainFaultsWith(
  scene: TimedScene,
  doubts: Doubts,
  narration: Narration | undefined,
  options: ScheduleOptions,
): readonly Diagnostic[] {
  const { diagnostics } = scheduleWith(scene, narration, options);
  const clock = clockOf(scene, narration);
  const times = timesOf(scene);
  const alone: Diagnostic[] = [];
  const others: Diagnostic[] = [];
  for (const fault of diagnostics) {
    const time = times.find(({ span }) => span.start === fault.span.start && span.end === fault.span.end)?.value;
    const nowhere = time === undefined || fault.code !== 'phrase-not-found' ? undefined : whyNowhere(time, clock);
    if (nowhere !== undefined) alone.push({ ...fault, message: nowhere, notes: [] });
    else if (standsAlone(fault, time, scene, doubts)) alone.push(fault);
    else others.push(fault);
  }
  const kept = doubts.video || doubts.order ? [] : certainAmong(others, diagnostics, scene, doubts);
  return [...alone, ...kept].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
}

/** Whether the fault depends only on its own time, the video and the narration. */
function standsAlone({ code }: Diagnostic, time: Time | undefined, scene: TimedScene, doubts: Doubts): boolean {
  if (code === 'cue-not-found') return true;
  if (doubts.video || !ofTheVideo.includes(code)) return false;
  return code !== 'time-past-end' || (isFixed(time) && scene.video.length !== undefined);
}

/** Of faults that depend on what comes before: those of steps whose dependencies were all read. */
function certainAmong(
  faults: readonly Diagnostic[],
  all: readonly Diagnostic[],
  { steps, video }: TimedScene,
  doubts: Doubts,
): readonly Diagnostic[] {
  const certain: Diagnostic[] = [];
  const lasts = doubts.steps.map(lastsAsMeant);
  let known = true;
  for (const [index, step] of steps.entries()) {
    const own = faults.filter(({ span }) => isWithin(span, step.span));
    // With an impossible time, the step begins where it would without one, or after the previous step.
    const refused = all.filter(
      ({ severity, span }) => severity === 'error' && step.at !== undefined && isSame(span, step.at.span),
    );
    const follows: boolean = known && (lasts[index - 1] ?? true);
    const begun: boolean = step.at === undefined || refused.length > 0 ? follows : isFixed(step.at.value) || known;
    // Its beginning is wrong because of what comes before it, whatever else of it could not be read.
    if (known && isFixed(step.at?.value)) certain.push(...own.filter((fault) => refused.includes(fault)));
    known = begun && doubts.steps[index] !== 'times';
    if (!known) continue;
    const ended = lasts[index] && doubts.steps[index + 1] !== 'times';
    certain.push(...own.filter((fault) => !certain.includes(fault) && (ended || !ofTheEnd.includes(fault.code))));
  }
  const outside = faults.filter(
    ({ code, span }) => !steps.some((step) => isWithin(span, step.span)) && (code === 'no-length' || !doubts.board),
  );
  const lengthKnown = video.length !== undefined || !lasts.includes(false);
  return [...certain, ...outside.filter(({ code }) => lengthKnown || code !== 'no-length')];
}

function lastsAsMeant(doubt: StepDoubt): boolean {
  return doubt === 'none' || doubt === 'words';
}

/** Whether the moment depends only on the video and the narration. */
function isFixed(time: Time | undefined): boolean {
  return time !== undefined && isSameEverywhere(time);
}

function isSame(a: Span, b: Span): boolean {
  return a.start === b.start && a.end === b.end;
}

function isWithin(inner: Span, outer: Span): boolean {
  return inner.start >= outer.start && inner.end <= outer.end;
}
