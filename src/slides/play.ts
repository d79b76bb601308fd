/**
 * A step's motion without its waits: what moves takes its time, still spans are cut short, since on a slide the teacher
 * does the talking.
 */
import type { Run } from '../frames/runs.ts';
import { type Film, type Frame, frameAt } from '../timeline/film.ts';

/** The longest still span, in seconds. */
const longestStill = 0.6;

export interface Play {
  readonly seconds: number;
  /** The frame to show this many seconds after the beginning. */
  frameAt(seconds: number): Frame;
}

/** The motion from one frame to another, both shown. `runs` are the film's. */
export function playOf(
  { rate }: Film,
  runs: readonly Run[],
  { from, until }: { readonly from: Frame; readonly until: Frame },
): Play {
  const perSecond = Number(rate.numerator) / Number(rate.denominator);
  let end = 0;
  const parts = runs.flatMap((run) => {
    const first = Math.max(run.from, from);
    const count = Math.min(run.until, until + 1) - first;
    if (count <= 0) return [];
    const begin = end;
    end += run.kind === 'still' ? Math.min(count / perSecond, longestStill) : count / perSecond;
    return [{ run, first, begin, end }];
  });
  return {
    seconds: end,
    frameAt(seconds) {
      const part = parts.find((each) => seconds < each.end);
      if (part === undefined) return until;
      if (part.run.kind === 'still') return frameAt(part.first);
      return frameAt(Math.min(until, part.first + Math.floor((seconds - part.begin) * perSecond)));
    },
  };
}
