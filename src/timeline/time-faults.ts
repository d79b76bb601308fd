/**
 * Faults of times, as messages to the user.
 */

import type { Clock } from '../scene/anchor.ts';
import type { Code } from '../scene/codes.ts';
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import type { Moment, MomentFound } from './clock.ts';
import type { Frame } from './film.ts';
import { printFrame } from './seconds.ts';
import { lastGiven, type StepOutline } from './step-outline.ts';
import type { Report } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

type Notes = NonNullable<Diagnostic['notes']>;

/** A fault that prevents a scene from being shown. */
export function timeError(code: Code, span: Span, message: string, notes: Notes = []): Diagnostic {
  return { code, severity: 'error', span, message, ...(notes.length > 0 ? { notes } : {}) };
}

/** A fault that does not prevent a scene from being shown. */
export function timeWarning(code: Code, span: Span, message: string, notes: Notes = []): Diagnostic {
  return { code, severity: 'warning', span, message, ...(notes.length > 0 ? { notes } : {}) };
}

/** The moment found; if there is none, undefined, and the fault is reported. */
export function orReport(found: MomentFound, span: Span, report: Report, notes: Notes = []): Moment | undefined {
  if (found.ok) return found.moment;
  if (found.fault !== undefined) report(timeError(found.fault.code, span, found.fault.message, notes));
  return undefined;
}

/** A time after the last frame, with what determined the video's length. */
export function pastEnd(span: Span, subject: string, frame: Frame, clock: Clock, length: VideoLength): Diagnostic {
  const why = { length: 'by "length"', footage: 'as long as its footage', audio: 'as long as its audio' }[
    length.source
  ];
  const fix =
    length.source === 'length' ? 'give an earlier time, or a greater "length"' : 'give an earlier time, or a "length"';
  const message = `${subject} at ${printFrame(clock.rate, frame)}, and the video, ${why}, ends at ${printFrame(clock.rate, length.frameCount)}; ${fix}`;
  return timeError('time-past-end', span, message);
}

/** A step that begins before something of the step before it: its begin, its end, or the last time given within it. */
export function goesBack(span: Span, moment: Moment, before: StepOutline, clock: Clock): Diagnostic {
  const print = (frame: number) => printFrame(clock.rate, frame);
  const at = `the step begins at ${print(moment.frame)}`;
  const { step } = before;
  const begin = before.begin.frame;
  if (moment.frame < begin) {
    const untimed = before.begin.given === undefined && step.at === undefined;
    const fix = untimed
      ? `give "${step.id}" an "at" too, or this one a later time`
      : 'give a later time, or move the step up';
    const message = `${at}, before the step before it, "${step.id}", begins (${print(begin)}); ${fix}`;
    return timeError('time-goes-back', span, message, [
      { span: step.at?.span ?? step.idSpan, message: `"${step.id}" begins at ${print(begin)}` },
    ]);
  }
  if (before.until !== undefined && step.until !== undefined && moment.frame < before.until.frame) {
    const end = print(before.until.frame);
    const message = `${at}, before the step before it, "${step.id}", ends (${end}); give a later time, or an earlier "until" there`;
    return timeError('time-goes-back', span, message, [
      { span: step.until.span, message: `"${step.id}" ends at ${end}` },
    ]);
  }
  const last = lastGiven(before);
  const latest = print(last?.frame ?? begin);
  const message = `${at}, before the last beat or item of "${step.id}", the step before it, has begun (${latest}); give a later time, or an earlier one there`;
  const note = last === undefined ? [] : [{ span: last.span, message: `this is at ${latest}` }];
  return timeError('time-goes-back', span, message, note);
}
