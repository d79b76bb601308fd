/**
 * Seconds and frames. Frame n is shown from n/rate to (n+1)/rate seconds; all rounding to whole frames (nearest, halves
 * up) is in this one place. A mark's `at` is the first frame on which any of it is visible.
 */
import { compare, type Fraction, fraction, fractionOf, multiply, nearest } from '../scene/fraction.ts';
import { type Frame, frameAt } from './film.ts';

/** The whole frame nearest to a number of frames, halves up: 25.5 is frame 26. Below -1/2 there is none: a `Bug`. */
export function nearestFrame(frames: Fraction): Frame {
  return frameAt(Number(nearest(frames)));
}

/**
 * The frame nearest to a time, halves up. At 25 a second 1.02 s is halfway between frames 25 and 26 and becomes frame
 * 26; at 30000/1001 one second (29.97 frames) is frame 30, and one minute (1798.2) is frame 1798. A time before the
 * first frame has none: a `Bug`.
 */
export function frameAtTime(rate: Fraction, seconds: Fraction): Frame {
  return nearestFrame(multiply(seconds, rate));
}

/** How many whole frames a length has, nearest, halves up: 3:10 at 30000/1001 (5694.3) is 5694. May be below 0. */
export function wholeFrames(rate: Fraction, seconds: Fraction): number {
  return Number(nearest(multiply(seconds, rate)));
}

/** The same for seconds as a look gives them, read as the decimal that they print as; at least one frame. */
export function framesLasting(rate: Fraction, seconds: number): number {
  return Math.max(1, wholeFrames(rate, fractionOf(seconds)));
}

/** The time at which a frame is first shown, in seconds, exactly: frame 30 at 30000/1001 is 1001/1000 s. */
export function timeOfFrame(rate: Fraction, frame: number): Fraction {
  return fraction(BigInt(frame) * rate.denominator, rate.numerator);
}

/**
 * When a frame is first shown, in the notation of the language: `m:ss.ff` with hundredths of a second, hours only if
 * there are any. Frame 1800 at 30000/1001 is `1:00.06`. Read again and rounded, the text gives the same frame; above 60
 * frames a second that takes three decimals or more.
 */
export function printFrame(rate: Fraction, frame: number): string {
  let decimals = 2;
  // The text is off by at most half its last digit, and must be off by less than half a frame.
  while (compare(rate, fraction(10n ** BigInt(decimals))) >= 0) decimals++;
  return printSeconds(timeOfFrame(rate, frame), decimals);
}

/**
 * `1:02.50`: minutes, seconds and decimals (nearest, halves up); `1:00:02.50` from an hour on. `seconds` must not be
 * below 0.
 */
export function printSeconds(seconds: Fraction, decimals = 2): string {
  const unit = 10n ** BigInt(decimals);
  const parts = nearest(multiply(seconds, fraction(unit)));
  const whole = parts / unit;
  const [hours, minutes] = [whole / 3600n, (whole / 60n) % 60n];
  const rest = `${two(whole % 60n)}.${String(parts % unit).padStart(decimals, '0')}`;
  return hours > 0n ? `${hours}:${two(minutes)}:${rest}` : `${minutes}:${rest}`;
}

/** The greater of two times. */
export function laterOf(a: Fraction, b: Fraction): Fraction {
  return compare(a, b) >= 0 ? a : b;
}

/** The lesser of two times. */
export function earlierOf(a: Fraction, b: Fraction): Fraction {
  return compare(a, b) <= 0 ? a : b;
}

function two(number: bigint): string {
  return String(number).padStart(2, '0');
}
