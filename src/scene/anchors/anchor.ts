/**
 * What there is to know about a kind of time, in one record: how its text is read, what it depends on, and which moment
 * it means on a clock. The kinds are told apart in `anchors.ts`.
 */
import type { Code } from '../codes.ts';
import type { Fraction } from '../fraction.ts';
import type { AbsoluteTime, Timecode } from './absolute.ts';

export interface Anchor<T> {
  /** How it is written, for messages; the first is offered where its word was misspelt. */
  readonly examples: readonly [string, ...string[]];
  /** What an editor offers to begin with. */
  readonly samples: readonly string[];
  /** The word that it begins with, where there is one. */
  readonly word: string | undefined;
  readonly dependsOn: readonly Dependency[];
  /** A text without blanks around it; undefined where it is not meant for this kind. No text is meant for two. */
  read(text: string, reading: AnchorReading): ReadTime<T> | undefined;
  /** The moment that it means, not held against other times or the video's end. */
  resolve(time: T, clock: Clock, place: Place): Resolved;
  /** The time itself where it is absolute, or the absolute time that it falls back on. */
  absolutePart(time: T): AbsoluteTime | undefined;
  /** Why it can be resolved at no place of the lesson at all; undefined where another place might do. */
  whyNowhere(time: T, clock: Clock): string | undefined;
}

/**
 * What the moment of a time depends on besides the clock's rate and first label: the narration; or, of the place where
 * the time stands, the `base` that it counts from, the time `before` it, or the one after it that is its `bound`.
 */
export type Dependency = keyof typeof isOfPlace;

/** Whether a dependency is another one at another place of the lesson. */
export const isOfPlace = { narration: false, base: true, before: true, bound: true } as const;

/** A fault in a time: where it lies in the text, in UTF-16 units. */
export interface TimeFault {
  readonly code: Code;
  readonly at: number;
  readonly length: number;
  readonly message: string;
}

export type ReadTime<T> = { readonly ok: true; readonly time: T } | { readonly ok: false; readonly fault: TimeFault };

/** What a kind is handed to read its text with. */
export interface AnchorReading {
  /** Frames a second, to check timecodes against; undefined where the scene's rate could not be read. */
  readonly rate: Fraction | undefined;
  /** Reads a time to fall back on; places of faults are counted from the start of that text. */
  readFallback(text: string): ReadTime<AbsoluteTime>;
}

/** What times are counted and looked up on. */
export interface Clock {
  readonly rate: Fraction;
  /** What the first frame is called; undefined where the scene does not say. */
  readonly firstLabel: Timecode | undefined;
  /** `unread`: the scene names a narration that could not be read, which whoever reads files has reported. */
  readonly narration: SpokenCues | 'none' | 'unread';
  /** The frame nearest to a time. */
  frameOf(seconds: Fraction): number;
  timeOf(frame: number): Fraction;
  /** When a frame is first shown, as the language writes times. */
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
  /** As it stands in the narration, white space as single blanks. */
  readonly text: string;
}

/** Among the words that begin from `from` on and before `until`, in seconds, where these are given. */
export interface Within {
  readonly from?: Fraction;
  readonly until?: Fraction;
}

/** Where a time stands among others. */
export interface Place {
  /** What `+1.5` is counted from, in seconds. */
  readonly base: Fraction;
  /** Words are looked for from this frame on: that of the step or beat before. */
  readonly notBefore: number;
  /** Words from this frame on are too late, where that is known beforehand. */
  readonly until: number | undefined;
}

/** `fault` is undefined where it has been reported elsewhere. */
export type Resolved =
  | {
      readonly ok: true;
      /** From the start of the video, exactly. */
      readonly seconds: Fraction;
      /** Places where the same words are spoken later, where the time was given by words without a number. */
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
