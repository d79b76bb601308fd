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

/** What a claim has to tell, counted. */
export interface ClaimContent {
  readonly hasGround: boolean;
  /** Sets and links. */
  readonly strokes: number;
  /** Whether anything stands between the argument and what follows from it: its ends, the lines from them. */
  readonly explains: boolean;
}

/** The first frames of a claim's parts. */
export interface ClaimPhases {
  readonly argument: Frame;
  /** Frames, not whole, from one set or link to the next. */
  readonly apart: number;
  readonly says: Frame;
  readonly reach: Frame;
  readonly follows: Frame;
}

/** At ease: a second to look at the ground, a second a set or link, three for what follows. */
const lead = { seconds: 1, part: 0.12 } as const;
const stroke = { seconds: 1 } as const;
const tail = { seconds: 3, part: 0.3, atEase: 0.4 } as const;

/**
 * A claim's time shared out. The ground has an eighth of it, a second at most; what follows has two fifths, or less, but
 * three tenths or three seconds at least, where a second for each set or link would else be wanting. A claim of three links
 * from 0 to 10 s: the links at 1, 2.67 and 4.33 s, what they say at 6, the lines at 6.5, the strikes at 7.5.
 */
export function claimPhases(
  pacing: Pacing,
  { from, until }: { readonly from: Frame; readonly until: Frame },
  { hasGround, strokes, explains }: ClaimContent,
): ClaimPhases {
  const all = until - from;
  const argument = hasGround ? Math.min(framesIn(pacing, lead.seconds), all * lead.part) : 0;
  const wished = argument + strokes * framesIn(pacing, stroke.seconds);
  const least = Math.min(framesIn(pacing, tail.seconds), all * tail.part);
  const told = Math.min(Math.max(wished, all * (1 - tail.atEase)), all - least);
  const after = (part: number) => frameAt(from + told + (all - told) * part);
  // With nothing to explain the argument runs on to what follows.
  const ends = explains ? told : told + (all - told) * 0.25;
  return {
    argument: frameAt(from + argument),
    apart: (ends - argument) / Math.max(1, strokes),
    says: after(0),
    reach: after(0.125),
    follows: after(0.375),
  };
}
