/**
 * Times that depend on nothing else: seconds (`12.5`, `1:02.5`) and timecodes (`01:00:02:12`).
 */

import { type Anchor, type Clock, fault, type Resolved, resolved, unresolved } from './anchor.ts';
import { add, type Fraction, fraction, fractionFromDecimal, multiply } from './fraction.ts';
import { framesOfLabel, framesPerDay } from './timecode.ts';
import { printLabel, timecodeOf, whyNoLabel } from './timecode-label.ts';

export interface SecondsTime {
  readonly kind: 'seconds';
  readonly seconds: Fraction;
}

export interface TimecodeTime {
  readonly kind: 'timecode';
  readonly timecode: Timecode;
}

export type AbsoluteTime = SecondsTime | TimecodeTime;

/** A label of SMPTE ST 12-1, not yet counted against a rate. */
export interface Timecode {
  readonly hours: number;
  readonly minutes: number;
  readonly seconds: number;
  readonly frames: number;
  /** Written with `;` before the frames. */
  readonly dropFrame: boolean;
}

export const secondsAnchor: Anchor<SecondsTime> = {
  examples: ['12.5', '1:02', '1:02.5', '1:00:02.5'],
  samples: ['12.5', '1:02'],
  word: undefined,
  dependsOn: [],
  read(text) {
    const seconds = secondsOf(text);
    return seconds === undefined ? undefined : { ok: true, time: { kind: 'seconds', seconds } };
  },
  resolve: ({ seconds }) => resolved(seconds),
  absolutePart: (time) => time,
  whyNowhere: () => undefined,
};

export const timecodeAnchor: Anchor<TimecodeTime> = {
  examples: ['01:00:02:12'],
  samples: ['01:00:02:12'],
  word: undefined,
  dependsOn: [],
  read(text, { rate }) {
    const timecode = timecodeOf(text);
    if (timecode === undefined) return undefined;
    const refused = rate === undefined ? undefined : whyNoLabel(timecode, rate);
    if (refused !== undefined) return fault(refused.code, 0, text.length, refused.message);
    return { ok: true, time: { kind: 'timecode', timecode } };
  },
  resolve: ({ timecode }, clock) => resolveLabel(timecode, clock),
  absolutePart: (time) => time,
  whyNowhere: () => undefined,
};

/**
 * A timecode counts from the label of the first frame: with `01:00:00:00` there, `01:00:02:12` at 25 is frame 62. A
 * label more than twelve hours below the first one is after midnight.
 */
function resolveLabel(timecode: Timecode, clock: Clock): Resolved {
  const first =
    clock.firstLabel === undefined ? { ok: true as const, frames: 0 } : framesOfLabel(clock.firstLabel, clock.rate);
  const label = framesOfLabel(timecode, clock.rate);
  if (!label.ok) return unresolved(label.code, label.message);
  // A fault of the first frame's label has been reported there.
  if (!first.ok) return { ok: false, fault: undefined };
  const day = framesPerDay(clock.rate, timecode);
  const ahead = label.frames - first.frames;
  const frames = 2 * ahead < -day ? ahead + day : ahead;
  if (frames >= 0 || clock.firstLabel === undefined) return resolved(clock.timeOf(frames));
  const message = `${printLabel(timecode)} is before the video's first frame, which is labelled ${printLabel(clock.firstLabel)}; timecodes count from there`;
  return unresolved('time-before-start', message);
}

/** `12.5`, `12.5s`, `1:02`, `1:02.5`, `1:00:02.5`: exact seconds. */
export function secondsOf(text: string): Fraction | undefined {
  const plain = fractionFromDecimal(text.replace(/ ?s$/, ''));
  if (plain !== undefined) return plain;
  const match = /^(?:(\d+):)?(\d+):(\d\d(?:\.\d+)?)$/.exec(text);
  if (match === null) return undefined;
  const [hours, minutes] = [BigInt(match[1] ?? 0), BigInt(match[2]!)];
  const seconds = fractionFromDecimal(match[3]!)!;
  if (Number(match[3]) >= 60 || (match[1] !== undefined && (minutes > 59n || match[2]!.length !== 2))) return undefined;
  return add(multiply(fraction(hours * 60n + minutes), fraction(60n)), seconds);
}
