/**
 * Times that were given within a step, looked up and held against what they follow.
 */

import type { Place as Anchor } from '../scene/anchors/anchor.ts';
import type { Time } from '../scene/anchors/anchors.ts';
import type { Diagnostic, Span } from '../scene/diagnostic.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { Located } from '../scene/scene.ts';
import { type Moment, momentOf } from './clock.ts';
import { type Frame, frameAt } from './film.ts';
import { printFrame } from './seconds.ts';
import type { OutlineOptions } from './step-outline.ts';
import { orReport, pastEnd, timeError } from './time-faults.ts';

/** Something of a step that may have a time. */
export interface Timed {
  readonly at: Located<Time> | undefined;
  readonly span: Span;
  /** For messages: `beat`, `item`. */
  readonly what: string;
}

/** The step that they lie in. */
export interface Within extends OutlineOptions {
  readonly diagnostics: Diagnostic[];
  readonly begin: Fraction;
  readonly from: Frame;
  /** The frame by which the step is known to be over. */
  readonly bound: Frame | undefined;
}

/** Times of beats or items, each not before the one before it; undefined where none was given or it cannot stand. */
export function momentsOf(timed: readonly Timed[], within: Within): readonly (Moment | undefined)[] {
  let notBefore = within.from;
  let beforeSpan: Span | undefined;
  return timed.map(({ at, what }) => {
    if (at === undefined) return undefined;
    const found = momentOf(within.clock, at.value, { base: within.begin, notBefore, until: within.bound });
    const moment = orReport(found, at.span, within.diagnostics);
    if (moment === undefined) return undefined;
    const refused = whyNotHere(moment, at.span, what, { notBefore, beforeSpan }, within);
    if (refused !== undefined) {
      within.diagnostics.push(refused);
      return undefined;
    }
    [notBefore, beforeSpan] = [moment.frame, at.span];
    return moment;
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
  if (length !== undefined && moment.frame >= length.frameCount)
    return pastEnd(span, `this ${what} is`, moment.frame, clock, length);
  if (bound === undefined || moment.frame <= bound || bound <= from) return undefined;
  const message = `this ${what} is at ${print(moment.frame)}, after its step has ended (${print(bound)}); give an earlier time, or let the step last longer`;
  return timeError('time-past-step', span, message);
}

/**
 * When a step ends by its `until`; undefined where that cannot stand. `anchor.notBefore`: the last time given within
 * it.
 */
export function endOf(
  until: Located<Time>,
  anchor: Anchor,
  { clock, length, from, diagnostics }: Within,
): Moment | undefined {
  // Words that end a step may be spoken on the very frame on which the next one begins.
  const found = momentOf(clock, until.value, {
    ...anchor,
    until: anchor.until === undefined ? undefined : frameAt(anchor.until + 1),
  });
  const moment = orReport(found, until.span, diagnostics);
  if (moment === undefined) return undefined;
  const print = (frame: number) => printFrame(clock.rate, frame);
  if (moment.frame < anchor.notBefore) {
    const other =
      moment.frame < from
        ? `the step begins (${print(from)})`
        : `the last of its beats and items comes (${print(anchor.notBefore)})`;
    diagnostics.push(
      timeError(
        'time-goes-back',
        until.span,
        `the step ends at ${print(moment.frame)}, before ${other}; give a later end`,
      ),
    );
    return undefined;
  }
  if (length !== undefined && moment.frame > length.frameCount) {
    diagnostics.push(pastEnd(until.span, 'the step ends', moment.frame, clock, length));
    return undefined;
  }
  return moment;
}
