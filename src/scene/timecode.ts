/**
 * Timecode labels and the frames that they count: SMPTE ST 12-1 for 24, 25 and 30 labels a second, ST 12-3 for more.
 *
 * A label names a frame, it does not measure time. At 30000/1001 frames a second a labelled second has thirty labels
 * and a real one 29.97 frames, so plain labels run behind the clock; drop-frame labels keep up by leaving out labels,
 * never frames: `00` and `01` (at 60000/1001 `00` to `03`) of each minute except every tenth. 00:00:59;29 is frame 1799
 * and the next one, 00:01:00;02, is frame 1800.
 */

import type { Timecode } from './anchor-absolute.ts';
import type { Code } from './codes.ts';
import { type Fraction, nearest } from './fraction.ts';
import { labelsSkipped, whyNoLabel } from './timecode-label.ts';

/**
 * Frames from the label 00:00:00:00, or why there is no such frame (in words for the user, with what would be right).
 */
export type LabelCount =
  | { readonly ok: true; readonly frames: number }
  | { readonly ok: false; readonly code: Code; readonly message: string };

/** How the labels of a day are counted at a rate. */
interface Counting {
  /** 30 at 30000/1001, 24 at 24000/1001, 25 at 25. */
  readonly perSecond: number;
  /** Labels left out at the start of a minute. */
  readonly skipped: number;
}

/**
 * The frame that a label names, counted from 00:00:00:00: at 30000/1001, 01:00:00;00 is 107892 and 01:00:00:00 is
 * 108000. Refused: drop-frame at a rate without it, a label that is skipped, and numbers that no label has.
 */
export function framesOfLabel(label: Timecode, rate: Fraction): LabelCount {
  const refused = whyNoLabel(label, rate);
  if (refused !== undefined) return { ok: false, ...refused };
  return { ok: true, frames: count(label, countingAt(rate, label.dropFrame)) };
}

/**
 * The label of the frame with that number from 00:00:00:00 on; the inverse of `framesOfLabel`. Starts again from zero
 * after a day (2,589,408 drop-frame frames at 30000/1001). `dropFrame` is taken as false at a rate without it.
 */
export function labelOfFrames(frames: number, rate: Fraction, options: { readonly dropFrame: boolean }): Timecode {
  const { perSecond, skipped } = countingAt(rate, options.dropFrame);
  const perTenMinutes = framesPerDay(rate, options) / 144;
  const perMinute = 60 * perSecond - skipped;
  const day = 144 * perTenMinutes;
  const ofDay = ((frames % day) + day) % day;
  const tens = Math.floor(ofDay / perTenMinutes);
  // The first minute of ten keeps all its labels; each of the other nine is shorter by the labels that it skips.
  const ofTen = ofDay % perTenMinutes;
  const minutesPast = ofTen < perMinute + skipped ? 0 : Math.floor((ofTen - skipped) / perMinute);
  const labels = ofDay + skipped * (9 * tens + minutesPast);
  const seconds = Math.floor(labels / perSecond);
  return {
    hours: Math.floor(seconds / 3600),
    minutes: Math.floor(seconds / 60) % 60,
    seconds: seconds % 60,
    frames: labels % perSecond,
    dropFrame: skipped > 0,
  };
}

/** Frames in 24 hours of labels: 2,589,408 in drop-frame at 30000/1001, 2,592,000 without. */
export function framesPerDay(rate: Fraction, options: { readonly dropFrame: boolean }): number {
  const { perSecond, skipped } = countingAt(rate, options.dropFrame);
  return 24 * 3600 * perSecond - skipped * 9 * 6 * 24;
}

function countingAt(rate: Fraction, dropFrame: boolean): Counting {
  return { perSecond: Math.max(1, Number(nearest(rate))), skipped: dropFrame ? (labelsSkipped(rate) ?? 0) : 0 };
}

function count(label: Timecode, { perSecond, skipped }: Counting): number {
  const minutes = 60 * label.hours + label.minutes;
  const labels = (60 * minutes + label.seconds) * perSecond + label.frames;
  return labels - skipped * (minutes - Math.floor(minutes / 10));
}
