/**
 * A deck: what each slide says and which picture it shows. Plain data, the same for every kind of file.
 */

import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { digestOf } from '../frames/drawing.ts';
import { Bug } from '../grid/bug.ts';
import { asShown } from '../grid/notation/shown.ts';
import type { Drawing } from '../picture/ink.ts';
import type { Look } from '../scene/look.ts';
import { stampText } from '../staging/stamp.ts';
import type { Film, Frame, Mark, MarkGroup } from '../timeline/film.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { falseStepTexts, provedTexts, questionOf } from './conclusions.ts';
import { type PictureInWords, pictureInWords } from './in-words.ts';
import { buildFrames, openFrame, questionsOf, showsConclusion, type TimedStep, wholeFrame } from './moments.ts';
import { type SlideFilms, slideFilms, standingAt } from './picture.ts';

export interface DeckOptions {
  /** One slide per beat instead of one per step. */
  readonly builds: boolean;
  /** Questions on the slides, answers on separate pages. */
  readonly exercise: boolean;
}

export interface Deck {
  readonly title: string | undefined;
  /** The setter's name. */
  readonly credit: string | undefined;
  readonly look: Look;
  /** The film of the pictures; frames are those of the video. */
  readonly film: Film;
  /** The ids of the steps that are not sound. */
  readonly unsound: ReadonlySet<string>;
  readonly slides: readonly Slide[];
  /** For an exercise: the answers for the last pages. */
  readonly answers: readonly Answer[];
}

/** One side of a flash card: a question with the picture when it is asked, or the answer. */
export interface Slide {
  /**
   * Unique in the deck: the step's id and, after a full stop (which no step id contains), which of its slides it is.
   */
  readonly id: string;
  readonly step: string;
  /** The step's number, from 1, and the number of steps. */
  readonly number: number;
  readonly count: number;
  /** Never empty: the step's title, otherwise its argument, otherwise its number. */
  readonly heading: string;
  /** The argument's name; undefined if it is the heading. */
  readonly argument: string | undefined;
  /** In notation, one each; empty on a question. */
  readonly conclusions: readonly string[];
  readonly question: string | undefined;
  readonly notes: readonly Note[];
  /** The spoken sentence. */
  readonly says: string | undefined;
  /** Further remarks: `Assumes that the puzzle has one solution.` */
  readonly remark: string | undefined;
  /** Why the step is not proved, on a stamped slide. */
  readonly stamp: string | undefined;
  readonly frame: Frame;
  /** The frame from which motion leads to this picture. */
  readonly from: Frame;
  /** Whether strikes, placements and ghosts are left out of the picture. */
  readonly isOpen: boolean;
  /** The step as it was checked. */
  readonly checked: CheckedStep;
}

export interface Note {
  readonly text: string;
  readonly group: MarkGroup | undefined;
}

export interface Answer {
  readonly number: number;
  readonly heading: string;
  readonly argument: string | undefined;
  /** In notation, or the sentence that says why nothing follows. */
  readonly texts: readonly string[];
  readonly says: string | undefined;
}

/** The deck of a checked scene. It also draws an unsound scene, stamped: the caller decides whether that is allowed. */
export function deckOf(checked: CheckedScene, schedule: Schedule, look: Look, options: DeckOptions): Deck {
  const { scene } = checked;
  const films = slideFilms(checked, schedule, look);
  const steps = checked.steps.map((step, index): TimedStep => {
    const times = schedule.steps[index];
    if (times?.id !== step.step.id) throw new Bug(`the schedule has no times for step ${step.step.id}`);
    return { checked: step, times };
  });
  const making: Making = { films, look, options, checked };
  return {
    title: scene.title,
    credit: scene.puzzle.setter,
    look,
    film: films.picture,
    unsound: new Set(checked.steps.filter(({ sound }) => !sound).map(({ step }) => step.id)),
    slides: steps.flatMap((timed, index) => slidesOf(making, timed, { number: index + 1, count: steps.length })),
    answers: options.exercise ? steps.flatMap((timed, index) => answerOf(making, timed, index + 1)) : [],
  };
}

/** What is on the slide's picture. */
export function drawingOf({ film, look }: Deck, { frame, from, isOpen, step, checked }: Slide): Drawing {
  const isHidden = (mark: Mark) => isOpen && mark.step === step && showsConclusion(film.grid, checked, mark);
  const drawing = standingAt(film, look, frame, isHidden);
  if (!isOpen) return drawing;
  // A step may write its digit on its very first frame, so that none of its frames is without it.
  return { ...drawing, written: drawing.written.filter(({ index }) => (film.written[index]?.from ?? 0) < from) };
}

/** The slide's picture in words, for anyone who cannot see it. */
export function inWordsOf(deck: Deck, slide: Slide): PictureInWords {
  return pictureInWords(deck.film, drawingOf(deck, slide), (step) => !deck.unsound.has(step));
}

interface Making {
  readonly films: SlideFilms;
  readonly look: Look;
  readonly options: DeckOptions;
  readonly checked: CheckedScene;
}

interface Place {
  readonly number: number;
  readonly count: number;
}

