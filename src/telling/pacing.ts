/**
 * Seconds of a look's motion as whole frames of a film.
 */
import { type Fraction, toNumber } from '../scene/fraction.ts';
import type { LookMotion } from '../scene/look.ts';
import { type Frame, frameAt } from '../timeline/film.ts';

/** A film's rate with the motion of its look. */
export interface Pacing {
  readonly rate: Fraction;
  readonly motion: LookMotion;
}

/** This many seconds as whole frames, the nearest, at least one. */
export function framesIn(pacing: Pacing, seconds: number): number {
  return Math.max(1, Math.round(seconds * toNumber(pacing.rate)));
}

/**
 * The first frames of several things of one beat, one after another from `within.from` on: `motion.apart` seconds apart,
 * all of them begun within `motion.apartInAll`, and by the middle of the time that there is.
 */
export function oneAfterAnother(
  pacing: Pacing,
  within: { readonly from: Frame; readonly until: Frame },
  count: number,
): Frame[] {
  const { apart, apartInAll } = pacing.motion;
  const gaps = Math.max(1, count - 1);
  const usual = Math.min(apart, apartInAll / gaps) * toNumber(pacing.rate);
  return evenly(within.from, count, Math.min(usual, Math.max(0, within.until - within.from) / 2 / gaps));
}

/** `count` frames from `from` on, `apartFrames` (not whole) apart, each rounded for itself. */
export function evenly(from: Frame, count: number, apartFrames: number): Frame[] {
  return Array.from({ length: count }, (_, index) => frameAt(from + index * apartFrames));
}

/** The frame at this part, 0 to 1, of the way from one frame to another. */
export function between(from: Frame, until: Frame, part: number): Frame {
  return frameAt(from + (until - from) * part);
}
