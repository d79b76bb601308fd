/**
 * Where a phrase is spoken. Phrases are compared without case, punctuation, hyphens and the width of white space, and
 * with numbers as words and figures the same.
 *
 * Both sides become a run of letters and figures in which every gap is either open (white space: it must meet a gap) or
 * soft (a hyphen or other sign inside a word: it may meet a gap, or none). So `X-wing` is `X wing` and `Xwing`,
 * `twenty-one` is `21`, and `either here` is not `eitherhere`.
 */
import { distance } from 'fastest-levenshtein';
import type { Spoken, Within } from '../scene/anchors/anchor.ts';
import { add, compare, type Fraction, fraction, multiply, subtract } from '../scene/fraction.ts';
import type { Cue } from './cue.ts';
import type { Narration } from './narration.ts';
import { figuresAt } from './number-words.ts';
import { earlierOf, laterOf } from './seconds.ts';
import { spokenAlike, spokenMostAlike } from './spoken-alike.ts';
import { formsOf, type WordForm } from './word-forms.ts';

/** A narration made ready for finding. */
export interface SpokenText {
  readonly run: Run;
  /** Every word of the narration, in order of time. */
  readonly words: readonly { readonly text: string; readonly seconds: Fraction }[];
  /** The same words as they are compared where speech differs from what was written. */
  readonly forms: readonly WordForm[];
}

/** Letters and figures with the gaps before them. */
interface Run {
  readonly letters: string;
  /** By letter: what stands before it. */
  readonly gaps: readonly Gap[];
  /** By letter: the index of the word that it belongs to; of a number in several words, the first. */
  readonly firstWord: readonly number[];
  readonly lastWord: readonly number[];
}

type Gap = 'none' | 'soft' | 'open';

interface Piece {
  readonly text: string;
  readonly gap: Gap;
  readonly word: number;
}

/** Makes a narration ready for finding. */
export function spokenText(narration: Narration): SpokenText {
  const words = narration.cues.flatMap((cue) =>
    cue.words.map((word, index) => ({ text: word.text, seconds: startOfWord(cue, index) })),
  );
  const texts = words.map((word) => word.text);
  return { run: runOf(texts), words, forms: formsOf(texts) };
}

/**
 * All places where the phrase is spoken, in order of time, none overlapping another. Empty for a phrase without a
 * letter or figure.
 */
export function findPhrase(spoken: SpokenText, phrase: string): readonly Spoken[] {
  const wanted = runOf(phrase.split(/\s+/));
  const places: Spoken[] = [];
  if (wanted.letters === '') return places;
  const { run } = spoken;
  for (let at = 0; at + wanted.letters.length <= run.letters.length; ) {
    if (!matchesAt(run, wanted, at)) {
      at++;
      continue;
    }
    const end = at + wanted.letters.length;
    places.push(placeOf(spoken, run.firstWord[at]!, run.lastWord[end - 1]!));
    at = end;
  }
  return places;
}

/**
 * The place where a sentence is spoken with a few words changed, among the words that begin from `from` on and before
 * `until` where these are given.
 */
export function findAlike(spoken: SpokenText, sentence: string, within: Within = {}): Spoken | undefined {
  const alike = spokenAlike(formsWithin(spoken, within), sentence);
  return alike === undefined ? undefined : placeOf(spoken, alike.first, alike.last);
}

function formsWithin(spoken: SpokenText, { from, until }: Within): readonly WordForm[] {
  return spoken.forms.filter(({ first }) => {
    const { seconds } = spoken.words[first]!;
    return (from === undefined || compare(seconds, from) >= 0) && (until === undefined || compare(seconds, until) < 0);
  });
}

/**
 * When a word of a cue is said: at its own timestamp, else in proportion to the characters before it in its cue, but
 * never before the timestamp of an earlier word of the cue or after that of a later one. In a cue from 10 s to 20 s
 * of 40 characters a word after 12 of them is said at 13 s.
 */
export function startOfWord(cue: Cue, index: number): Fraction {
  const word = cue.words[index]!;
  if (word.start !== undefined) return word.start;
  const before = [...cue.text.slice(0, word.from)].length;
  const part = fraction(before, Math.max(1, [...cue.text].length));
  const inProportion = add(cue.start, multiply(subtract(cue.end, cue.start), part));
  const earlier = cue.words.slice(0, index).findLast((other) => other.start !== undefined)?.start;
  const later = cue.words.slice(index + 1).find((other) => other.start !== undefined)?.start;
  const notBefore = earlier === undefined ? inProportion : laterOf(inProportion, earlier);
  return later === undefined ? notBefore : earlierOf(notBefore, later);
}

