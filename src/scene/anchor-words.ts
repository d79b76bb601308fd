/**
 * `words "as said"`, `words 2 "as said"`, `words "as said" or 4:12`: where the narration speaks these words, after the
 * previous time; or, if it does not, a time to fall back on.
 */

import {
  type Anchor,
  type AnchorReading,
  type Clock,
  fault,
  type Place,
  type ReadTime,
  type Resolved,
  resolved,
  type Spoken,
  unresolved,
} from './anchor.ts';
import { type AbsoluteTime, secondsAnchor, timecodeAnchor } from './anchor-absolute.ts';

export interface WordsTime {
  readonly kind: 'words';
  readonly words: string;
  /** 1 for the first place after the previous step or beat. */
  readonly occurrence: number;
  readonly fallback: AbsoluteTime | undefined;
}

export const wordsAnchor: Anchor<WordsTime> = {
  examples: ['words "as said"'],
  samples: ['words "either here or here"'],
  word: 'words',
  dependsOn: ['narration', 'before', 'bound'],
  read: (text, reading) => (/^words\b/i.test(text) ? readWords(text, reading) : undefined),
  resolve: resolveWords,
  absolutePart: ({ fallback }) => fallback,
  whyNowhere,
};

function resolveWords(time: WordsTime, clock: Clock, place: Place): Resolved {
  const places = clock.find(time.words);
  const fromHere = places.filter(({ seconds }) => clock.frameOf(seconds) >= place.notBefore);
  const spoken = fromHere[time.occurrence - 1];
  const isTooLate = spoken !== undefined && place.until !== undefined && clock.frameOf(spoken.seconds) >= place.until;
  if (spoken !== undefined && !isTooLate)
    return resolved(spoken.seconds, time.occurrence === 1 ? fromHere.slice(1) : []);
  const { fallback } = time;
  if (fallback?.kind === 'seconds') return secondsAnchor.resolve(fallback, clock, place);
  if (fallback?.kind === 'timecode') return timecodeAnchor.resolve(fallback, clock, place);
  if (clock.narration === 'unread') return { ok: false, fault: undefined };
  if (clock.narration === 'none') {
    const message = `words "${time.words}" need a narration; name one in video (narration: talk.vtt), or give a time to fall back on (words "..." or 4:12)`;
    return unresolved('no-narration', message);
  }
  return unresolved('phrase-not-found', whyNotHere(time, clock, place, places));
}

/** The message about words that the narration does not have, wherever they are searched for. */
function whyNowhere(time: WordsTime, clock: Clock): string | undefined {
  if (typeof clock.narration === 'string') return undefined;
  const places = clock.find(time.words);
  if (places.length >= time.occurrence) return undefined;
  const said = `"${time.words}" is not spoken${howOften(time)} in ${clock.narration.name}`;
  if (places.length > 0) return `${said}; it is spoken at ${places.map((each) => printStart(each, clock)).join(', ')}`;
  const near = clock.nearest(time.words, {});
  return near === undefined
    ? `${said}, which has no words at all`
    : `${said}; the nearest words are "${near.text}" at ${printStart(near, clock)}`;
}

function whyNotHere(time: WordsTime, clock: Clock, { notBefore, until }: Place, places: readonly Spoken[]): string {
  const from = clock.print(notBefore);
  const range = until === undefined ? `from ${from} on` : `between ${from} and ${clock.print(until)}`;
  const within = { from: clock.timeOf(notBefore), ...(until === undefined ? {} : { until: clock.timeOf(until) }) };
  const here = places.filter(({ seconds }) => {
    const frame = clock.frameOf(seconds);
    return frame >= notBefore && (until === undefined || frame < until);
  });
  const said = `"${time.words}" is not spoken${howOften(time)} ${range}, where this time must lie`;
  if (here.length > 0)
    return `${said}, but ${here.length === 1 ? 'once' : `${here.length} times`}, first at ${printStart(here[0]!, clock)}`;
  if (places.length > 0) {
    const some = places.slice(0, 3).map((each) => printStart(each, clock));
    return `${said}; it is spoken at ${some.join(', ')}`;
  }
  const near = clock.nearest(time.words, within) ?? clock.nearest(time.words, {});
  return near === undefined
    ? `${said}; the narration has no words at all`
    : `${said}; the nearest words are "${near.text}" at ${printStart(near, clock)}`;
}

function howOften({ occurrence }: WordsTime): string {
  return occurrence === 1 ? '' : ` ${occurrence} times`;
}

function printStart({ seconds }: Spoken, clock: Clock): string {
  return clock.print(clock.frameOf(seconds));
}

const quotes = /^words(\s+\S+)?\s*(["“”„])([^"“”]*)["“”](.*)$/is;

function readWords(text: string, reading: AnchorReading): ReadTime<WordsTime> {
  const match = quotes.exec(text);
  if (match === null) {
    const message = `${text} has no words between double quotes; write words "as they are said"`;
    return fault('not-a-time', 0, text.length, message);
  }
  const [, number = '', , words = '', rest = ''] = match;
  const occurrence = readOccurrence(text, number);
  if (!occurrence.ok) return occurrence;
  if (!/[\p{L}\p{N}]/u.test(words)) {
    const message = 'nothing is said between these quotes; write words "as they are said"';
    return fault('not-a-time', text.search(/["“”„]/), words.length + 2, message);
  }
  const fallback = readRest(text, rest, reading);
  if (!fallback.ok) return fallback;
  return { ok: true, time: { kind: 'words', words, occurrence: occurrence.time, fallback: fallback.time } };
}

/** The number before the words: 1 if none is written. */
function readOccurrence(text: string, written: string): ReadTime<number> {
  const number = written.trim();
  if (number === '') return { ok: true, time: 1 };
  if (/^[1-9]\d{0,3}$/.test(number)) return { ok: true, time: Number(number) };
  const message = `"${number}" does not count places; write words 2 "..." for the second`;
  return fault('not-a-time', text.indexOf(number, 5), number.length, message);
}

/** What follows the words: nothing, or `or 4:12`. */
function readRest(text: string, rest: string, reading: AnchorReading): ReadTime<AbsoluteTime | undefined> {
  if (rest.trim() === '') return { ok: true, time: undefined };
  const at = text.length - rest.trimStart().length;
  const match = /^\s*or\s+(.*)$/is.exec(rest);
  if (match === null) {
    const message = `"${rest.trim()}" follows the words; only a time to fall back on may: words "..." or 4:12`;
    return fault('not-a-time', at, rest.trim().length, message);
  }
  const read = reading.readFallback(match[1]!.trim());
  if (read.ok) return read;
  return { ok: false, fault: { ...read.fault, at: text.length - match[1]!.length + read.fault.at } };
}
