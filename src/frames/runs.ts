/**
 * A film as runs of frames: still ones, one picture each, and those in which something moves. Computed from when things
 * come and go, without examining every frame.
 */
import type { Look } from '../scene/look.ts';
import { type Film, type Frame, frameAt } from '../timeline/film.ts';
import { changesOf, paceOfDigit, paceOfMark, paceOfWords } from './motion.ts';

/**
 * Frames `from` to `until`, `until` not included. `still`: all are the same picture. `moving`: each may differ from the
 * previous one.
 */
export interface Run {
  readonly from: Frame;
  readonly until: Frame;
  readonly kind: 'still' | 'moving';
}

/** The film's runs, in order and without gaps, from frame 0 to its end. */
export function runsOf(film: Film, look: Look): Run[] {
  const starts = [...startsOf(film, look)].sort((a, b) => a - b);
  const runs: Run[] = [];
  starts.forEach((from, index) => {
    const until = starts[index + 1] ?? film.frameCount;
    const last = runs.at(-1);
    if (until - from > 1) runs.push({ from: frameAt(from), until: frameAt(until), kind: 'still' });
    else if (last?.kind === 'moving') runs[runs.length - 1] = { ...last, until: frameAt(until) };
    else runs.push({ from: frameAt(from), until: frameAt(until), kind: 'moving' });
  });
  return runs;
}

/** Frame 0 and every frame that may differ from the previous one. */
function startsOf(film: Film, look: Look): Set<number> {
  const starts = new Set<number>(film.frameCount > 0 ? [0] : []);
  const add = (frames: readonly number[]) => {
    for (const frame of frames) if (frame >= 0 && frame < film.frameCount) starts.add(frame);
  };
  for (const words of [...film.headings, ...film.said]) add(changesOf(words, paceOfWords(film, look, words)));
  for (const digit of film.written) add(changesOf(digit, paceOfDigit(film, look, digit)));
  for (const small of film.candidates) add(changesOf(small, paceOfWords(film, look, small)));
  for (const mark of film.marks) add(changesOf(mark, paceOfMark(film, look, mark)));
  add(film.board.map((placement) => placement.from));
  return starts;
}
