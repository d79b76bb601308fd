/**
 * Times as a scene writes them (section 6 of the language): seconds, timecodes, offsets, cues and words.
 */
import type { Code } from './codes.ts';
import { add, type Fraction, fraction, fractionFromDecimal, multiply, zero } from './fraction.ts';
import { nearestWords } from './nearest-word.ts';
import type { AbsoluteTime, Time } from './scene.ts';
import { timecodeOf, whyNoLabel } from './timecode-label.ts';

/** `fixed`: seconds and timecodes alone; `unanchored`: all but `+1.5`, where there is nothing to count from; `any`. */
export type TimeForms = 'fixed' | 'unanchored' | 'any';

export interface TimeReading {
  /** Frames a second, to check timecodes against; undefined where the scene's rate could not be read. */
  readonly rate: Fraction | undefined;
  readonly forms: TimeForms;
}

/** A fault in a time: where it lies in the text, in UTF-16 units. */
export interface TimeFault {
  readonly code: Code;
  readonly at: number;
  readonly length: number;
  readonly message: string;
}

export type ReadTime<T> = { readonly ok: true; readonly time: T } | { readonly ok: false; readonly fault: TimeFault };

const fixedForms = '12.5, 1:02, 1:02.5, 1:00:02.5 or 01:00:02:12';

/** What a message offers, by where the time stands. */
const offered: Readonly<Record<TimeForms, string>> = {
  fixed: fixedForms,
  unanchored: '12.5, 1:02, 1:02.5, 1:00:02.5, 01:00:02:12, cue NAME, or words "as said"',
  any: '12.5, 1:02, 1:02.5, 1:00:02.5, 01:00:02:12, +1.5, cue NAME, or words "as said"',
};

/** A time of the allowed forms, blanks around it ignored. */
export function readTime(text: string, how: TimeReading): ReadTime<Time> {
  const { forms } = how;
  const trimmed = text.trim();
  const at = text.indexOf(trimmed);
  const reading = readTrimmed(trimmed, how);
  if (!reading.ok) return { ok: false, fault: { ...reading.fault, at: reading.fault.at + at } };
  const { kind } = reading.time;
  const refused = refusedForm(kind, forms);
  return refused === undefined ? reading : fault('time-form', at, trimmed.length, refused);
}

/** A time that hangs on nothing else. */
export function readFixedTime(text: string, rate: Fraction | undefined): ReadTime<AbsoluteTime> {
  const reading = readTime(text, { rate, forms: 'fixed' });
  if (!reading.ok) return reading;
  const { time } = reading;
  if (time.kind === 'seconds' || time.kind === 'timecode') return { ok: true, time };
  return fault('time-form', 0, text.length, `a time stands here that hangs on nothing: ${fixedForms}`);
}

function refusedForm(kind: Time['kind'], forms: TimeForms): string | undefined {
  if (forms === 'any' || kind === 'seconds' || kind === 'timecode') return undefined;
  if (kind !== 'after')
    return forms === 'fixed' ? `this time must not hang on the narration; it is ${fixedForms}` : undefined;
  return 'a + counts from a step, and there is none to count from here; leave it out for a time from the start of the video';
}

function readTrimmed(text: string, how: TimeReading): ReadTime<Time> {
  if (/^cue\b/i.test(text)) return readCue(text);
  if (/^words\b/i.test(text)) return readWords(text, how);
  if (text.startsWith('+')) {
    const seconds = secondsOf(text.slice(1).trim());
    if (seconds !== undefined) return { ok: true, time: { kind: 'after', seconds } };
    return fault('not-a-time', 0, text.length, `"${text}" is no offset; write +1.5 for one and a half seconds after`);
  }
  return readAbsolute(text, how);
}

function readAbsolute(text: string, { rate, forms }: TimeReading): ReadTime<AbsoluteTime> {
  const timecode = timecodeOf(text);
  if (timecode !== undefined) {
    const refused = rate === undefined ? undefined : whyNoLabel(timecode, rate);
    if (refused !== undefined) return fault(refused.code, 0, text.length, refused.message);
    return { ok: true, time: { kind: 'timecode', timecode } };
  }
  const seconds = secondsOf(text);
  if (seconds !== undefined) return { ok: true, time: { kind: 'seconds', seconds } };
  return fault('not-a-time', 0, text.length, whyNoTime(text, forms));
}

/** `12.5`, `12.5s`, `1:02`, `1:02.5`, `1:00:02.5`: exact seconds. */
function secondsOf(text: string): Fraction | undefined {
  const plain = fractionFromDecimal(text.replace(/ ?s$/, ''));
  if (plain !== undefined) return plain;
  const match = /^(?:(\d+):)?(\d+):(\d\d(?:\.\d+)?)$/.exec(text);
  if (match === null) return undefined;
  const [hours, minutes] = [BigInt(match[1] ?? 0), BigInt(match[2]!)];
  const seconds = fractionFromDecimal(match[3]!)!;
  if (Number(match[3]) >= 60 || (match[1] !== undefined && (minutes > 59n || match[2]!.length !== 2))) return undefined;
  return add(multiply(fraction(hours * 60n + minutes), fraction(60n)), seconds);
}

