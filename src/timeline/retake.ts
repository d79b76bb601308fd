/**
 * A narration that was recorded again: where a moment of the old one is in the new one.
 *
 * A moment belongs to the word that is being said, or to the next one if that begins within a fifth of a second and is
 * nearer. It moves with its word, and within the word, or the pause after it, in proportion. If the word is no longer
 * spoken, it moves in proportion between the nearest words around it that are.
 */
import { add, compare, divide, type Fraction, fraction, multiply, subtract, zero } from '../scene/fraction.ts';
import type { Narration } from './narration.ts';
import { startOfWord } from './phrases.ts';
import { earlierOf, laterOf } from './seconds.ts';
import { alignWords } from './word-alignment.ts';
import { formsOf } from './word-forms.ts';

export interface Retake {
  /** Words of the old narration, in order of time. */
  readonly words: readonly RetakenWord[];
  /** Where the moment is in the new narration. */
  move(seconds: Fraction): MovedMoment;
}

export interface RetakenWord {
  readonly text: string;
  readonly seconds: Fraction;
  /** Of the same word in the new narration; undefined if it is no longer spoken. */
  readonly now: Fraction | undefined;
}

export interface MovedMoment {
  readonly seconds: Fraction;
  /** The word that the moment belonged to, if that is no longer spoken. */
  readonly lost: string | undefined;
}

/** A moment this little before a word belongs to it. */
const justBefore = fraction(1, 5);

interface TimedWord {
  readonly text: string;
  readonly seconds: Fraction;
}

/** Both narrations aligned by their words. */
export function retakeOf(before: Narration, after: Narration): Retake {
  const [olds, news] = [timedWords(before), timedWords(after)];
  const pairs = pairsOf(olds, news);
  const words = olds.map(({ text, seconds }, index) => ({ text, seconds, now: news[pairs[index]!]?.seconds }));
  /** By word: when the word after it is said in the new narration. */
  const nextNow = olds.map((_, index) => news[pairs[index]! + 1]?.seconds);
  const first = news[0]?.seconds ?? zero;

  function move(seconds: Fraction): MovedMoment {
    const index = lastNotAfter(words, seconds);
    const [word, next] = [words[index], words[index + 1]];
    if (next?.now !== undefined && isMeantFor(seconds, word, next)) {
      const early = add(next.now, subtract(seconds, next.seconds));
      return { seconds: laterOf(early, zero), lost: undefined };
    }
    // Before the first word nothing is said: a title shown from the start stays at the start.
    if (word === undefined) return { seconds: earlierOf(seconds, first), lost: undefined };
    if (word.now === undefined) return { seconds: between(words, nextNow, index, seconds), lost: word.text };
    const past = subtract(seconds, word.seconds);
    const [span, newSpan] = [spanTo(word.seconds, next?.seconds), spanTo(word.now, nextNow[index])];
    if (span === undefined || newSpan === undefined) return { seconds: add(word.now, past), lost: undefined };
    return { seconds: add(word.now, multiply(past, divide(newSpan, span))), lost: undefined };
  }
  return { words, move };
}

/** In proportion between the words around a passage that is no longer spoken; what replaces it counts with it. */
function between(
  words: readonly RetakenWord[],
  nextNow: readonly (Fraction | undefined)[],
  index: number,
  seconds: Fraction,
): Fraction {
  const before = words.slice(0, index).findLastIndex(({ now }) => now !== undefined);
  const after = words.slice(index).find(({ now }) => now !== undefined);
  const from = words[before + 1]!.seconds;
  const newFrom = before < 0 ? undefined : (nextNow[before] ?? words[before]!.now);
  const past = subtract(seconds, from);
  if (after?.now === undefined) return add(newFrom ?? from, past);
  const start = newFrom ?? earlierOf(from, after.now);
  const span = subtract(after.seconds, from);
  if (compare(span, zero) <= 0) return after.now;
  return add(start, multiply(past, divide(subtract(after.now, start), span)));
}

function isMeantFor(seconds: Fraction, word: TimedWord | undefined, next: TimedWord): boolean {
  const ahead = subtract(next.seconds, seconds);
  if (compare(ahead, justBefore) >= 0) return false;
  return word === undefined || compare(ahead, subtract(seconds, word.seconds)) < 0;
}

/** Undefined if no word follows, or it is said at the same moment. */
function spanTo(from: Fraction, to: Fraction | undefined): Fraction | undefined {
  if (to === undefined) return undefined;
  const span = subtract(to, from);
  return compare(span, zero) > 0 ? span : undefined;
}

function timedWords(narration: Narration): TimedWord[] {
  const words = narration.cues.flatMap((cue) =>
    cue.words.map(({ text }, index) => ({ text, seconds: startOfWord(cue, index) })),
  );
  // Cues may overlap; the sort is stable. A dash on its own is not said.
  return words.filter(({ text }) => /[\p{L}\p{N}]/u.test(text)).sort((a, b) => compare(a.seconds, b.seconds));
}

/**
 * By old word: the new one, or -1. Aligned by their forms; within a form with equally many words in both, word by word.
 */
function pairsOf(olds: readonly TimedWord[], news: readonly TimedWord[]): Int32Array {
  const [oldForms, newForms] = [olds, news].map((words) => formsOf(words.map(({ text }) => text))) as [
    ReturnType<typeof formsOf>,
    ReturnType<typeof formsOf>,
  ];
  const aligned = alignWords(
    oldForms.map(({ form }) => form),
    newForms.map(({ form }) => form),
  );
  const pairs = new Int32Array(olds.length).fill(-1);
  for (const [index, { first, last }] of oldForms.entries()) {
    const other = newForms[aligned[index]!];
    if (other === undefined) continue;
    const isAlike = last - first === other.last - other.first;
    for (let word = first; word <= (isAlike ? last : first); word++) {
      if (pairs[word] === -1) pairs[word] = other.first + word - first;
    }
  }
  return pairs;
}

function lastNotAfter(words: readonly TimedWord[], seconds: Fraction): number {
  let [low, high] = [0, words.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (compare(words[middle]!.seconds, seconds) <= 0) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
