/**
 * When beats and items without a time of their own begin. All in exact seconds from the start of the video.
 *
 * Beats: the first at the step's start; those between two timed ones evenly; those after the last timed one (all of
 * them if none is timed) one after another, each when the previous one is drawn and at least a second has passed,
 * closer together if the step is too short for that. After a question everything waits, timed beats too. Items: evenly
 * by the number of things in them, over the time up to the next timed one, or the step's end.
 */
import { add, compare, divide, type Fraction, fraction, multiply, subtract, zero } from '../scene/fraction.ts';
import { earlierOf, laterOf } from './seconds.ts';

export interface BeatToSpread {
  readonly at: Fraction | undefined;
  /** What the next beat without a time waits for, if there is time. */
  readonly wait: Fraction;
  /** What every later beat waits for in any case: a question's `hold`, else zero. */
  readonly hold: Fraction;
}

export interface Range {
  readonly begin: Fraction;
  /** Undefined if the beats themselves determine how long the step lasts. */
  readonly end: Fraction | undefined;
}

/**
 * The start of every beat, in ascending order. A beat is at `end` or later only if `at` says so or a question holds it
 * that long. Two beats without times in a step from 10 s to 20 s begin at 10 s and 11 s.
 */
export function spreadBeats(beats: readonly BeatToSpread[], { begin, end }: Range): readonly Fraction[] {
  const starts: Fraction[] = [];
  let free = begin;
  for (let first = 0; first < beats.length; ) {
    const at = laterOf(beats[first]!.at ?? begin, free);
    starts.push(at);
    const next = beats.findIndex((beat, index) => index > first && beat.at !== undefined);
    const group = beats.slice(first, next === -1 ? beats.length : next);
    const gaps = next === -1 ? relaxedGaps(group, at, end) : evenGaps(group, at, beats[next]!.at!);
    free = at;
    for (const [index, gap] of gaps.entries()) {
      free = add(free, gap);
      if (index + 1 < group.length) starts.push(free);
    }
    // An even gap ends on the next timed beat, and only a question may push that one back.
    if (next !== -1) free = add(starts.at(-1)!, group.at(-1)!.hold);
    first += group.length;
  }
  return starts;
}

/** When the last of the beats is drawn, or its question answered, if all take the time that they need. */
export function endOfBeats(beats: readonly BeatToSpread[], begin: Fraction): Fraction {
  const starts = spreadBeats(beats, { begin, end: undefined });
  return beats.reduce((latest, beat, index) => laterOf(latest, add(starts[index]!, beat.wait)), begin);
}

/** Gaps after each beat of a group that a timed beat ends. */
function evenGaps(group: readonly BeatToSpread[], at: Fraction, next: Fraction): readonly Fraction[] {
  const held = total(group.map((beat) => beat.hold));
  const open = group.filter((beat) => isZero(beat.hold)).length;
  const room = laterOf(subtract(subtract(next, at), held), zero);
  return group.map((beat) => (isZero(beat.hold) ? divide(room, fraction(open)) : beat.hold));
}

/** Gaps after each beat of the last group; the gap after the last beat keeps room for it before the step's end. */
function relaxedGaps(group: readonly BeatToSpread[], at: Fraction, end: Fraction | undefined): readonly Fraction[] {
  const wished = total(group.filter((beat) => isZero(beat.hold)).map((beat) => beat.wait));
  if (end === undefined || isZero(wished)) return group.map((beat) => (isZero(beat.hold) ? beat.wait : beat.hold));
  const room = laterOf(subtract(subtract(end, at), total(group.map((beat) => beat.hold))), zero);
  const part = earlierOf(divide(room, wished), fraction(1));
  return group.map((beat) => (isZero(beat.hold) ? multiply(beat.wait, part) : beat.hold));
}

export interface ItemToSpread {
  readonly at: Fraction | undefined;
  /** How many consecutive things it contains; at least 1. */
  readonly weight: number;
}

/**
 * For every item the starts of the things in it, in ascending order, all before `end` if the given times are. One item
 * of four things from 10 s to 20 s: 10, 12.5, 15, 17.5 s.
 */
export function spreadItems(
  items: readonly ItemToSpread[],
  begin: Fraction,
  end: Fraction,
): readonly (readonly Fraction[])[] {
  const starts: Fraction[][] = [];
  let free = begin;
  for (let first = 0; first < items.length; ) {
    const at = items[first]!.at ?? free;
    const next = items.findIndex((item, index) => index > first && item.at !== undefined);
    const group = items.slice(first, next === -1 ? items.length : next);
    const until = laterOf(at, next === -1 ? end : items[next]!.at!);
    const each = divide(subtract(until, at), fraction(group.reduce((sum, item) => sum + item.weight, 0)));
    let start = at;
    for (const item of group) {
      const own: Fraction[] = [];
      for (let thing = 0; thing < item.weight; thing++, start = add(start, each)) own.push(start);
      starts.push(own);
    }
    free = until;
    first += group.length;
  }
  return starts;
}

function total(values: readonly Fraction[]): Fraction {
  return values.reduce((sum, value) => add(sum, value), zero);
}

function isZero(value: Fraction): boolean {
  return compare(value, zero) === 0;
}
