/**
 * The kinds of times (section 6 of the language). A kind is a member of `TimeKinds` and its record in `anchors`; one
 * without the other does not compile.
 */

import {
  type Anchor,
  type AnchorReading,
  type Clock,
  type Dependency,
  isOfPlace,
  type Place,
  type ReadTime,
  type Resolved,
} from './anchor.ts';
import {
  type AbsoluteTime,
  type SecondsTime,
  secondsAnchor,
  type TimecodeTime,
  timecodeAnchor,
} from './anchor-absolute.ts';
import { type AfterTime, afterAnchor } from './anchor-after.ts';
import { type CueTime, cueAnchor } from './anchor-cue.ts';
import { type WordsTime, wordsAnchor } from './anchor-words.ts';

interface TimeKinds {
  readonly seconds: SecondsTime;
  readonly timecode: TimecodeTime;
  readonly after: AfterTime;
  readonly cue: CueTime;
  readonly words: WordsTime;
}

type Kind = keyof TimeKinds;
type TimeOf<K extends Kind> = { readonly [Each in K]: TimeKinds[Each] & { readonly kind: Each } }[K];

/** A time as a scene gives it. */
export type Time = TimeOf<Kind>;

/** A time that depends on the narration, or on its place in the lesson. */
export type DependentTime = Exclude<Time, AbsoluteTime>;

/** In the order in which messages offer them. */
const anchors: { readonly [K in Kind]: Anchor<TimeOf<K>> } = {
  seconds: secondsAnchor,
  timecode: timecodeAnchor,
  after: afterAnchor,
  cue: cueAnchor,
  words: wordsAnchor,
};

/** What all times of a kind share. */
export const timeKinds: readonly Pick<Anchor<Time>, 'examples' | 'samples' | 'word' | 'dependsOn'>[] =
  Object.values(anchors);

/** A text without surrounding spaces, as the kind that it is meant for; undefined if there is none. */
export function readAnchor(text: string, reading: AnchorReading): ReadTime<Time> | undefined {
  for (const anchor of Object.values(anchors)) {
    const read = anchor.read(text, reading);
    if (read !== undefined) return read;
  }
  return undefined;
}

export function dependenciesOf({ kind }: Time): readonly Dependency[] {
  return anchors[kind].dependsOn;
}

/** Whether the time depends on nothing, and so can be moved, or used where nothing else is available. */
export function isAbsolute(time: Time): time is AbsoluteTime {
  return dependenciesOf(time).length === 0;
}

/** Whether the moment is the same at any place in the lesson. */
export function isSameEverywhere(time: Time): boolean {
  return !dependenciesOf(time).some((each) => isOfPlace[each]);
}

export function resolveTime<K extends Kind>(time: TimeOf<K>, clock: Clock, place: Place): Resolved {
  const anchor: Anchor<TimeOf<K>> = anchors[time.kind];
  return anchor.resolve(time, clock, place);
}

export function absolutePart<K extends Kind>(time: TimeOf<K>): AbsoluteTime | undefined {
  const anchor: Anchor<TimeOf<K>> = anchors[time.kind];
  return anchor.absolutePart(time);
}

export function whyNowhere<K extends Kind>(time: TimeOf<K>, clock: Clock): string | undefined {
  const anchor: Anchor<TimeOf<K>> = anchors[time.kind];
  return anchor.whyNowhere(time, clock);
}
