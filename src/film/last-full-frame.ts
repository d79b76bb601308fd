/**
 * The frame that shows a step completely: for a still, or a slide.
 */
import { Bug } from '../grid/bug.ts';
import { secondsToCome } from '../marks/paintings.ts';
import type { Look } from '../scene/look.ts';
import { framesIn, type Pacing } from '../staging/pacing.ts';
import { type Film, type Frame, frameAt, type MarkShape, type Shown } from '../timeline/film.ts';

/**
 * The last frame of the step on which all its marks and digits are completely drawn, before any of them disappears. If
 * there is no such frame (a circle disappears before the last mark comes), the last of the frames that show the most of
 * what the step concludes (strikes, placements, digits) and, among these, the most of everything. For a step without
 * marks: its last frame.
 */
export function lastFullFrame(film: Film, step: string, look: Look): Frame {
  const headings = film.headings.filter((heading) => heading.step === step);
  const [first] = headings;
  if (first === undefined) throw new Bug(`the film has no step ${step}`);
  const [from, until] = [first.from, headings.at(-1)!.until];
  const pacing: Pacing = { rate: film.rate, motion: look.motion };
  const fade = framesIn(pacing, look.motion.fade);
  const last = until >= film.frameCount ? until - 1 : Math.max(from, until - 1 - fade);

  const stretches = thingsOf(film, step, { from, until }, pacing).map(({ shown, coming, concludes }) => {
    const standsFrom = Math.min(shown.from + coming - 1, shown.until - 1);
    const goes = shown.until < film.frameCount;
    return {
      concludes,
      standsFrom,
      standsUntil: goes ? Math.max(standsFrom, shown.until - 1 - fade) : shown.until - 1,
    };
  });
  const frames = [last, ...stretches.flatMap(({ standsFrom, standsUntil }) => [standsFrom, standsUntil])].filter(
    (frame) => frame >= from && frame <= last,
  );
  /** What is concluded counts for more than everything else together. */
  const weightAt = (frame: number) =>
    stretches
      .filter(({ standsFrom, standsUntil }) => standsFrom <= frame && frame <= standsUntil)
      .reduce((weight, { concludes }) => weight + (concludes ? stretches.length + 1 : 1), 0);
  let best = last;
  for (const frame of frames) {
    const [more, same] = [weightAt(frame) > weightAt(best), weightAt(frame) === weightAt(best)];
    if (more || (same && frame > best)) best = frame;
  }
  return frameAt(best);
}

/** The step's marks (except a stamp, which is always shown), and the digits, large and small, that come within it. */
function thingsOf(
  film: Film,
  step: string,
  within: Shown,
  pacing: Pacing,
): { readonly shown: Shown; readonly coming: number; readonly concludes: boolean }[] {
  const comes = ({ from }: Shown) => from > 0 && from >= within.from && from < within.until;
  const marks = film.marks
    .filter((mark) => mark.step === step && mark.shape.kind !== 'stamp')
    .map((mark) => ({
      shown: mark,
      coming: framesIn(pacing, secondsAtMost(film, mark.shape, pacing.motion)),
      concludes: mark.shape.kind === 'strike' || mark.shape.kind === 'place',
    }));
  const digits = film.written
    .filter(comes)
    .map((shown) => ({ shown, coming: framesIn(pacing, pacing.motion.place), concludes: true }));
  const small = film.candidates
    .filter(comes)
    .map((shown) => ({ shown, coming: framesIn(pacing, pacing.motion.fade), concludes: false }));
  return [...marks, ...digits, ...small];
}

/** A link's time depends on its length: the longest is used. */
function secondsAtMost(film: Film, shape: MarkShape, motion: Look['motion']): number {
  return shape.kind === 'link' ? motion.linkLongest : secondsToCome(shape, motion, film);
}
