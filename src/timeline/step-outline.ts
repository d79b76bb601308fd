/**
 * The outline of one step: when it begins, and the times that were given within it.
 */

import type { Clock } from '../scene/anchor.ts';
import type { Span } from '../scene/diagnostic.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { CascadeItem, OnlyItem, PencilItem, Step } from '../scene/scene.ts';
import type { Moment } from './clock.ts';
import type { Frame } from './film.ts';
import type { StrokesOf } from './pace.ts';

/** When a step begins. */
export interface Begin {
  readonly seconds: Fraction;
  readonly frame: Frame;
  /** As its `at` gave it, if that is possible. */
  readonly given: Moment | undefined;
}

export interface StepOutline {
  readonly step: Step;
  readonly begin: Begin;
  /** By beat of `show`: the time it was given, if that is possible. */
  readonly beats: readonly (Moment | undefined)[];
  /** By item of `only`, `pencil`, `cascade`, in this order. */
  readonly items: readonly (Moment | undefined)[];
  readonly until: Moment | undefined;
}

/** What times are looked up on, and how long parts without a time take. */
export interface Timing {
  readonly clock: Clock;
  readonly strokesOf: StrokesOf;
}

/** Everything in `only`, `pencil` and `cascade`, in the order in which it is presented. */
export function itemsOf(step: Step): readonly (OnlyItem | PencilItem | CascadeItem)[] {
  return [...step.only, ...step.pencil, ...step.cascade];
}

/** The latest time that was given within a step, its `until` included. */
export function latestOf({ begin, beats, items, until }: StepOutline): Frame {
  return latestFrame(begin.frame, [...beats, ...items, until]);
}

/** A time that was written, and its frame. */
export interface Given {
  readonly span: Span;
  readonly frame: Frame;
}

/** The latest time that was written within a step, its `until` included; undefined if there is none. */
export function lastGiven({ step, beats, items, until }: StepOutline): Given | undefined {
  const written = [...(step.show ?? []), ...itemsOf(step)].map((part) => part.at);
  const moments = [...beats, ...items];
  const given = [...written, step.until].flatMap((time, index) => {
    const moment = index < moments.length ? moments[index] : until;
    return time === undefined || moment === undefined ? [] : [{ span: time.span, frame: moment.frame }];
  });
  return given.reduce<Given | undefined>(
    (last, next) => (last === undefined || next.frame > last.frame ? next : last),
    undefined,
  );
}

/** The latest of the moments, and not earlier than `from`. */
export function latestFrame(from: Frame, moments: readonly (Moment | undefined)[]): Frame {
  return moments.reduce<Frame>(
    (latest, moment) => (moment !== undefined && moment.frame > latest ? moment.frame : latest),
    from,
  );
}
