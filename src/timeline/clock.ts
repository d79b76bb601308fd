/**
 * The clock of a scene: its rate, its first label and what is spoken; and the moments that times mean on it.
 */
import type { Clock, Place, Spoken } from '../scene/anchor.ts';
import { resolveTime, type Time } from '../scene/anchors.ts';
import type { Code } from '../scene/codes.ts';
import { type Fraction, zero } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import type { Frame } from './film.ts';
import type { Narration } from './narration.ts';
import { findAlike, findPhrase, nearestSpoken, spokenText } from './phrases.ts';
import { frameAtTime, printFrame, timeOfFrame } from './seconds.ts';

/** The clock of a scene. `narration` is undefined if the scene names none, or one that could not be read. */
export function clockOf(scene: TimedScene, narration: Narration | undefined): Clock {
  const { rate, timecode } = scene.video;
  const spoken = spokenText(narration ?? { name: '', cues: [] });
  const found = new Map<string, readonly Spoken[]>();
  return {
    ...silentClock(rate),
    firstLabel: timecode?.value,
    narration: narration ?? (scene.video.narration === undefined ? 'none' : 'unread'),
    find(words) {
      const places = found.get(words) ?? findPhrase(spoken, words);
      found.set(words, places);
      return places;
    },
    alike: (sentence, within) => findAlike(spoken, sentence, within),
    nearest: (words, within) => nearestSpoken(spoken, words, within),
  };
}

/** A clock on which nothing is spoken, and timecodes count from 00:00:00:00. */
export function silentClock(rate: Fraction): Clock {
  return {
    rate,
    firstLabel: undefined,
    narration: 'none',
    frameOf: (seconds) => frameAtTime(rate, seconds),
    timeOf: (frame) => timeOfFrame(rate, frame),
    print: (frame) => printFrame(rate, frame),
    find: () => [],
    alike: () => undefined,
    nearest: () => undefined,
  };
}

/** A time resolved. */
export interface Moment {
  /** From the start of the video, exactly. */
  readonly seconds: Fraction;
  /** The nearest frame. */
  readonly frame: Frame;
  /** Places where the same words are spoken later, if the time was given by words without a number. */
  readonly again: readonly Spoken[];
}

/** `fault` is undefined if it has been reported elsewhere. */
export type MomentFound =
  | { readonly ok: true; readonly moment: Moment }
  | { readonly ok: false; readonly fault: { readonly code: Code; readonly message: string } | undefined };

/** The place of a time whose meaning does not depend on its place. */
export const anywhere: Place = { base: zero, notBefore: 0, until: undefined };

/** The moment that a time means at its place. It is not compared with other times, nor with the video's end. */
export function momentOf(clock: Clock, time: Time, place: Place): MomentFound {
  const found = resolveTime(time, clock, place);
  if (!found.ok) return found;
  const { seconds, again } = found;
  return { ok: true, moment: { seconds, frame: frameAtTime(clock.rate, seconds), again } };
}
