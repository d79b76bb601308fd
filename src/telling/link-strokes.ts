/**
 * Links, and the thin lines to what a step removes.
 */
import type { CheckedLink } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { divide, type Fraction, fraction, multiply } from '../scene/fraction.ts';
import type { LinkRange } from '../scene/scene.ts';
import type { Frame } from '../timeline/film.ts';
import { earlierOf } from '../timeline/seconds.ts';
import { drawableLinks } from './links.ts';
import { evenly, exactFramesIn, oneAfterAnother } from './pacing.ts';
import { type BeatContext, type Stroke, spread } from './strokes.ts';
import type { ToldBeat } from './told-beat.ts';

/** At most so long from one link to the next, in seconds: about as long as a sentence about it. */
export const linkApartMost = 2.5;

/** The part of a beat's time in which all its links have begun. */
const ofItsTime = fraction(17, 20);

/** The links one after another over the time that the beat has; each goes when an end of it goes. */
export function links(context: BeatContext, named: 'all' | readonly LinkRange[], { from, room }: ToldBeat): Stroke[] {
  const { pacing, step } = context;
  const most = exactFramesIn(pacing, linkApartMost);
  const time = multiply(fraction(room - from), ofItsTime);
  const apart = (count: number): Fraction => earlierOf(most, divide(time, fraction(Math.max(1, count))));
  return arrows(context, drawableLinks(step, named), from, (count) => evenly(from, count, apart(count)));
}

/** What of the links has both ends on the board, on the frames that there are for so many. */
export function arrows(
  context: BeatContext,
  named: readonly CheckedLink[],
  from: Frame,
  framesFor: (count: number) => readonly Frame[],
): Stroke[] {
  const { board } = context;
  const standing = (candidates: readonly Candidate[]) =>
    candidates.filter((candidate) => board.showsUntil(candidate) > from);
  const shapes = named
    .map((link) => ({
      kind: 'link' as const,
      link: link.kind,
      from: standing(link.fromCandidates),
      to: standing(link.toCandidates),
    }))
    .filter((link) => link.from.length > 0 && link.to.length > 0);
  return spread(context, shapes, from, framesFor);
}

/** Lines to what is removed, one after another; each goes when an end of it goes. */
export function reaches(
  context: BeatContext,
  lines: readonly { readonly from: Candidate; readonly to: Candidate }[],
  { from, room }: ToldBeat,
): Stroke[] {
  const shapes = lines.map((line) => ({ kind: 'reach' as const, ...line }));
  return spread(context, shapes, from, (count) => oneAfterAnother(context.pacing, { from, until: room }, count));
}
