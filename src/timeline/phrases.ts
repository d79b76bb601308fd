/**
 * Where a phrase is spoken. Phrases are compared without regard to case, punctuation, hyphens and the width of white
 * space, and numbers as words equal figures.
 *
 * Both sides become a sequence of letters and figures in which every gap is either open (white space: it must meet a
 * gap) or soft (a hyphen or other character inside a word: it may meet a gap, or none). So `X-wing` is `X wing` and
 * `Xwing`, `twenty-one` is `21`, and `either here` is not `eitherhere`.
 */
import { distance } from 'fastest-levenshtein';
import type { Spoken, Within } from '../scene/anchor.ts';
import { add, compare, type Fraction, fraction, multiply, subtract } from '../scene/fraction.ts';
import type { Cue } from './cue.ts';
import type { Narration } from './narration.ts';
import { figuresAt } from './number-words.ts';
import { earlierOf, laterOf } from './seconds.ts';
import { spokenAlike, spokenMostAlike } from './spoken-alike.ts';
import { formsOf, type WordForm } from './word-forms.ts';

/** A narration prepared for searching. */
export interface SpokenText {
  readonly spelling: Spelling;
  /** Every word of the narration, in order of time. */
  readonly words: readonly { readonly text: string; readonly seconds: Fraction }[];
  /** The same words in the form used for comparison when speech differs from what was written. */
  readonly forms: readonly WordForm[];
}

/** Letters and figures with the gaps before them. */
interface Spelling {
  readonly letters: string;
  /** By letter: the gap before it. */
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

/** Prepares a narration for searching. */
export function spokenText(narration: Narration): SpokenText {
  const words = narration.cues.flatMap((cue) =>
    cue.words.map((word, index) => ({ text: word.text, seconds: startOfWord(cue, index) })),
  );
  const texts = words.map((word) => word.text);
  return { spelling: spellingOf(texts), words, forms: formsOf(texts) };
}

/**
 * All places where the phrase is spoken, in order of time, without overlaps. Empty for a phrase without a letter or
 * figure.
 */
export function findPhrase(spoken: SpokenText, phrase: string): readonly Spoken[] {
  const wanted = spellingOf(phrase.split(/\s+/));
  const places: Spoken[] = [];
  if (wanted.letters === '') return places;
  const { spelling } = spoken;
  for (let at = 0; at + wanted.letters.length <= spelling.letters.length; ) {
    if (!matchesAt(spelling, wanted, at)) {
      at++;
      continue;
    }
    const end = at + wanted.letters.length;
    places.push(placeOf(spoken, spelling.firstWord[at]!, spelling.lastWord[end - 1]!));
    at = end;
  }
  return places;
}

/**
 * The place where a sentence is spoken with a few words changed, among the words that begin at or after `from` and
 * before `until`, if these are given.
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
 * never before the timestamp of an earlier word of the cue or after that of a later one. In a cue of 40 characters from
 * 10 s to 20 s, a word after 12 of them is said at 13 s.
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

/**
 * From this many words on a phrase is compared word by word; letter by letter would take long, without being more
 * precise.
 */
const sentenceLength = 8;

/**
 * The spoken words most like the phrase, among those that begin at or after `from` and before `until`, if these are
 * given. Undefined if nothing is said there.
 */
export function nearestSpoken(spoken: SpokenText, phrase: string, within: Within = {}): Spoken | undefined {
  const count = phrase.trim().split(/\s+/).length;
  if (count >= sentenceLength) {
    const alike = spokenMostAlike(formsWithin(spoken, within), phrase);
    if (alike !== undefined) return placeOf(spoken, alike.first, alike.last);
    const beginning = phrase.trim().split(/\s+/).slice(0, 5).join(' ');
    return nearestSpoken(spoken, beginning, within);
  }
  const wanted = spellingOf(phrase.split(/\s+/)).letters;
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

/** The letters of some of the words; a number in several words belongs entirely to the first of them. */
function lettersOf({ spelling }: SpokenText, first: number, last: number): string {
  return spelling.letters.slice(letterFrom(spelling, first), letterFrom(spelling, last + 1));
}

/** The first letter of this word or a later one. */
function letterFrom({ firstWord, letters }: Spelling, word: number): number {
  let [low, high] = [0, letters.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (firstWord[middle]! < word) low = middle + 1;
    else high = middle;
  }
  return low;
}

function matchesAt(spelling: Spelling, wanted: Spelling, at: number): boolean {
  const end = at + wanted.letters.length;
  if (spelling.gaps[at] === 'none' || spelling.gaps[end] === 'none') return false;
  if (!spelling.letters.startsWith(wanted.letters, at)) return false;
  for (let index = 1; index < wanted.letters.length; index++) {
    if (!gapsAgree(spelling.gaps[at + index]!, wanted.gaps[index]!)) return false;
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

function spellingOf(words: readonly string[]): Spelling {
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

/** The letters and figures of one word, split at any other character between them. */
function piecesOf(word: string, index: number): readonly Piece[] {
  const plain = word
    .normalize('NFKC')
    .toLowerCase()
    .replace(/['\u2018\u2019\u02BC]/g, '');
  const texts = plain.split(/[^\p{L}\p{N}\p{M}]+/u).filter((text) => text !== '');
  return texts.map((text, part) => ({ text, gap: part === 0 ? 'open' : 'soft', word: index }));
}
