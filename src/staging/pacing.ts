/**
 * A look's motion as whole frames of a film, and the division of a span of frames. What falls between two frames stays
 * an exact fraction until `timeline/seconds.ts` rounds it.
 */
import { add, divide, type Fraction, fraction, fractionOf, multiply, subtract, zero } from '../scene/fraction.ts';
import type { LookMotion } from '../scene/look.ts';
import type { Frame } from '../timeline/film.ts';
import { earlierOf, framesLasting, laterOf, nearestFrame } from '../timeline/seconds.ts';

/** A film's rate with the motion of its look. */
export interface Pacing {
  readonly rate: Fraction;
  readonly motion: LookMotion;
}

/** The longest time from one link or ghost to the next, in seconds: about as long as a sentence about it. */
export const linkApartMost = 2.5;

/** This many seconds as whole frames, the nearest, at least one. */
export function framesIn(pacing: Pacing, seconds: number): number {
  return framesLasting(pacing.rate, seconds);
}

/** This many seconds as frames, not rounded. */
export function exactFramesIn({ rate }: Pacing, seconds: number): Fraction {
  return multiply(fractionOf(seconds), rate);
}

/**
 * The first frames of several things of one beat, one after another from `within.from` on: `motion.apart` seconds
 * apart, all begun within `motion.apartInAll`, and by the middle of the available time.
 */
export function oneAfterAnother(
  pacing: Pacing,
  within: { readonly from: Frame; readonly until: Frame },
  count: number,
): Frame[] {
  const { apart, apartInAll } = pacing.motion;
  const gaps = fraction(Math.max(1, count - 1));
  const usual = earlierOf(exactFramesIn(pacing, apart), divide(exactFramesIn(pacing, apartInAll), gaps));
  const room = fraction(Math.max(0, within.until - within.from), 2);
  return evenly(within.from, count, earlierOf(usual, divide(room, gaps)));
}

/** `count` frames from `from` on, `apart` frames (a fraction) apart, each rounded separately. */
export function evenly(from: Frame, count: number, apart: Fraction): Frame[] {
  return Array.from({ length: count }, (_, index) =>
    nearestFrame(add(fraction(from), multiply(fraction(index), apart))),
  );
}

/** The frame at this fraction, 0 to 1, of the way from one frame to another. */
export function between(from: Frame, until: Frame, part: Fraction): Frame {
  return nearestFrame(add(fraction(from), multiply(fraction(until - from), part)));
}

/** What a claim has to present, counted. */
export interface ClaimContent {
  readonly hasGround: boolean;
  /** Sets and links. */
  readonly strokes: number;
  /** Whether anything comes between the argument and what follows from it: its ends, the lines from them. */
  readonly explains: boolean;
}

/** The first frames of a claim's parts. */
export interface ClaimPhases {
  readonly argument: Frame;
  /** Frames (a fraction) from one set or link to the next. */
  readonly apart: Fraction;
  readonly says: Frame;
  readonly reach: Frame;
  readonly follows: Frame;
}

/** At a comfortable pace: a second to see the ground, a second per set or link, three for what follows. */
const lead = { seconds: 1, part: fraction(3, 25) } as const;
const stroke = { seconds: 1 } as const;
const tail = { seconds: 3, part: fraction(3, 10), atEase: fraction(2, 5) } as const;

/**
 * The division of a claim's time. The ground gets an eighth of it, at most a second; what follows gets two fifths, or
 * less (but at least three tenths or three seconds) if otherwise there would not be a second for each set or link. A
 * claim of three links from 0 to 10 s: the links at 1, 2.67 and 4.33 s, what they say at 6, the lines at 6.5, the
 * strikes at 7.5.
 */
export function claimPhases(
  pacing: Pacing,
  { from, until }: { readonly from: Frame; readonly until: Frame },
  { hasGround, strokes, explains }: ClaimContent,
): ClaimPhases {
  const all = fraction(until - from);
  const partOf = (part: Fraction) => multiply(all, part);
  const framesFor = (seconds: number) => fraction(framesIn(pacing, seconds));
  const argument = hasGround ? earlierOf(framesFor(lead.seconds), partOf(lead.part)) : zero;
  const wished = add(argument, multiply(fraction(strokes), framesFor(stroke.seconds)));
  const least = earlierOf(framesFor(tail.seconds), partOf(tail.part));
  const argued = earlierOf(laterOf(wished, subtract(all, partOf(tail.atEase))), subtract(all, least));
  const rest = subtract(all, argued);
  const at = (frames: Fraction) => nearestFrame(add(fraction(from), frames));
  const after = (part: Fraction) => at(add(argued, multiply(rest, part)));
  // With nothing to explain, the argument continues up to what follows.
  const ends = explains ? argued : add(argued, multiply(rest, fraction(1, 4)));
  return {
    argument: at(argument),
    apart: divide(subtract(ends, argument), fraction(Math.max(1, strokes))),
    says: after(zero),
    reach: after(fraction(1, 8)),
    follows: after(fraction(3, 8)),
  };
}
