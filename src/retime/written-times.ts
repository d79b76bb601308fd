/**
 * The absolute times of a scene as written in its text, and new times written in the same form.
 */

import type { Clock } from '../scene/anchor.ts';
import type { AbsoluteTime, Timecode } from '../scene/anchor-absolute.ts';
import { absolutePart, type DependentTime, isAbsolute, type Time } from '../scene/anchors.ts';
import type { Span } from '../scene/diagnostic.ts';
import { compare, type Fraction } from '../scene/fraction.ts';
import type { Located, Scene } from '../scene/scene.ts';
import { readFixedTime } from '../scene/time.ts';
import { framesOfLabel, labelOfFrames } from '../scene/timecode.ts';
import { printLabel } from '../scene/timecode-label.ts';
import { anywhere, clockOf, momentOf } from '../timeline/clock.ts';
import { frameAtTime, printSeconds } from '../timeline/seconds.ts';
import { itemsOf } from '../timeline/step-outline.ts';

/** A time that depends on nothing else. */
export interface WrittenTime {
  /** Of the time only, as UTF-16 offsets: without quotes, without the words before `or`. */
  readonly span: Span;
  readonly seconds: Fraction;
  /** Its step's id; undefined for times of `video` and `versions`. */
  readonly step: string | undefined;
  /** For messages: `beginning`, `end`, `beat`, `item`, `gone`, `length`, `board`. */
  readonly what: string;
}

/** A time that depends on the narration or on a step, and so is left unchanged. */
export interface StayingTime {
  readonly time: DependentTime;
  readonly span: Span;
  readonly step: string | undefined;
}

export interface TimesOfScene {
  /** In the order of the text. */
  readonly written: readonly WrittenTime[];
  readonly staying: readonly StayingTime[];
  /** Times that could not be found in the text in one piece (behind a YAML alias). */
  readonly hidden: readonly Span[];
}

/** All times of the scene except those of the footage, which are positions in a recording. */
export function timesOf(scene: Scene, text: string): TimesOfScene {
  const clock = clockOf(scene, undefined);
  const [written, staying, hidden]: [WrittenTime[], StayingTime[], Span[]] = [[], [], []];
  const seen = new Set<number>();
  const take = (located: Located<Time> | undefined, step: string | undefined, what: string) => {
    if (located === undefined || seen.has(located.span.start)) return;
    seen.add(located.span.start);
    const { value: time, span } = located;
    if (!isAbsolute(time)) staying.push({ time, span, step });
    const absolute = absolutePart(time);
    if (absolute === undefined) return;
    const place = placeOf(text, span, absolute, clock);
    if (place === undefined) hidden.push(span);
    else written.push({ ...place, step, what });
  };
  take(scene.video.length, undefined, 'length');
  for (const { board } of [scene.video, ...scene.versions]) for (const { at } of board) take(at, undefined, 'board');
  for (const step of scene.steps) {
    take(step.at, step.id, 'beginning');
    take(step.until, step.id, 'end');
    for (const { at, mark } of step.show ?? []) {
      take(at, step.id, 'beat');
      if (mark.kind === 'strike') take(mark.gone, step.id, 'gone');
    }
    for (const { at } of itemsOf(step)) take(at, step.id, 'item');
  }
  return { written: written.sort((a, b) => a.span.start - b.span.start), staying, hidden };
}

/** The last part of the text there that reads as a time, if it is this one. */
function placeOf(
  text: string,
  span: Span,
  time: AbsoluteTime,
  clock: Clock,
): Pick<WrittenTime, 'span' | 'seconds'> | undefined {
  const found = momentOf(clock, time, anywhere);
  const match = [...text.slice(span.start, span.end).matchAll(/\d[\d:;.]*(?: ?s\b)?/g)].at(-1);
  if (match === undefined || !found.ok) return undefined;
  const read = readFixedTime(match[0], clock.rate);
  if (!read.ok) return undefined;
  const again = momentOf(clock, read.time, anywhere);
  if (!again.ok || compare(again.moment.seconds, found.moment.seconds) !== 0) return undefined;
  const start = span.start + match.index;
  return { span: { start, end: start + match[0].length }, seconds: found.moment.seconds };
}

/**
 * A time in the form in which another was written: a timecode with its kind of label, minutes and seconds, or only
 * seconds, with or without their `s`; with as many decimals as needed to name the same frame, at least two.
 */
export function writtenLike(written: string, seconds: Fraction, scene: Scene): string {
  const { rate, timecode } = scene.video;
  const frame = frameAtTime(rate, seconds);
  const label = /^\d+:\d+:\d+[:;]\d+$/.test(written);
  if (label) return printLabel(labelAt(frame, written.includes(';'), scene, timecode?.value));
  let decimals = 2;
  while (decimals < 9 && frameAtTime(rate, rounded(seconds, decimals)) !== frame) decimals++;
  if (written.includes(':')) return printSeconds(seconds, decimals);
  const unit = / ?s$/.exec(written)?.[0] ?? '';
  return `${decimal(seconds, decimals)}${unit}`;
}

function labelAt(frame: number, dropFrame: boolean, { video }: Scene, first: Timecode | undefined): Timecode {
  const before = first === undefined ? undefined : framesOfLabel(first, video.rate);
  return labelOfFrames(frame + (before?.ok === true ? before.frames : 0), video.rate, { dropFrame });
}

function rounded({ numerator, denominator }: Fraction, decimals: number): Fraction {
  const unit = 10n ** BigInt(decimals);
  const parts = (2n * numerator * unit + denominator) / (2n * denominator);
  return { numerator: parts, denominator: unit };
}

function decimal(seconds: Fraction, decimals: number): string {
  const { numerator: parts } = rounded(seconds, decimals);
  const digits = String(parts).padStart(decimals + 1, '0');
  return `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}
