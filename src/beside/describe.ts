/**
 * What is shown, in words: a track of descriptions for viewers who cannot see. It is made from the marks of the film
 * and the verdicts behind them, so it says nothing that is not drawn, and claims nothing that is not proved; and it
 * describes a thing once it is on screen, never before.
 */

import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { candidateAt } from '../grid/grid.ts';
import { asShown } from '../grid/notation/shown.ts';
import { inSeries, spokenCandidates } from '../grid/notation/spoken.ts';
import { shapes } from '../marks/marks.ts';
import { oneLine } from '../marks/words.ts';
import type { Film, Mark, MarkShape, Shown } from '../timeline/film.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { timeOfFrame } from '../timeline/seconds.ts';
import type { TextCue } from './cue.ts';
import { type Described, inWords } from './describe-marks.ts';
import { milliseconds } from './spoken.ts';

/** Events within this many milliseconds are described together, once the last of them has appeared. */
const together = 4000;

/** Cues that never overlap, each a single line of any length; a step begins with one of its own. */
export function describeFilm(film: Film, checked: CheckedScene, schedule: Schedule): TextCue[] {
  const at = (frame: number) => milliseconds(timeOfFrame(film.rate, frame));
  const described = checked.steps.flatMap((step, index) => {
    const times = schedule.steps[index];
    if (times === undefined || times.until <= times.from) return [];
    const sets = [headingOf(film, step, times.from), ...gathered(eventsOf(film, step, times), at)];
    return sets
      .filter((set) => set.length > 0)
      .map((set, place) => ({
        name: place === 0 ? `${step.step.id}-shown` : `${step.step.id}-shown-${place + 1}`,
        from: at(set.at(-1)!.frame),
        until: at(times.until),
        lines: [inWords(film.grid, set, film.draw === 'overlay')],
      }));
  });
  const cues: TextCue[] = [];
  for (const [index, { name, from, until, lines }] of described.entries()) {
    const next = described[index + 1]?.from ?? at(film.frameCount);
    const to = Math.min(next, Math.max(until, from + 1), at(film.frameCount));
    if (to > from) cues.push({ name, from, to, lines });
    else if (described[index + 1] !== undefined) {
      // On the same frame as the next: they are described together.
      described[index + 1] = {
        ...described[index + 1]!,
        name,
        lines: [[...lines, ...described[index + 1]!.lines].join(' ')],
      };
    }
  }
  return cues;
}

/** The step's place and name, and what is wrong with it. */
function headingOf(film: Film, { step, sound, message, verdict }: CheckedStep, frame: number): Described[] {
  const heading = film.headings.find((each) => each.step === step.id);
  if (heading === undefined) return [];
  const { number, count, title, argument, isFalseStep } = heading;
  const named =
    title === undefined || argument === undefined
      ? (title ?? argument)
      : `${title.replace(/[.]\s*$/, '')} (${argument})`;
  const said = `step ${number} of ${count}${named === undefined ? '' : `: ${oneLine(named)}`}`;
  const why = message === '' ? '' : `: ${oneLine(asShown(message)).replace(/\.$/, '')}`;
  const lacks = verdict === 'unproved' || verdict === 'false' ? 'proved' : 'sound';
  const text =
    sound && isFalseStep
      ? `${said.replace(/[.]$/, '')}. This argument does not hold, and is shown to fail`
      : sound
        ? said
        : `${said.replace(/[.]$/, '')}. This step is not ${lacks}${why}`;
  return [{ frame, what: { kind: 'words', text }, colour: undefined, sound }];
}

/** Marks, digits and small digits that appear within the step, in order. */
function eventsOf(film: Film, step: CheckedStep, { from, until }: Shown): Described[] {
  const comes = (shown: Shown) => shown.until > shown.from && shown.from >= from && shown.from < until;
  // A digit is written only if it is proved.
  const plain = { colour: undefined, sound: true };
  const marks = film.marks
    .filter((mark) => mark.step === step.step.id && comes(mark) && shapes[mark.shape.kind].words.isNews)
    .filter((mark) => film.draw === 'overlay' || !isWritten(film, mark))
    .map(({ from: frame, shape, group }): Described => {
      const sound = step.sound || (isConclusion(shape) && isProved(film, step, shape));
      return { frame, what: shape, colour: group?.colour, sound };
    });
  const digits = film.written
    .filter(comes)
    .map(({ cell, digit, from: frame }): Described => ({ ...plain, frame, what: { kind: 'place', cell, digit } }));
  return [...marks, ...digits, ...smallDigits(film, comes, step.sound), ...eithers(film, step)].sort(
    (a, b) => a.frame - b.frame,
  );
}

type ConclusionShape = Extract<MarkShape, { kind: 'strike' | 'place' }>;

function isConclusion(shape: MarkShape): shape is ConclusionShape {
  return shape.kind === 'strike' || shape.kind === 'place';
}

/** Whether exactly this conclusion is proved, whatever else is wrong with its step. */
function isProved({ grid }: Film, { conclusions }: CheckedStep, shape: ConclusionShape): boolean {
  const candidate = shape.kind === 'strike' ? shape.candidate : candidateAt(grid, shape.cell, shape.digit);
  return conclusions.some(({ conclusion, verdict }) => {
    if (verdict !== 'proved') return false;
    if (conclusion.kind === 'impossible') return shape.kind === 'strike' && conclusion.candidate === candidate;
    const isPlacement = countOf(conclusion.candidates) === 1;
    return shape.kind === 'place' && isPlacement && membersOf(conclusion.candidates)[0] === candidate;
  });
}

/** A placement whose digit is written is described once. */
function isWritten(film: Film, { shape }: Mark): boolean {
  return shape.kind === 'place' && film.written.some(({ cell, digit }) => cell === shape.cell && digit === shape.digit);
}

/** Small digits written down during the video; those on screen from its first frame are not news. */
function smallDigits(film: Film, comes: (shown: Shown) => boolean, sound: boolean): Described[] {
  const byFrame = new Map<number, Candidate[]>();
  for (const { from, until, candidate } of film.candidates) {
    if (from > 0 && comes({ from, until })) byFrame.set(from, [...(byFrame.get(from) ?? []), candidate]);
  }
  return [...byFrame].map(([frame, candidates]) => {
    const text = `written small: ${spokenCandidates(film.grid, candidates)}`;
    return { frame, what: { kind: 'words', text }, colour: undefined, sound };
  });
}

/** An either/or that is proved is shown in the step's heading. */
function eithers(film: Film, { step, conclusions, sound }: CheckedStep): Described[] {
  const heading = film.headings.find((each) => each.step === step.id && each.conclusions !== undefined);
  if (heading === undefined) return [];
  return conclusions.flatMap(({ conclusion, verdict }): Described[] => {
    if (verdict !== 'proved' || conclusion.kind !== 'one-of' || countOf(conclusion.candidates) < 2) return [];
    const members = membersOf(conclusion.candidates).map((each) => spokenCandidates(film.grid, [each]));
    const text = `at least one of these is true: ${inSeries(members)}`;
    return [{ frame: heading.from, what: { kind: 'words', text }, colour: undefined, sound }];
  });
}

/** Events close together in time. */
function gathered(events: readonly Described[], at: (frame: number) => number): Described[][] {
  const sets: Described[][] = [];
  for (const event of events) {
    const first = sets.at(-1)?.[0];
    if (first !== undefined && at(event.frame) - at(first.frame) <= together) sets.at(-1)!.push(event);
    else sets.push([event]);
  }
  return sets;
}
