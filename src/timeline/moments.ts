/**
 * What a written time means: the exact moment, or why there is none. Section 6 of the language.
 */
import type { Code } from '../scene/codes.ts';
import { add, type Fraction } from '../scene/fraction.ts';
import { didYouMean } from '../scene/nearest-word.ts';
import type { AbsoluteTime, Time, Timecode, TimedScene } from '../scene/scene.ts';
import { printLabel } from '../scene/timecode-label.ts';
import type { Cue } from './cue.ts';
import type { Frame } from './film.ts';
import type { Narration } from './narration.ts';
import { findAlike, findPhrase, nearestSpoken, type Spoken, spokenText } from './phrases.ts';
import { frameAtTime, printFrame, timeOfFrame } from './seconds.ts';
import { framesOfLabel, framesPerDay } from './timecode.ts';

/** What times are counted and looked up on. */
export interface Clock {
  readonly rate: Fraction;
  /** What the first frame is called; undefined where the scene does not say. */
  readonly firstLabel: Timecode | undefined;
  /** `unread`: the scene names a narration that could not be read, which whoever reads files has reported. */
  readonly narration: Narration | 'none' | 'unread';
  /** Every place where the words are spoken, in order. */
  find(words: string): readonly Spoken[];
  /** The place where the sentence is spoken with a few words changed, from `from` on and before `until`. */
  alike(sentence: string, within: { readonly from?: Fraction; readonly until?: Fraction }): Spoken | undefined;
  /** The words most like these, from `from` on and before `until`. */
  nearest(words: string, within: { readonly from?: Fraction; readonly until?: Fraction }): Spoken | undefined;
}

/** Where a time stands among others. */
export interface Anchor {
  /** What `+1.5` is counted from, in seconds. */
  readonly base: Fraction;
  /** Words are looked for from this frame on: that of the step or beat before. */
  readonly notBefore: Frame;
  /** Words from this frame on are too late, where that is known beforehand. */
  readonly until: Frame | undefined;
}

export interface Moment {
  /** From the start of the video, exactly. */
  readonly seconds: Fraction;
  /** The nearest frame. */
  readonly frame: Frame;
  /** Places where the same words are spoken later, where the time was given by words without a number. */
  readonly again: readonly Spoken[];
}

export interface MomentFault {
  readonly code: Code;
  readonly message: string;
}

/** `fault` is undefined where it has been reported elsewhere. */
export type MomentFound =
  | { readonly ok: true; readonly moment: Moment }
  | { readonly ok: false; readonly fault: MomentFault | undefined };

