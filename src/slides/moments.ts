/**
 * Which frames of the film become slides.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { lastFullFrame } from '../film/last-full-frame.ts';
import { has } from '../grid/candidates.ts';
import { cellOf, digitOf, type Grid } from '../grid/grid.ts';
import { answers } from '../marks/marks.ts';
import type { Look } from '../scene/look.ts';
import type { Group } from '../scene/scene.ts';
import { defaultBeats } from '../staging/default-beats.ts';
import { beatsOfShow } from '../staging/staged-beat.ts';
import { type Film, type Frame, frameAt, type Mark } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';

/** A step with its frames. */
export interface TimedStep {
  readonly checked: CheckedStep;
  readonly times: ScheduledStep;
}

/** The frame that shows the step completely. A step that is on no frame is shown as the board at that time. */
export function wholeFrame(film: Film, look: Look, { checked, times }: TimedStep): Frame {
  const { id } = checked.step;
  if (film.headings.some((heading) => heading.step === id)) return lastFullFrame(film, id, look);
  return frameAt(Math.min(times.from, film.frameCount - 1));
}

/**
 * One frame for each beat of the step, in order; beats that begin together count as one. It is the last frame before
 * the next beat, or before anything that has come since this beat disappears (ghosts, a strike); for the last beat, the
 * step's complete frame.
 */
export function buildFrames(film: Film, look: Look, groups: readonly Group[], timed: TimedStep): Frame[] {
  const { checked, times } = timed;
  const staging = { grid: film.grid, pacing: { rate: film.rate, motion: look.motion }, groups, draw: film.draw };
  const beats =
    checked.step.show === undefined ? defaultBeats(staging, checked, times) : beatsOfShow(checked.step, times, groups);
  const items = [...times.only, ...times.pencil];
  const starts = [...new Set([...beats.map(({ from }) => from), ...items])]
    .filter((from) => from >= times.from && from < times.until)
    .sort((a, b) => a - b);
  const whole = wholeFrame(film, look, timed);
  const ends = starts
    .slice(1)
    .map((next, index) => endOfBeat(film, look, checked.step.id, { from: starts[index]!, next }));
  const last = starts.at(-1) ?? times.from;
  // If the most complete frame comes before the last beat, the last beat is shown as at the step's end.
  const final = whole >= last ? whole : frameAt(Math.max(last, times.until - 1));
  return [...new Set([...ends.filter((frame) => frame < final), final])].sort((a, b) => a - b);
}

function endOfBeat(film: Film, look: Look, step: string, { from, next }: { from: number; next: number }): Frame {
  const come = film.marks.filter((mark) => mark.step === step && mark.from >= from && mark.from < next);
  const going = come.filter(({ until }) => until <= next).map(({ until }) => until - fadeOf(film, look));
  const last = Math.max(from, ...come.map((mark) => mark.from));
  return frameAt(Math.max(last, Math.min(next - 1, ...going)));
}

/** A question, and the last frame before anything comes after it. */
export interface Asked {
  readonly text: string;
  readonly frame: Frame;
}

/** The questions of a step, in order. */
export function questionsOf(film: Film, step: string): Asked[] {
  return film.marks.flatMap(({ step: by, shape, from, until }): Asked[] => {
    if (by !== step || shape.kind !== 'ask') return [];
    const next = Math.min(...comings(film).filter((frame) => frame > from), until, film.frameCount);
    return [{ text: shape.text, frame: frameAt(Math.max(from, next - 1)) }];
  });
}

function comings(film: Film): number[] {
  const things = [...film.marks, ...film.written, ...film.candidates, ...film.headings];
  return things.map(({ from }) => from);
}

/** Whether a mark shows what its step concludes, or plays out its proof; `step` is the mark's own. */
export function showsConclusion(grid: Grid, { step, conclusions }: CheckedStep, { shape }: Mark): boolean {
  return answers(
    shape,
    (candidate) =>
      conclusions.some(({ conclusion }) => conclusion.kind === 'one-of' && has(conclusion.candidates, candidate)) ||
      step.only.some(({ places }) =>
        places.some(
          ({ digit, cells }) => digitOf(grid, candidate) === digit && cells.includes(cellOf(grid, candidate)),
        ),
      ),
  );
}

/**
 * The last frame of the step on which nothing of what it concludes is visible; its first frame, if that already shows
 * some.
 */
export function openFrame(film: Film, look: Look, timed: TimedStep): Frame {
  const { from, until } = timed.times;
  const { id } = timed.checked.step;
  const isWithin = (frame: number) => frame >= from && frame < until;
  const shown = [
    ...film.marks
      .filter((mark) => mark.step === id && showsConclusion(film.grid, timed.checked, mark))
      .map((mark) => mark.from),
    ...film.written.map((digit) => digit.from).filter(isWithin),
    // Small digits disappear with a conclusion, and fade before that.
    ...film.candidates.map((small) => small.until - fadeOf(film, look)).filter((frame) => isWithin(frame)),
    ...film.headings
      .filter((heading) => heading.step === id && heading.conclusions !== undefined)
      .map((heading) => heading.from),
  ];
  const first = Math.min(...shown, wholeFrame(film, look, timed) + 1);
  return frameAt(Math.max(from, first - 1));
}

function fadeOf(film: Film, look: Look): number {
  return Math.ceil((look.motion.fade * Number(film.rate.numerator)) / Number(film.rate.denominator)) + 1;
}
