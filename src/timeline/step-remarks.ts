/**
 * Remarks about a step once its frames are known.
 */

import type { Clock } from '../scene/anchor.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat } from '../scene/scene.ts';
import { type Frame, frameAt } from './film.ts';
import { frameAtTime, printFrame } from './seconds.ts';
import type { ScheduledStep } from './step-frames.ts';
import { itemsOf, type StepOutline } from './step-outline.ts';
import { timeError, timeWarning } from './time-faults.ts';

/** What begins on the same frame on which its step ends. */
export function neverSeen(outline: StepOutline, { from, until }: ScheduledStep, clock: Clock): readonly Diagnostic[] {
  const { step } = outline;
  const print = (frame: number) => printFrame(clock.rate, frame);
  if (from === until) {
    const message = `step "${step.id}" begins and ends on one frame (${print(from)}) and is never seen; give it time, or leave it out`;
    return [timeWarning('never-seen', step.at?.span ?? step.idSpan, message)];
  }
  return timedParts(outline).flatMap(({ moment, span, what }) => {
    if (moment.frame < until) return [];
    const message = `this ${what} begins on the frame on which its step ends (${print(until)}) and is never seen; give an earlier time`;
    return [timeWarning('never-seen', span, message)];
  });
}

/** Beats that a question delays: beyond the step's end, or beyond the time that they were given. */
export function held(outline: StepOutline, { beats, until }: ScheduledStep, clock: Clock): readonly Diagnostic[] {
  const show = outline.step.show ?? [];
  let ask: { readonly beat: Beat; readonly answer: Frame } | undefined;
  for (const [index, beat] of show.entries()) {
    const given = outline.beats[index];
    if (ask !== undefined && ask.answer >= until) {
      const message = `this question holds the beats after it until ${printFrame(clock.rate, ask.answer)}, and its step ends at ${printFrame(clock.rate, until)}; give a shorter "hold", or the step more time`;
      return [timeError('hold-too-long', ask.beat.span, message)];
    }
    if (ask !== undefined && given !== undefined && beats[index]!.from > given.frame) {
      const message = `this beat is at ${printFrame(clock.rate, given.frame)}, and the question before it holds it back until ${printFrame(clock.rate, beats[index]!.from)}; give a later time, or the question a shorter "hold"`;
      const note = { span: ask.beat.span, message: 'the question before it' };
      return [timeWarning('held-back', beat.at?.span ?? beat.span, message, [note])];
    }
    if (beat.mark.kind !== 'ask') continue;
    ask = { beat, answer: frameAt(beats[index]!.from + frameAtTime(clock.rate, beat.mark.hold)) };
  }
  return [];
}

/** Words that are spoken again before the step is over. */
export function spokenAgain(outline: StepOutline, { until }: ScheduledStep, clock: Clock): readonly Diagnostic[] {
  const { step } = outline;
  const begun = outline.begin.given;
  const parts = [
    ...(begun === undefined || step.at === undefined
      ? []
      : [{ moment: begun, span: step.at.span, time: step.at.value }]),
    ...timedParts(outline),
  ];
  return parts.flatMap(({ moment, span, time }) => {
    const again = moment.again.find((place) => frameAtTime(clock.rate, place.seconds) < until);
    if (again === undefined || time.kind !== 'words') return [];
    const at = printFrame(clock.rate, frameAtTime(clock.rate, again.seconds));
    const message = `"${time.words}" is spoken again within this step, at ${at}; the first place, at ${printFrame(clock.rate, moment.frame)}, is used (words 2 "..." takes the second)`;
    return [timeWarning('phrase-twice', span, message)];
  });
}

/** The beats and items of a step whose times are possible. */
function timedParts({ step, beats, items }: StepOutline) {
  const parts = [
    ...(step.show ?? []).map((beat, index) => ({ at: beat.at, moment: beats[index], what: 'beat' })),
    ...itemsOf(step).map((item, index) => ({ at: item.at, moment: items[index], what: 'item' })),
  ];
  return parts.flatMap(({ at, moment, what }) =>
    at === undefined || moment === undefined ? [] : [{ moment, what, span: at.span, time: at.value }],
  );
}
