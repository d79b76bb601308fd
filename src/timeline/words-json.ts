/**
 * Words with times as JSON, as speech recognisers and aligners write them: `[{"word": "The", "start": 1.0, "end":
 * 1.3}, ...]`, seconds. Words are grouped into cues by sentence, so that what is found can be shown in context.
 */
import { compare, type Fraction, fraction, subtract } from '../scene/fraction.ts';
import type { Cue, CuesRead, NarrationFault } from './cue.ts';
import { type Stamp, wordsOf } from './cue-text.ts';

interface TimedWord {
  readonly text: string;
  readonly start: Fraction;
  readonly end: Fraction;
}

/** A pause that ends a sentence if no full stop does. */
const longPause: Fraction = fraction(1);
const wanted = 'write {"word": "lamp", "start": 1.25, "end": 1.5}';

/** Reads JSON words. A cue is a sentence: up to a word that ends in `.`, `?` or `!`, or a pause of a second. */
export function readWordsJson(text: string): CuesRead {
  const faults: NarrationFault[] = [];
  const words: TimedWord[] = [];
  let latest = fraction(0);
  for (const item of itemsOf(text, faults)) {
    const word = readWord(item.source);
    if (typeof word === 'string') {
      faults.push({ line: item.line, message: word });
      continue;
    }
    if (compare(word.start, latest) < 0) {
      faults.push({ line: item.line, message: `"${word.text}" starts before the word before it; it is not used` });
      continue;
    }
    words.push(word);
    latest = word.start;
  }
  return { cues: sentencesOf(words).map(cueOf), faults };
}

/**
 * The items of the outermost list, each with its line, found only by brackets and strings, so that a broken one does
 * not spoil others.
 */
function itemsOf(
  text: string,
  faults: NarrationFault[],
): readonly { readonly source: string; readonly line: number }[] {
  const items: { source: string; line: number }[] = [];
  let depth = 0;
  let line = 1;
  let begin: { at: number; line: number } | undefined;
  function close(at: number): void {
    if (begin !== undefined) items.push({ source: text.slice(begin.at, at), line: begin.line });
    begin = undefined;
  }
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!;
    if (sign === '\n') line++;
    if (/\s/.test(sign)) continue;
    if (depth === 0) {
      if (sign !== '[') {
        faults.push({
          line,
          message: `a list of words begins with "["; ${wanted}, each after a comma, between [ and ]`,
        });
        return items;
      }
      depth = 1;
      continue;
    }
    if (depth === 1 && (sign === ',' || sign === ']')) {
      close(at);
      if (sign === ']') return items;
      continue;
    }
    begin ??= { at, line };
    if (sign === '"') at = endOfString(text, at);
    else if (sign === '{' || sign === '[') depth++;
    else if (sign === '}' || sign === ']') depth--;
  }
  // A truncated item gets no fault of its own: the open list is the single cause.
  if (depth === 1) close(text.length);
  if (depth > 0) faults.push({ line, message: 'the list of words is not closed; it ends with `]`' });
  return items;
}

/**
 * The index of the quote that closes the string opened at `at`, or of the last character before the line's end if none
 * does.
 */
function endOfString(text: string, at: number): number {
  for (let end = at + 1; end < text.length; end++) {
    if (text[end] === '"') return end;
    if (text[end] === '\n') return end - 1;
    if (text[end] === '\\') end++;
  }
  return text.length;
}

function readWord(source: string): TimedWord | string {
  const item = parse(source);
  if (item === undefined) return `this is not JSON; ${wanted}`;
  if (typeof item.value !== 'object' || item.value === null) return `a word is a map; ${wanted}`;
  const fields = new Map<string, unknown>(Object.entries(item.value));
  const text = fields.get('word');
  if (typeof text !== 'string' || text.trim() === '') return `the word itself is missing; ${wanted}`;
  const [start, end] = [secondsIn(fields.get('start')), secondsIn(fields.get('end'))];
  const said = text.trim();
  if (start === undefined) return `"${said}" has no "start" in seconds; ${wanted}`;
  if (end === undefined) return `"${said}" has no "end" in seconds; ${wanted}`;
  if (compare(end, start) < 0) return `"${said}" ends before it starts; ${wanted}`;
  return { text: said, start, end };
}

function parse(source: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(source) };
  } catch {
    return undefined;
  }
}

/**
 * The decimal that was written: up to 15 digits a double prints as it was read (IEEE 754). Undefined except for numbers
 * from 0 on.
 */
function secondsIn(value: unknown): Fraction | undefined {
  if (typeof value !== 'number' || !Number.isFinite(value) || value < 0) return undefined;
  const match = /^(\d+)(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value));
  if (match === null) return undefined;
  const power = BigInt(match[3] ?? '0') - BigInt(match[2]?.length ?? 0);
  const digits = BigInt(match[1]! + (match[2] ?? ''));
  return power < 0n ? fraction(digits, 10n ** -power) : fraction(digits * 10n ** power);
}

function sentencesOf(words: readonly TimedWord[]): readonly (readonly TimedWord[])[] {
  const sentences: TimedWord[][] = [];
  let before: TimedWord | undefined;
  for (const word of words) {
    const current = sentences.at(-1);
    const goesOn = before !== undefined && !/[.?!]["')\]\u2019\u201D]*$/.test(before.text) && !isPause(before, word);
    if (current !== undefined && goesOn) current.push(word);
    else sentences.push([word]);
    before = word;
  }
  return sentences;
}

function isPause(before: TimedWord, after: TimedWord): boolean {
  return compare(subtract(after.start, before.end), longPause) >= 0;
}

function cueOf(words: readonly TimedWord[], index: number): Cue {
  const stamps: Stamp[] = [];
  let text = '';
  for (const word of words) {
    if (text !== '') text += ' ';
    stamps.push({ offset: text.length, seconds: word.start });
    text += word.text;
  }
  const [first, last] = [words[0]!, words.at(-1)!];
  const number = index + 1;
  return { identifier: undefined, number, start: first.start, end: last.end, text, words: wordsOf(text, stamps) };
}
