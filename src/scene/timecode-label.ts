/**
 * Labels of SMPTE ST 12-1 as written, and which of them exist at a rate.
 */

import type { Timecode } from './anchor-absolute.ts';
import type { Code } from './codes.ts';
import { compare, type Fraction, fraction, nearest } from './fraction.ts';

/** `01:00:02:12`, or `01:00:02;12` for drop-frame; undefined for any other text. The numbers are not checked. */
export function timecodeOf(text: string): Timecode | undefined {
  const match = /^(\d\d):(\d\d):(\d\d)([:;])(\d\d)$/.exec(text);
  if (match === null) return undefined;
  const [hours, minutes, seconds, frames] = [match[1], match[2], match[3], match[5]].map(Number);
  return { hours: hours!, minutes: minutes!, seconds: seconds!, frames: frames!, dropFrame: match[4] === ';' };
}

/** Why there is no such label at this rate, and what exists instead; undefined if it exists. */
export function whyNoLabel(
  label: Timecode,
  rate: Fraction,
): { readonly code: Code; readonly message: string } | undefined {
  const written = printLabel(label);
  const perSecond = Number(nearest(rate));
  if (label.hours > 23) return { code: 'out-of-range', message: `${written} has no such hour; hours go from 00 to 23` };
  if (label.minutes > 59)
    return { code: 'out-of-range', message: `${written} has no such minute; minutes go from 00 to 59` };
  if (label.seconds > 59)
    return { code: 'out-of-range', message: `${written} has no such second; seconds go from 00 to 59` };
  if (label.frames >= perSecond) {
    const message = `${written} has no such frame; at ${printRate(rate)} frames a second they go from 00 to ${perSecond - 1}`;
    return { code: 'out-of-range', message };
  }
  if (!label.dropFrame) return undefined;
  const skipped = labelsSkipped(rate);
  if (skipped === undefined) {
    const plain = printLabel({ ...label, dropFrame: false });
    const message = `${written} is drop-frame, which only the rates 30000/1001 and 60000/1001 have; at ${printRate(rate)} write ${plain}`;
    return { code: 'drop-frame', message };
  }
  if (label.seconds !== 0 || label.frames >= skipped || label.minutes % 10 === 0) return undefined;
  const first = printLabel({ ...label, frames: skipped });
  const message = `${written} is skipped in drop-frame counting; the first label of this minute is ${first}`;
  return { code: 'dropped-label', message };
}

/**
 * Labels left out at the start of each minute except every tenth: 2 at 30000/1001, 4 at 60000/1001; undefined at other
 * rates.
 */
export function labelsSkipped(rate: Fraction): 2 | 4 | undefined {
  if (compare(rate, fraction(30_000, 1001)) === 0) return 2;
  return compare(rate, fraction(60_000, 1001)) === 0 ? 4 : undefined;
}

/** `01:00:02:12`, with `;` before the frames in drop-frame. */
export function printLabel({ hours, minutes, seconds, frames, dropFrame }: Timecode): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${two(hours)}:${two(minutes)}:${two(seconds)}${dropFrame ? ';' : ':'}${two(frames)}`;
}

/** `25`, or `30000/1001` if the rate is not a whole number. */
export function printRate(rate: Fraction): string {
  return rate.denominator === 1n ? `${rate.numerator}` : `${rate.numerator}/${rate.denominator}`;
}
