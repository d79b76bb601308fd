/**
 * A narration: what is said, and when. Read from WebVTT, SRT or JSON words; a part that is broken becomes a fault with
 * its line, and the rest is still used.
 */
import type { Fraction } from '../scene/fraction.ts';
import { readSrt } from './srt.ts';
import { readVtt } from './vtt.ts';
import { readWordsJson } from './words-json.ts';

export interface Narration {
  /** The file's name, for messages. */
  readonly name: string;
  /** In order of `start`; of equal ones, in the file's order. */
  readonly cues: readonly Cue[];
}

export interface Cue {
  /** As written before the cue: WebVTT's identifier, or SRT's number. */
  readonly identifier: string | undefined;
  /** Its place in the file, from 1; broken cues are counted. */
  readonly number: number;
  /** Seconds; `end` is after `start` (or equal to it, in JSON words). */
  readonly start: Fraction;
  readonly end: Fraction;
  /** Without tags, escapes decoded, line breaks as `\n`. */
  readonly text: string;
  readonly words: readonly Word[];
}

export interface Word {
  readonly text: string;
  /**
   * Its own timestamp, in seconds; undefined where the narration has none for it. Never earlier than that of a word
   * before.
   */
  readonly start: Fraction | undefined;
  /** `cue.text.slice(from, to)` is the word. */
  readonly from: number;
  readonly to: number;
}

/** Something in the narration that was not used, or not as it stands. */
export interface NarrationFault {
  /** From 1. */
  readonly line: number;
  /** What is there, then what would be right. */
  readonly message: string;
}

export interface NarrationReading {
  readonly narration: Narration;
  /** In order of `line`. */
  readonly faults: readonly NarrationFault[];
}

/** What one reader makes of a text. */
export interface CuesRead {
  readonly cues: readonly Cue[];
  readonly faults: readonly NarrationFault[];
}

/** Faults that are told one by one. */
const mostFaults = 20;

/**
 * Reads a narration. The text is taken for what its first line says (`WEBVTT`, or the `[` or `{` of JSON), else for
 * what the end of `name` says, else for SRT. Byte order marks and all kinds of line break are accepted.
 */
export function readNarration(text: string, name: string): NarrationReading {
  if (text.includes('\0')) {
    const message = 'this is no text; a narration is WebVTT, SRT, or JSON words';
    return { narration: { name, cues: [] }, faults: [{ line: 1, message }] };
  }
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const { cues, faults } = readerFor(plain, name)(plain);
  const inOrder = [...cues].sort((a, b) => {
    const difference = a.start.numerator * b.start.denominator - b.start.numerator * a.start.denominator;
    return difference < 0n ? -1 : difference > 0n ? 1 : a.number - b.number;
  });
  return { narration: { name, cues: inOrder }, faults: firstOf(faults) };
}

/** The faults in order; of a file that is broken throughout, the first few and how many more there are. */
function firstOf(faults: readonly NarrationFault[]): readonly NarrationFault[] {
  const inOrder = [...faults].sort((a, b) => a.line - b.line);
  if (inOrder.length <= mostFaults + 1) return inOrder;
  const message = `${inOrder.length - mostFaults} more places from here on cannot be read; mend the ones before first`;
  return [...inOrder.slice(0, mostFaults), { line: inOrder[mostFaults]!.line, message }];
}

function readerFor(text: string, name: string): (text: string) => CuesRead {
  if (text.startsWith('WEBVTT')) return readVtt;
  if (/^\s*[[{]/.test(text)) return readWordsJson;
  const ending = /\.([a-z]+)$/i.exec(name)?.[1]?.toLowerCase();
  if (ending === 'vtt') return readVtt;
  return ending === 'json' ? readWordsJson : readSrt;
}
