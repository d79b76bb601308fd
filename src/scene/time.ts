/**
 * A text read as a time (section 6 of the language), of the kinds allowed at its place. What each kind looks like is in
 * `anchors.ts`.
 */

import { type AnchorReading, type Dependency, fault, type ReadTime } from './anchor.ts';
import type { AbsoluteTime } from './anchor-absolute.ts';
import { dependenciesOf, isAbsolute, readAnchor, type Time, timeKinds } from './anchors.ts';
import type { Fraction } from './fraction.ts';
import { nearestWords } from './nearest-word.ts';

/** `fixed`: depends on nothing; `unanchored`: any except `+1.5`, for places with nothing to count from; `any`. */
export type TimeForms = 'fixed' | 'unanchored' | 'any';

export interface TimeReading {
  /** Frames a second, to check timecodes against; undefined if the scene's rate could not be read. */
  readonly rate: Fraction | undefined;
  readonly forms: TimeForms;
}

/** A time of the allowed forms, surrounding spaces ignored. */
export function readTime(text: string, { rate, forms }: TimeReading): ReadTime<Time> {
  const trimmed = text.trim();
  const at = text.indexOf(trimmed);
  const reading = readTrimmed(trimmed, rate, forms);
  if (!reading.ok) return { ok: false, fault: { ...reading.fault, at: reading.fault.at + at } };
  const refused = whyNotOf(dependenciesOf(reading.time), forms);
  return refused === undefined ? reading : fault('time-form', at, trimmed.length, refused);
}

/** A time that depends on nothing else. */
export function readFixedTime(text: string, rate: Fraction | undefined): ReadTime<AbsoluteTime> {
  const reading = readTime(text, { rate, forms: 'fixed' });
  if (!reading.ok) return reading;
  if (isAbsolute(reading.time)) return { ok: true, time: reading.time };
  return fault('time-form', 0, text.length, needsFixed);
}

function readTrimmed(text: string, rate: Fraction | undefined, forms: TimeForms): ReadTime<Time> {
  return readAnchor(text, readingAt(rate)) ?? fault('not-a-time', 0, text.length, whyNotATime(text, forms));
}

function readingAt(rate: Fraction | undefined): AnchorReading {
  return { rate, readFallback: (text) => readFallback(text, rate) };
}

function readFallback(text: string, rate: Fraction | undefined): ReadTime<AbsoluteTime> {
  const begins = text.toLowerCase();
  const hasWord = timeKinds.some(({ word }) => word !== undefined && begins.startsWith(word));
  if (hasWord || text.startsWith('+'))
    return fault('time-form', 0, text.length, `this time is there to fall back on, so it is ${fixedForms}`);
  return readFixedTime(text, rate);
}

function whyNotOf(dependsOn: readonly Dependency[], forms: TimeForms): string | undefined {
  if (forms === 'any' || dependsOn.length === 0) return undefined;
  if (dependsOn.includes('base'))
    return 'a + counts from a step, and there is none to count from here; leave it out for a time from the start of the video';
  return forms === 'fixed' ? needsFixed : undefined;
}

/** What a message suggests, by the place of the time. */
function offeredIn(forms: TimeForms): readonly string[] {
  return timeKinds
    .filter(({ dependsOn }) => whyNotOf(dependsOn, forms) === undefined)
    .flatMap(({ examples }) => examples);
}

const fixedExamples = timeKinds.filter(({ dependsOn }) => dependsOn.length === 0).flatMap(({ examples }) => examples);
const fixedForms = `${fixedExamples.slice(0, -1).join(', ')} or ${fixedExamples.at(-1)}`;
const needsFixed = `this time must not depend on the narration; it is ${fixedForms}`;

function whyNotATime(text: string, forms: TimeForms): string {
  if (text.startsWith('-')) return `"${text}" is before the start; times do not go back`;
  const seconds = /^(\d+)(?:[.,](\d+))?\s*(?:s|sec|secs|seconds?)?$/i.exec(text);
  if (seconds !== null)
    return `"${text}" is not a time; write ${seconds[1]}${seconds[2] === undefined ? '' : `.${seconds[2]}`}`;
  const [word = ''] = text.split(/\s/);
  const [near] = nearestWords(
    word,
    timeKinds.flatMap((each) => each.word ?? []),
  );
  const meant = timeKinds.find((each) => near !== undefined && each.word === near);
  if (meant !== undefined) return `"${text}" is not a time; did you mean ${meant.examples[0]}?`;
  if (/^\d+(:\d+)+([.;,]\d+)?$/.test(text)) {
    return `"${text}" is not a time; minutes and seconds have two digits and stay below 60 (1:02, 1:00:02.5), and a timecode has four pairs (01:00:02:12)`;
  }
  if (forms === 'fixed') return `"${text}" is not a time; here a time is ${fixedForms}`;
  const offered = offeredIn(forms);
  return `"${text}" is not a time; here a time is ${offered.slice(0, -1).join(', ')}, or ${offered.at(-1)}`;
}
