/**
 * What is said, word by word, in whole milliseconds: from the narration if a scene has one, else from what its steps
 * `say`.
 */
import { type Fraction, fraction, multiply, nearest } from '../scene/fraction.ts';
import type { Scene } from '../scene/scene.ts';
import type { Narration } from '../timeline/narration.ts';
import { speakingSeconds } from '../timeline/pace.ts';
import { startOfWord } from '../timeline/phrases.ts';
import type { Schedule } from '../timeline/schedule.ts';
import { timeOfFrame } from '../timeline/seconds.ts';

/** A word, or a part of one that is too long for a line. */
export interface SaidWord {
  readonly text: string;
  /** Whether a space precedes it on a line; a part of a long word has none. */
  readonly spaced: boolean;
  /** From the start of the video, in milliseconds. `to` is never before `from`, and `from` never before that of the word before. */
  readonly from: number;
  readonly to: number;
  /** The name of a cue that begins with it. */
  readonly name: string | undefined;
}

/** The time as the nearest whole millisecond. */
export function milliseconds(seconds: Fraction): number {
  return Number(nearest(multiply(seconds, fraction(1000))));
}

/** Characters of a word above which it is split: less than a line, so that lines can be filled. */
const longestPart = 20;

/** A longer gap than this from one word to the next means that the speaker paused and the word itself was shorter. */
const mostWithoutPause = (text: string) => 1500 + 100 * text.length;
const usualLength = (text: string) => 350 + 75 * text.length;

/** The words of a narration. A cue that begins before the previous one ends continues after that one's words. */
export function saidInNarration(narration: Narration): SaidWord[] {
  const timed = narration.cues.flatMap((cue) =>
    cue.words.map((word, index) => ({
      text: word.text,
      from: milliseconds(startOfWord(cue, index)),
      end: milliseconds(cue.end),
      isLast: index === cue.words.length - 1,
      isStamped: cue.words.some(({ start }) => start !== undefined),
    })),
  );
  let latest = 0;
  const starts = timed.map(({ from }) => {
    latest = Math.max(latest, from);
    return latest;
  });
  return timed.flatMap(({ text, end, isLast, isStamped }, index) => {
    const from = starts[index]!;
    const next = starts[index + 1] ?? Number.POSITIVE_INFINITY;
    const untilNext = Math.min(next, isLast ? Math.max(end, from) : next);
    const to = isStamped && untilNext - from > mostWithoutPause(text) ? from + usualLength(text) : untilNext;
    return parted(text, from, to, undefined);
  });
}

/**
 * The words of what the steps say: each step's from its first frame on, at 150 words a minute, or faster if the step is
 * shorter, in proportion to their characters.
 */
export function saidInSteps(scene: Scene, schedule: Schedule): SaidWord[] {
  const at = (frame: number) => milliseconds(timeOfFrame(schedule.rate, frame));
  return scene.steps.flatMap((step, index) => {
    const times = schedule.steps[index];
    const words = (step.say?.value ?? '').split(/\s+/).filter((word) => word !== '');
    if (times === undefined || times.until <= times.from) return [];
    const [from, until] = [at(times.from), at(times.until)];
    const length = Math.min(until - from, milliseconds(speakingSeconds(words.join(' '))));
    const all = words.reduce((sum, word) => sum + word.length + 1, 0);
    let before = 0;
    return words.flatMap((word, place) => {
      const begin = from + Math.round((length * before) / all);
      before += word.length + 1;
      return parted(word, begin, from + Math.round((length * before) / all), place === 0 ? step.id : undefined);
    });
  });
}

/** A word unchanged, or in parts that fit on a line, each with its share of the time. */
function parted(text: string, from: number, to: number, name: string | undefined): SaidWord[] {
  const parts = partsOf(text);
  let before = 0;
  return parts.map((part, index) => {
    const begin = from + Math.round(((to - from) * before) / text.length);
    before += part.length;
    const end = from + Math.round(((to - from) * before) / text.length);
    return { text: part, spaced: index === 0, from: begin, to: end, name: index === 0 ? name : undefined };
  });
}

/** Cut after a character that ends a clause if there is one, and never between a letter and its marks. */
function partsOf(text: string): string[] {
  const signs = [...text];
  if (signs.length <= 2 * longestPart) return [text];
  const parts: string[] = [];
  let part = '';
  let length = 0;
  for (const [index, sign] of signs.entries()) {
    part += sign;
    length++;
    const next = signs[index + 1];
    const isBound = next === undefined || next === '\u200D' || /\p{M}/u.test(next) || sign === '\u200D'; // the joiner of emoji
    const isFull =
      length >= longestPart || (length >= longestPart / 2 && /[-/\u3001\u3002\uFF0C\uFF01\uFF1F]/.test(sign));
    if (isBound || !isFull) continue;
    parts.push(part);
    [part, length] = ['', 0];
  }
  return part === '' ? parts : [...parts, part];
}
