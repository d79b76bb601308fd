/**
 * Everything about a kind of time, in one record: how its text is read, what it depends on, and which moment it means
 * on a clock. The kinds are distinguished in `anchors.ts`.
 */

import type { AbsoluteTime, Timecode } from './anchor-absolute.ts';
import type { Code } from './codes.ts';
import type { Fraction } from './fraction.ts';

export interface Anchor<T> {
  /** How it is written, for messages; the first is suggested if its word was misspelt. */
  readonly examples: readonly [string, ...string[]];
  /** What an editor suggests to begin with. */
  readonly samples: readonly string[];
  /** The word that it begins with, if there is one. */
  readonly word: string | undefined;
  readonly dependsOn: readonly Dependency[];
  /** A text without surrounding spaces; undefined if it is not meant for this kind. No text is meant for two. */
  read(text: string, reading: AnchorReading): ReadTime<T> | undefined;
  /** The moment that it means, not compared with other times or the video's end. */
  resolve(time: T, clock: Clock, place: Place): Resolved;
  /** The time itself if it is absolute, or the absolute time that it falls back on. */
  absolutePart(time: T): AbsoluteTime | undefined;
  /** Why it cannot be resolved anywhere in the lesson; undefined if another place might work. */
  whyNowhere(time: T, clock: Clock): string | undefined;
}

/**
 * What the moment of a time depends on apart from the clock's rate and first label: the narration; or, from the place
 * of the time, the `base` that it counts from, the time `before` it, or the one after it that is its `bound`.
 */
export type Dependency = keyof typeof isOfPlace;

/** Whether a dependency differs from place to place in the lesson. */
export const isOfPlace = { narration: false, base: true, before: true, bound: true } as const;

/** A fault in a time: its place in the text, in UTF-16 units. */
export interface TimeFault {
  readonly code: Code;
  readonly at: number;
  readonly length: number;
  readonly message: string;
}

export type ReadTime<T> = { readonly ok: true; readonly time: T } | { readonly ok: false; readonly fault: TimeFault };

/** What a kind needs to read its text. */
export interface AnchorReading {
  /** Frames a second, to check timecodes against; undefined if the scene's rate could not be read. */
  readonly rate: Fraction | undefined;
  /** Reads a time to fall back on; places of faults are counted from the start of that text. */
  readFallback(text: string): ReadTime<AbsoluteTime>;
}

/** What times are counted and looked up on. */
export interface Clock {
  readonly rate: Fraction;
  /** The label of the first frame; undefined if the scene does not say. */
  readonly firstLabel: Timecode | undefined;
  /** `unread`: the scene names a narration that could not be read, which the reader of files has reported. */
  readonly narration: SpokenCues | 'none' | 'unread';
  /** The frame nearest to a time. */
  frameOf(seconds: Fraction): number;
  timeOf(frame: number): Fraction;
  /** When a frame is first shown, in the notation of the language. */
  print(frame: number): string;
  /** Every place where the words are spoken, in order. */
  find(words: string): readonly Spoken[];
  /** The place where the sentence is spoken with a few words changed. */
  alike(sentence: string, within: Within): Spoken | undefined;
  /** The words most like these. */
  nearest(words: string, within: Within): Spoken | undefined;
}

/** The cues of a narration, in order of time. */
export interface SpokenCues {
  /** The file's name, for messages. */
  readonly name: string;
  readonly cues: readonly {
    readonly identifier: string | undefined;
    /** Its place in the file, from 1. */
    readonly number: number;
    readonly start: Fraction;
  }[];
}

/** A place where something is said. */
export interface Spoken {
  /** When its first word begins, in seconds. */
  readonly seconds: Fraction;
  /** As in the narration, white space as single spaces. */
  readonly text: string;
}

/** Among the words that begin at or after `from` and before `until`, in seconds, if these are given. */
export interface Within {
  readonly from?: Fraction;
  readonly until?: Fraction;
}

/** The place of a time among others. */
export interface Place {
  /** What `+1.5` is counted from, in seconds. */
  readonly base: Fraction;
  /** Words are searched for from this frame on: that of the previous step or beat. */
  readonly notBefore: number;
  /** Words from this frame on are too late, if that is known beforehand. */
  readonly until: number | undefined;
}

/** `fault` is undefined if it has been reported elsewhere. */
export type Resolved =
  | {
      readonly ok: true;
      /** From the start of the video, exactly. */
      readonly seconds: Fraction;
      /** Places where the same words are spoken later, if the time was given by words without a number. */
      readonly again: readonly Spoken[];
    }
  | { readonly ok: false; readonly fault: { readonly code: Code; readonly message: string } | undefined };

export function fault(
  code: Code,
  at: number,
  length: number,
  message: string,
): { readonly ok: false; readonly fault: TimeFault } {
  return { ok: false, fault: { code, at, length, message } };
}

export function resolved(seconds: Fraction, again: readonly Spoken[] = []): Resolved {
  return { ok: true, seconds, again };
}

export function unresolved(code: Code, message: string): Resolved {
  return { ok: false, fault: { code, message } };
}
