/**
 * A cue of a narration: what is said between two times, with its words.
 */
import type { Fraction } from '../scene/fraction.ts';

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
   * Its own timestamp, in seconds; undefined if the narration has none for it. Never earlier than that of a previous
   * word.
   */
  readonly start: Fraction | undefined;
  /** `cue.text.slice(from, to)` is the word. */
  readonly from: number;
  readonly to: number;
}

/** Something in the narration that was not used, or not used as written. */
export interface NarrationFault {
  /** From 1. */
  readonly line: number;
  /** What was found, then what would be right. */
  readonly message: string;
}

/** What a reader makes of a text. */
export interface CuesRead {
  readonly cues: readonly Cue[];
  readonly faults: readonly NarrationFault[];
}
