/**
 * A time that was given within a step, looked up and compared with what it follows.
 */
import type { Place } from '../scene/anchor.ts';
import type { Time } from '../scene/anchors.ts';
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import type { Located } from '../scene/scene.ts';
import { type Moment, momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { printFrame } from './seconds.ts';
import type { Begin, Given, Timing } from './step-outline.ts';
import { orReport, pastEnd, timeError } from './time-faults.ts';
import type { Report } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

/** The step that contains a time. */
export interface Within extends Timing {
  readonly length: VideoLength | undefined;
  readonly begin: Begin;
  /** The frame by which the step is known to be over. */
  readonly bound: Frame | undefined;
  readonly report: Report;
}

/** The time of a beat or an item; undefined if it is not possible. `before`: the last of its kind that has a time. */
export function momentWithin(
  at: Located<Time>,
  what: 'beat' | 'item',
  before: Given | undefined,
  within: Within,
): Moment | undefined {
  const { clock, begin, bound, report } = within;
  const notBefore = before?.frame ?? begin.frame;
  const moment = orReport(momentOf(clock, at.value, { base: begin.seconds, notBefore, until: bound }), at.span, report);
  if (moment === undefined) return undefined;
  const refused = whyNotHere(moment, at.span, what, before, within);
  if (refused === undefined) return moment;
  report(refused);
  return undefined;
}

function whyNotHere(
  moment: Moment,
  span: Span,
  what: string,
  before: Given | undefined,
  { clock, length, bound, begin }: Within,
): Diagnostic | undefined {
  const print = (frame: number) => printFrame(clock.rate, frame);
  const notBefore = before?.frame ?? begin.frame;
  if (moment.frame < notBefore) {
    const other = before === undefined ? 'its step begins' : `the ${what} before it comes`;
    const message = `this ${what} is at ${print(moment.frame)}, before ${other} (${print(notBefore)}); give a later time, or move the ${what} up`;
    const note = before === undefined ? [] : [{ span: before.span, message: `the ${what} before it` }];
    return timeError('time-goes-back', span, message, note);
  }
  if (length !== undefined && moment.frame >= length.frameCount)
    return pastEnd(span, `this ${what} is`, moment.frame, clock, length);
  if (bound === undefined || moment.frame <= bound || bound <= begin.frame) return undefined;
  const message = `this ${what} is at ${print(moment.frame)}, after its step has ended (${print(bound)}); give an earlier time, or let the step last longer`;
  return timeError('time-past-step', span, message);
}

/** When a step ends by its `until`; undefined if that is not possible. `latest`: the last time given within it. */
export function endOf(
  until: Located<Time>,
  latest: Frame,
  { clock, length, begin, bound, report }: Within,
): Moment | undefined {
  // Words that end a step may be spoken on the very frame on which the next one begins.
  const place: Place = {
    base: begin.seconds,
    notBefore: latest,
    until: bound === undefined ? undefined : frameAt(bound + 1),
  };
  const moment = orReport(momentOf(clock, until.value, place), until.span, report);
  if (moment === undefined) return undefined;
  const print = (frame: number) => printFrame(clock.rate, frame);
  if (moment.frame < latest) {
    const other =
      moment.frame < begin.frame
        ? `the step begins (${print(begin.frame)})`
        : `the last of its beats and items comes (${print(latest)})`;
    const message = `the step ends at ${print(moment.frame)}, before ${other}; give a later end`;
    report(timeError('time-goes-back', until.span, message));
    return undefined;
  }
  if (length !== undefined && moment.frame > length.frameCount) {
    report(pastEnd(until.span, 'the step ends', moment.frame, clock, length));
    return undefined;
  }
  return moment;
}