function whyNoTime(text: string, forms: TimeForms): string {
  if (text.startsWith('-')) return `"${text}" lies before the start; times do not go back`;
  const seconds = /^(\d+)(?:[.,](\d+))?\s*(?:s|sec|secs|seconds?)?$/i.exec(text);
  if (seconds !== null)
    return `"${text}" is no time; write ${seconds[1]}${seconds[2] === undefined ? '' : `.${seconds[2]}`}`;
  const [word = ''] = text.split(/\s/);
  const [near] = nearestWords(word, ['cue', 'words']);
  if (near !== undefined)
    return `"${text}" is no time; did you mean ${near === 'cue' ? 'cue NAME' : 'words "as said"'}?`;
  if (/^\d+(:\d+)+([.;,]\d+)?$/.test(text)) {
    return `"${text}" is no time; minutes and seconds have two digits and stay below 60 (1:02, 1:00:02.5), and a timecode has four pairs (01:00:02:12)`;
  }
  return `"${text}" is no time; here a time is ${offered[forms]}`;
}

function readCue(text: string): ReadTime<Time> {
  const rest = text.slice(3).trim();
  const match = /^(.*?)(?:\s\+\s*(\S+))?$/s.exec(rest);
  const cue = (match?.[1] ?? '').trim();
  if (cue === '' || cue.startsWith('+')) {
    return fault(
      'not-a-time',
      0,
      text.length,
      `"${text}" names no cue; write cue and its name or number in the narration`,
    );
  }
  if (/\s[-\u2212]\s*\d[\d.:]*s?$/.test(cue)) {
    const at = text.search(/\s[-\u2212]\s*\d[\d.:]*s?$/) + 1;
    return fault(
      'not-a-time',
      at,
      text.length - at,
      'a time can lie after the start of a cue, not before it; write cue NAME +0.5, or words "as said"',
    );
  }
  const written = match?.[2];
  const plus = written === undefined ? zero : secondsOf(written);
  if (plus !== undefined) return { ok: true, time: { kind: 'cue', cue, plus } };
  const at = text.lastIndexOf(written!);
  return fault('not-a-time', at, written!.length, `"${written}" is no number of seconds; write cue ${cue} +0.5`);
}

const quotes = /^words(\s+\S+)?\s*(["“”„])([^"“”]*)["“”](.*)$/is;

function readWords(text: string, { rate }: TimeReading): ReadTime<Time> {
  const match = quotes.exec(text);
  if (match === null) {
    return fault(
      'not-a-time',
      0,
      text.length,
      `${text} has no words between double quotes; write words "as they are said"`,
    );
  }
  const [, number = '', , words = '', rest = ''] = match;
  const occurrence = readOccurrence(text, number);
  if (!occurrence.ok) return occurrence;
  if (!/[\p{L}\p{N}]/u.test(words)) {
    const at = text.search(/["“”„]/);
    return fault(
      'not-a-time',
      at,
      words.length + 2,
      'nothing is said between these quotes; write words "as they are said"',
    );
  }
  const fallback = readFallback(text, rest, rate);
  if (!fallback.ok) return fallback;
  return { ok: true, time: { kind: 'words', words, occurrence: occurrence.time, fallback: fallback.time } };
}

/** The number before the words: 1 where none is written. */
function readOccurrence(text: string, written: string): ReadTime<number> {
  const number = written.trim();
  if (number === '') return { ok: true, time: 1 };
  if (/^[1-9]\d{0,3}$/.test(number)) return { ok: true, time: Number(number) };
  return fault(
    'not-a-time',
    text.indexOf(number, 5),
    number.length,
    `"${number}" does not count places; write words 2 "..." for the second`,
  );
}

/** What stands after the words: nothing, or `or 4:12`. */
function readFallback(text: string, rest: string, rate: Fraction | undefined): ReadTime<AbsoluteTime | undefined> {
  if (rest.trim() === '') return { ok: true, time: undefined };
  const at = text.length - rest.trimStart().length;
  const match = /^\s*or\s+(.*)$/is.exec(rest);
  if (match === null) {
    return fault(
      'not-a-time',
      at,
      rest.trim().length,
      `"${rest.trim()}" stands after the words; only a time to fall back on may: words "..." or 4:12`,
    );
  }
  const written = match[1]!.trim();
  if (/^(cue|words|\+)/i.test(written)) {
    return fault(
      'time-form',
      text.length - match[1]!.length,
      written.length,
      `this time is there to fall back on, so it is ${fixedForms}`,
    );
  }
  const reading = readAbsolute(written, { rate, forms: 'fixed' });
  if (reading.ok) return reading;
  return { ok: false, fault: { ...reading.fault, at: text.length - match[1]!.length } };
}

function fault(
  code: Code,
  at: number,
  length: number,
  message: string,
): { readonly ok: false; readonly fault: TimeFault } {
  return { ok: false, fault: { code, at, length, message } };
}