/** From so many words on a phrase is compared word by word; letter by letter would take long, and say no more. */
const sentenceLength = 8;

/**
 * The words spoken that are most like the phrase, among those that begin from `from` on and before `until` where
 * these are given. Undefined where nothing is said there.
 */
export function nearestSpoken(spoken: SpokenText, phrase: string, within: Within = {}): Spoken | undefined {
  const count = phrase.trim().split(/\s+/).length;
  if (count >= sentenceLength) {
    const alike = spokenMostAlike(formsWithin(spoken, within), phrase);
    if (alike !== undefined) return placeOf(spoken, alike.first, alike.last);
    const beginning = phrase.trim().split(/\s+/).slice(0, 5).join(' ');
    return nearestSpoken(spoken, beginning, within);
  }
  const wanted = runOf(phrase.split(/\s+/)).letters;
  let best: { readonly first: number; readonly last: number } | undefined;
  let leastSteps = Number.POSITIVE_INFINITY;
  for (const [first, word] of spoken.words.entries()) {
    if (within.from !== undefined && compare(word.seconds, within.from) < 0) continue;
    if (within.until !== undefined && compare(word.seconds, within.until) >= 0) continue;
    for (const length of [count, count - 1, count + 1]) {
      const last = first + length - 1;
      if (length < 1 || last >= spoken.words.length) continue;
      const said = lettersOf(spoken, first, last);
      const steps = distance(wanted, said);
      if (steps >= leastSteps) continue;
      [best, leastSteps] = [{ first, last }, steps];
    }
  }
  return best === undefined ? undefined : placeOf(spoken, best.first, best.last);
}

/** The letters of some of the words; of a number in several words all of it, with the first of them. */
function lettersOf({ run }: SpokenText, first: number, last: number): string {
  return run.letters.slice(letterFrom(run, first), letterFrom(run, last + 1));
}

/** The first letter of this word or a later one. */
function letterFrom({ firstWord, letters }: Run, word: number): number {
  let [low, high] = [0, letters.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (firstWord[middle]! < word) low = middle + 1;
    else high = middle;
  }
  return low;
}

function matchesAt(run: Run, wanted: Run, at: number): boolean {
  const end = at + wanted.letters.length;
  if (run.gaps[at] === 'none' || run.gaps[end] === 'none') return false;
  if (!run.letters.startsWith(wanted.letters, at)) return false;
  for (let index = 1; index < wanted.letters.length; index++) {
    if (!gapsAgree(run.gaps[at + index]!, wanted.gaps[index]!)) return false;
  }
  return true;
}

function gapsAgree(a: Gap, b: Gap): boolean {
  return a === b || a === 'soft' || b === 'soft';
}

function placeOf(spoken: SpokenText, first: number, last: number): Spoken {
  const words = spoken.words.slice(first, last + 1);
  return { seconds: words[0]!.seconds, text: words.map((word) => word.text).join(' ') };
}

function runOf(words: readonly string[]): Run {
  const pieces = words.flatMap(piecesOf);
  const texts = pieces.map((piece) => piece.text);
  let letters = '';
  const gaps: Gap[] = [];
  const firstWord: number[] = [];
  const lastWord: number[] = [];
  for (let at = 0; at < pieces.length; ) {
    const number = figuresAt(texts, at);
    const length = number?.length ?? 1;
    const text = number?.figures ?? texts[at]!;
    for (let unit = 0; unit < text.length; unit++) {
      gaps.push(unit === 0 ? pieces[at]!.gap : 'none');
      firstWord.push(pieces[at]!.word);
      lastWord.push(pieces[at + length - 1]!.word);
    }
    letters += text;
    at += length;
  }
  return { letters, gaps, firstWord, lastWord };
}

/** The letters and figures of one word, cut where another sign stands between them. */
function piecesOf(word: string, index: number): readonly Piece[] {
  const plain = word
    .normalize('NFKC')
    .toLowerCase()
    .replace(/['\u2018\u2019\u02BC]/g, '');
  const texts = plain.split(/[^\p{L}\p{N}\p{M}]+/u).filter((text) => text !== '');
  return texts.map((text, part) => ({ text, gap: part === 0 ? 'open' : 'soft', word: index }));
}