function slidesOf(making: Making, timed: TimedStep, place: Place): Slide[] {
  const { films, look, options, checked } = making;
  const { shown, picture } = films;
  const { id } = timed.checked.step;
  const asked = questionsOf(shown, id);
  const own = options.exercise ? questionOf(shown.grid, timed.checked) : undefined;
  if (own !== undefined) {
    const open = openFrame(shown, look, timed);
    const questions = asked.length > 0 ? asked.map(({ text }) => text) : [own];
    return questions.map((question, index) => ({
      ...frontOf(making, timed, place, { text: question, frame: open }, index),
      isOpen: true,
    }));
  }
  const { groups } = checked.scene;
  const frames = options.builds ? buildFrames(shown, look, groups, timed) : [wholeFrame(shown, look, timed)];
  const backs = distinct(picture, look, frames).map((frame, index, all) => {
    const isLast = index === all.length - 1;
    return slideAt(making, timed, place, { frame, id: all.length === 1 ? id : `${id}.${index + 1}`, isLast });
  });
  const fronts = asked.map((question, index) => frontOf(making, timed, place, question, index));
  const both = [...fronts, ...backs].sort((a, b) => a.frame - b.frame || (a.question === undefined ? 1 : -1));
  return both.map((slide, index) => ({ ...slide, from: both[index - 1]?.frame ?? timed.times.from }));
}

/** Frames whose pictures differ from that of the previous frame, and the last one. */
function distinct(film: Film, look: Look, frames: readonly Frame[]): Frame[] {
  let before: string | undefined;
  return frames.filter((frame, index) => {
    const digest = digestOf(standingAt(film, look, frame));
    const isNew = digest !== before || index === frames.length - 1;
    before = digest;
    return isNew;
  });
}

function frontOf(
  making: Making,
  timed: TimedStep,
  place: Place,
  { text, frame }: { readonly text: string; readonly frame: Frame },
  index: number,
): Slide {
  const id = `${timed.checked.step.id}.question${index === 0 ? '' : `.${index + 1}`}`;
  const slide = slideAt(making, timed, place, { frame, id, isLast: false });
  return { ...slide, conclusions: [], question: text, says: undefined };
}

function slideAt(
  { films, checked }: Making,
  { checked: step, times }: TimedStep,
  place: Place,
  { frame, id, isLast }: { readonly frame: Frame; readonly id: string; readonly isLast: boolean },
): Slide {
  const { shown } = films;
  const heading = shown.headings.findLast(
    (each) => each.step === step.step.id && each.from <= frame && frame < each.until,
  );
  const concludes = isLast || heading?.conclusions !== undefined;
  const notes = shown.marks.flatMap(({ shape, group, from, until }): Note[] =>
    shape.kind === 'note' && from <= frame && frame < until ? [{ text: shape.text, group }] : [],
  );
  return {
    id,
    step: step.step.id,
    ...place,
    ...namesOf(step, place.number),
    conclusions: concludes ? shownConclusions(shown, step) : [],
    question: undefined,
    notes,
    says: step.step.say?.value,
    remark: remarkOf(step, checked),
    stamp: stampText(step),
    frame,
    from: times.from,
    isOpen: false,
    checked: step,
  };
}

function namesOf({ step }: CheckedStep, number: number): Pick<Slide, 'heading' | 'argument'> {
  const argument = step.called ?? step.because?.written;
  if (step.title !== undefined) return { heading: step.title, argument };
  return { heading: argument === undefined ? `Step ${number}` : capitalised(argument), argument: undefined };
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Conclusions longer than this, in characters, are counted rather than listed. */
const listLength = 90;

function shownConclusions({ grid }: Film, step: CheckedStep): readonly string[] {
  if (step.step.fails) return step.sound ? falseStepTexts(grid, step).map((text) => `${text} does not follow`) : [];
  const texts = provedTexts(grid, step);
  if (texts.join(' ').length <= listLength) return texts;
  const placed = texts.filter((text) => /^r\d+c\d+=\d+$/.test(text)).length;
  const rest = texts.filter((text) => !/^r\d+c\d+=\d+$/.test(text));
  const counted = placed === 0 ? [] : [placed === 1 ? '1 digit' : `${placed} digits`];
  return placed > 3 ? [...counted, ...rest] : texts;
}

function remarkOf(
  { assumesOneSolution, inheritsOneSolution }: CheckedStep,
  { solutions }: CheckedScene,
): string | undefined {
  if (assumesOneSolution) return 'Assumes that the puzzle has one solution.';
  if (inheritsOneSolution && solutions === 1) return 'Rests on a step that assumes one solution.';
  return undefined;
}

function answerOf({ films }: Making, { checked: step }: TimedStep, number: number): Answer[] {
  const { grid } = films.shown;
  if (questionOf(grid, step) === undefined) return [];
  const texts = step.step.fails
    ? ['No.', ...step.conclusions.map(({ message }) => asShown(message))]
    : provedTexts(grid, step);
  const kept = texts.filter((text) => text !== '');
  const stamp = stampText(step);
  return [
    {
      number,
      ...namesOf(step, number),
      texts: stamp === undefined ? kept : [...kept, `Not proved: ${stamp}`],
      says: step.step.say?.value,
    },
  ];
}
