/**
 * The chapters of a lesson, from the steps' `chapter`, and the list of them that video sites read.
 */
import { compare, type Fraction, fraction } from '../scene/fraction.ts';
import type { Scene } from '../scene/scene.ts';
import { type Frame, frameAt } from './film.ts';
import type { Schedule } from './schedule.ts';
import { timeOfFrame } from './seconds.ts';

/** On frames `from` to `until`, `until` excluded; chapters follow one another without a gap. */
export interface Chapter {
  readonly name: string;
  readonly from: Frame;
  readonly until: Frame;
}

/** What names a chapter: `chapter` as in the scene, or the titles of the steps. */
export type ChapterNames = 'chapters' | 'titles';

/**
 * The chapters of a scene, from frame 0 to the last: each begins with the step that names it. Anything before the first
 * of them is a chapter of its own, named like the lesson, or part of the first if it is shorter than ten seconds. Two
 * that begin on the same frame, or one without a frame, are merged under the later name. Empty if nothing is named.
 */
export function chaptersOf(scene: Scene, schedule: Schedule, names: ChapterNames = 'chapters'): readonly Chapter[] {
  const named = scene.steps.flatMap((step, index) => {
    const name = plainName(names === 'chapters' ? step.chapter : step.title);
    const from = schedule.steps[index]?.from;
    return name === undefined || from === undefined || from >= schedule.frameCount ? [] : [{ name, from }];
  });
  const [first] = named;
  if (first === undefined) return [];
  const start = frameAt(0);
  const opening = { name: plainName(scene.title) ?? 'Opening', from: start, until: first.from };
  const all = isShort(opening, schedule.rate) ? [{ ...first, from: start }, ...named.slice(1)] : [opening, ...named];
  return all.flatMap(({ name, from }, index) => {
    const until = all[index + 1]?.from ?? frameAt(schedule.frameCount);
    return until > from ? [{ name, from, until }] : [];
  });
}

/** One line, white space as single spaces; undefined if nothing is left. */
function plainName(name: string | undefined): string | undefined {
  const plain = name?.replace(/\s+/g, ' ').trim();
  return plain === '' ? undefined : plain;
}

/** What video sites require of a list of chapters: common practice of several, without a standard. */
export const listRules = { fewest: 3, shortest: fraction(10) } as const;

export interface ChapterList {
  readonly chapters: readonly Chapter[];
  /** Chapters that were too short, each with the one that it was merged into. */
  readonly merged: readonly { readonly name: string; readonly into: string }[];
  /** Whether a site will accept it: the first begins at 0, and there are at least three. */
  readonly taken: boolean;
}

/**
 * The chapters, with those shorter than ten seconds merged into the previous one (the first into the next), as long as
 * there is one. Times are those of frames at `rate`.
 */
export function chapterList(chapters: readonly Chapter[], rate: Fraction): ChapterList {
  const kept: Chapter[] = [];
  const merged: { name: string; into: string }[] = [];
  let waiting: Chapter | undefined;
  for (const each of chapters) {
    const chapter: Chapter = waiting === undefined ? each : { ...each, from: waiting.from };
    if (waiting !== undefined) merged.push({ name: waiting.name, into: each.name });
    waiting = undefined;
    const last = kept.at(-1);
    if (!isShort(chapter, rate)) kept.push(chapter);
    else if (last === undefined) waiting = chapter;
    else {
      merged.push({ name: chapter.name, into: last.name });
      kept[kept.length - 1] = { ...last, until: chapter.until };
    }
  }
  if (waiting !== undefined) kept.push(waiting);
  return { chapters: kept, merged, taken: kept.length >= listRules.fewest && kept[0]?.from === 0 };
}

function isShort({ from, until }: Chapter, rate: Fraction): boolean {
  return compare(timeOfFrame(rate, until - from), listRules.shortest) < 0;
}

/**
 * The list as it is pasted below a video: `0:00 The easy part`, one chapter a line; whole seconds, rounded down, so
 * that a chapter is never entered late. With hours if the last chapter begins after the first one.
 */
export function printChapterList(chapters: readonly Chapter[], rate: Fraction): string {
  const seconds = chapters.map(({ from }) => {
    const { numerator, denominator } = timeOfFrame(rate, from);
    return Number(numerator / denominator);
  });
  const hours = (seconds.at(-1) ?? 0) >= 3600;
  return chapters.map(({ name }, index) => `${clock(seconds[index]!, hours)} ${name}\n`).join('');
}

function clock(seconds: number, hours: boolean): string {
  const two = (number: number) => String(number).padStart(2, '0');
  const rest = `${two(seconds % 60)}`;
  if (!hours) return `${Math.floor(seconds / 60)}:${rest}`;
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${rest}`;
}
