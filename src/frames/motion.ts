/**
 * When a thing comes, stays and goes. Everything comes from its first frame on, with ink on that frame, and has faded
 * out by its end: nothing of it is left on frame `until`.
 */

import { paintings, secondsToCome } from '../marks/paintings.ts';
import type { Ink } from '../picture/ink.ts';
import type { Look } from '../scene/look.ts';
import type { Film, Mark, Shown } from '../timeline/film.ts';
import { framesLasting } from '../timeline/seconds.ts';

/** How many frames a thing takes to come and to go; it is complete from `from + coming - 1` until `until - going`. */
export interface Pace {
  readonly coming: number;
  readonly going: number;
  /** How often it swells and shrinks again once it has come, and over how many frames each time. */
  readonly beats?: { readonly count: number; readonly frames: number } | undefined;
}

/**
 * A pulsing mark beats twice, one second per beat: far slower than what WCAG 2.2 (2.3.1) calls a flash; then it stays
 * still.
 */
const pulses = { count: 2, seconds: 1 } as const;

/** The state at this frame, or undefined if the thing is not on screen. Progress is eased: fast, then slower. */
export function inkAt(shown: Shown, pace: Pace, frame: number): Ink | undefined {
  if (frame < shown.from || frame >= shown.until) return undefined;
  const come = Math.min(1, (frame - shown.from + 1) / pace.coming);
  const left = pace.going === 0 ? 1 : Math.min(1, (shown.until - frame) / (pace.going + 1));
  const swollen = swelling(frame - shown.from + 1 - pace.coming, pace);
  return { progress: rounded(eased(come) + swollen), alpha: rounded(left) };
}

/** The same without motion: complete immediately, and only its opacity changes. */
export function faded({ progress, alpha }: Ink): Ink {
  return { progress: 1, alpha: rounded(Math.min(1, progress) * alpha) };
}

/** The frames at which the thing's state differs from the previous frame. */
export function changesOf(shown: Shown, pace: Pace): number[] {
  const changes: number[] = [];
  const standing = shown.from + pace.coming + (pace.beats === undefined ? 0 : pace.beats.count * pace.beats.frames);
  for (let frame: number = shown.from; frame < Math.min(standing, shown.until); frame++) changes.push(frame);
  for (let frame: number = shown.until - pace.going; frame <= shown.until; frame++) changes.push(frame);
  return changes;
}

/** A mark's pace. What stays until the film's end does not fade out. */
export function paceOfMark(film: Film, look: Look, mark: Mark): Pace {
  const plain = pace(film, mark, secondsToCome(mark.shape, look.motion, film), look.motion.fade);
  return paintings[mark.shape.kind].pulses === true && look.motion.come !== 'faded'
    ? pulsing(film, mark, plain)
    : plain;
}

/** As many whole beats as there is time for before it goes. */
function pulsing(film: Film, { from, until }: Shown, plain: Pace): Pace {
  const frames = framesLasting(film.rate, pulses.seconds);
  const room = until - from - plain.coming - plain.going;
  return { ...plain, beats: { count: Math.min(pulses.count, Math.max(0, Math.floor(room / frames))), frames } };
}

/** 0 to 1 and back in each beat; `since` counts frames from the one on which it was complete. */
function swelling(since: number, { beats }: Pace): number {
  if (beats === undefined || since <= 0 || since >= beats.count * beats.frames) return 0;
  return (1 - Math.cos((2 * Math.PI * since) / beats.frames)) / 2;
}

/** The pace of what fades in and out: headings, words. */
export function paceOfWords(film: Film, look: Look, shown: Shown): Pace {
  return pace(film, shown, look.motion.fade, look.motion.fade);
}

/** A written digit grows and then stands; it disappears immediately, since it is not meant to. */
export function paceOfDigit(film: Film, look: Look, shown: Shown): Pace {
  return pace(film, shown, look.motion.place, 0);
}

/** If time is short, coming takes at most half of it and going a quarter. */
function pace(film: Film, shown: Shown, comingSeconds: number, goingSeconds: number): Pace {
  const frames = shown.until - shown.from;
  const coming = Math.max(1, Math.min(framesLasting(film.rate, comingSeconds), Math.floor(frames / 2)));
  const stays = shown.until >= film.frameCount || comingSeconds === 0 || goingSeconds === 0;
  const going = stays ? 0 : Math.min(framesLasting(film.rate, goingSeconds), Math.floor(frames / 4));
  return { coming, going };
}

function eased(part: number): number {
  return 1 - (1 - part) ** 2.5;
}

function rounded(part: number): number {
  return Math.round(part * 10000) / 10000;
}