/** The clock of a scene, with what is spoken in it. */
export function clockOf(scene: TimedScene, narration: Narration | undefined): Clock {
  const spoken = spokenText(narration ?? { name: '', cues: [] });
  const found = new Map<string, readonly Spoken[]>();
  return {
    rate: scene.video.rate,
    firstLabel: scene.video.timecode?.value,
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

/** The moment that a time means. It is not compared with other times, nor with the video's end. */
export function momentOf(clock: Clock, time: Time, anchor: Anchor): MomentFound {
  switch (time.kind) {
    case 'seconds':
    case 'timecode':
      return fixedMoment(clock, time);
    case 'after':
      return momentAt(clock, add(anchor.base, time.seconds));
    case 'cue':
      return cueMoment(clock, time.cue, time.plus);
    case 'words':
      return wordsMoment(clock, time, anchor);
    default:
      return time satisfies never;
  }
}

/**
 * The moment of a time that hangs on nothing else. A timecode counts from what the first frame is called: with
 * `01:00:00:00` there, `01:00:02:12` at 25 is frame 62. A label more than twelve hours below the first one lies after
 * midnight.
 */
export function fixedMoment(clock: Clock, time: AbsoluteTime): MomentFound {
  if (time.kind === 'seconds') return momentAt(clock, time.seconds);
  const first =
    clock.firstLabel === undefined ? { ok: true as const, frames: 0 } : framesOfLabel(clock.firstLabel, clock.rate);
  const label = framesOfLabel(time.timecode, clock.rate);
  if (!label.ok) return { ok: false, fault: label };
  // That of the first frame has been reported with it.
  if (!first.ok) return { ok: false, fault: undefined };
  const day = framesPerDay(clock.rate, time.timecode);
  const ahead = label.frames - first.frames;
  const frames = ahead < -day / 2 ? ahead + day : ahead;
  if (frames >= 0) return momentAt(clock, timeOfFrame(clock.rate, frames));
  const message = `${printLabel(time.timecode)} lies before the video's first frame, which is called ${printLabel(clock.firstLabel!)}; timecodes count from there`;
  return { ok: false, fault: { code: 'time-before-start', message } };
}

function momentAt(clock: Clock, seconds: Fraction, again: readonly Spoken[] = []): MomentFound {
  return { ok: true, moment: { seconds, frame: frameAtTime(clock.rate, seconds), again } };
}

function cueMoment(clock: Clock, name: string, plus: Fraction): MomentFound {
  if (clock.narration === 'unread') return { ok: false, fault: undefined };
  if (clock.narration === 'none') {
    const message = `cue ${name} needs a narration; name one in video (narration: talk.vtt), or give the time itself (12.5, 1:02)`;
    return { ok: false, fault: { code: 'no-narration', message } };
  }
  const cue = findCue(clock.narration, name);
  if (cue !== undefined) return momentAt(clock, add(cue.start, plus));
  return { ok: false, fault: { code: 'cue-not-found', message: whyNoCue(clock.narration, name) } };
}

/** By identifier, else by number; of several with one identifier, the first in the file. */
function findCue({ cues }: Narration, name: string): Cue | undefined {
  const named = cues.filter((cue) => cue.identifier === name).sort((a, b) => a.number - b.number);
  return named[0] ?? cues.find((cue) => String(cue.number) === name);
}

function whyNoCue({ name: file, cues }: Narration, name: string): string {
  const identifiers = cues.flatMap((cue) => (cue.identifier === undefined ? [] : [cue.identifier]));
  const near = didYouMean(name, identifiers);
  if (near !== '') return `${file} has no cue "${name}"${near}`;
  if (cues.length === 0) return `${file} has no cue at all, so none "${name}"`;
  const some = identifiers.slice(0, 5).map((identifier) => `"${identifier}"`);
  const known =
    some.length === 0 ? 'none has a name' : `named ${some.join(', ')}${identifiers.length > 5 ? ' and so on' : ''}`;
  return `${file} has no cue "${name}"; it has ${cues.length}, numbered from 1, ${known}`;
}

type WordsTime = Extract<Time, { readonly kind: 'words' }>;

function wordsMoment(clock: Clock, time: WordsTime, anchor: Anchor): MomentFound {
  const places = clock.find(time.words);
  const fromHere = places.filter((place) => frameAtTime(clock.rate, place.seconds) >= anchor.notBefore);
  const place = fromHere[time.occurrence - 1];
  const tooLate =
    place !== undefined && anchor.until !== undefined && frameAtTime(clock.rate, place.seconds) >= anchor.until;
  if (place !== undefined && !tooLate) {
    return momentAt(clock, place.seconds, time.occurrence === 1 ? fromHere.slice(1) : []);
  }
  if (time.fallback !== undefined) return fixedMoment(clock, time.fallback);
  if (clock.narration === 'unread') return { ok: false, fault: undefined };
  if (clock.narration === 'none') {
    const message = `words "${time.words}" need a narration; name one in video (narration: talk.vtt), or give a time to fall back on (words "..." or 4:12)`;
    return { ok: false, fault: { code: 'no-narration', message } };
  }
  return { ok: false, fault: { code: 'phrase-not-found', message: whyNotSpoken(clock, time, anchor, places) } };
}

/** What is said of words that the narration does not have, wherever they are looked for; undefined where it has them. */
export function whySpokenNowhere(clock: Clock, time: Time | undefined): string | undefined {
  if (time?.kind !== 'words' || typeof clock.narration === 'string') return undefined;
  const places = clock.find(time.words);
  if (places.length >= time.occurrence) return undefined;
  const at = (spoken: Spoken) => printFrame(clock.rate, frameAtTime(clock.rate, spoken.seconds));
  const which = time.occurrence === 1 ? '' : ` ${time.occurrence} times`;
  const said = `"${time.words}" is not spoken${which} in ${clock.narration.name}`;
  if (places.length > 0) return `${said}; it is spoken at ${places.map(at).join(', ')}`;
  const near = clock.nearest(time.words, {});
  return near === undefined
    ? `${said}, which has no words at all`
    : `${said}; the nearest words are "${near.text}" at ${at(near)}`;
}

function whyNotSpoken(clock: Clock, time: WordsTime, anchor: Anchor, places: readonly Spoken[]): string {
  const at = (spoken: Spoken) => printFrame(clock.rate, frameAtTime(clock.rate, spoken.seconds));
  const from = printFrame(clock.rate, anchor.notBefore);
  const range =
    anchor.until === undefined ? `from ${from} on` : `between ${from} and ${printFrame(clock.rate, anchor.until)}`;
  const within = {
    from: timeOfFrame(clock.rate, anchor.notBefore),
    ...(anchor.until === undefined ? {} : { until: timeOfFrame(clock.rate, anchor.until) }),
  };
  const here = places.filter((place) => {
    const frame = frameAtTime(clock.rate, place.seconds);
    return frame >= anchor.notBefore && (anchor.until === undefined || frame < anchor.until);
  });
  const which = time.occurrence === 1 ? '' : ` ${time.occurrence} times`;
  const said = `"${time.words}" is not spoken${which} ${range}, where this time must lie`;
  if (here.length > 0)
    return `${said}, but ${here.length === 1 ? 'once' : `${here.length} times`}, first at ${at(here[0]!)}`;
  if (places.length > 0) return `${said}; it is spoken at ${places.slice(0, 3).map(at).join(', ')}`;
  const near = clock.nearest(time.words, within) ?? clock.nearest(time.words, {});
  return near === undefined
    ? `${said}; the narration has no words at all`
    : `${said}; the nearest words are "${near.text}" at ${at(near)}`;
}
