/**
 * How long things take if no time is given: speaking, drawing, looking.
 */
import type { Target } from '../grid/terms.ts';
import { add, compare, type Fraction, fraction, multiply } from '../scene/fraction.ts';
import type { Beat, BeatMark, BeatMarks, CascadeItem, OnlyItem, PencilItem, Step } from '../scene/scene.ts';

/**
 * Seconds that the marks of a beat take to be drawn; with `beat` undefined, the marks that the step's claim draws by
 * default.
 */
export type StrokesOf = (step: Step, beat: Beat | undefined) => Fraction;

/** Between the starts of two consecutive beats without times: a second, common practice. */
export const betweenBeats: Fraction = fraction(1);

/** For each placement, removal or list of an item without a time. */
export const perConclusion: Fraction = fraction(1, 2);

/** The least length of a step whose length is not fixed otherwise. */
export const shortestStep: Fraction = fraction(4);

/** Seconds to say a text at 150 words a minute (common practice): twenty words take eight seconds. */
export function speakingSeconds(text: string): Fraction {
  const words = text.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));
  return fraction(words.length * 60, 150);
}

/**
 * How long after a beat the next one without a time waits: `hold` after a question, otherwise the time it takes to
 * draw, and at least a second.
 */
export function waitAfter(beat: Beat, strokes: Fraction): Fraction {
  if (beat.mark.kind === 'ask') return beat.mark.hold;
  return compare(strokes, betweenBeats) > 0 ? strokes : betweenBeats;
}

/**
 * An item's share of the time that several items have together: the count of its placements and removals, or of its
 * lists.
 */
export function weightOf(item: OnlyItem | PencilItem | CascadeItem): number {
  if ('places' in item) return Math.max(1, item.places.length);
  if ('lists' in item) return Math.max(1, item.lists.length);
  return Math.max(1, item.conclusions.length);
}

/**
 * An estimate that needs neither look nor proof: each mark takes as long as in the default look, one after another.
 */
export function strokesAtEase(secondsOf: (mark: BeatMark, step: Step) => Fraction): StrokesOf {
  return (step, beat) => (beat === undefined ? claimStrokes(step) : secondsOf(beat.mark, step));
}

const mostAround = fraction(4);
/** A candidate or a digit. */
export const quarterSecond = fraction(1, 4);
/** A link, a line of sight, and anything that is drawn in one go. */
export const halfSecond = fraction(1, 2);

/**
 * A second for each set or link, and three quarters as much for the phases before and after them, at most four seconds:
 * enough that none of them has to be drawn faster (see `claimPhases`).
 */
function claimStrokes(step: Step): Fraction {
  const strokes = fraction(step.from.length + (step.deadly === undefined ? 0 : 1) + linkCount(step));
  const around = multiply(strokes, fraction(3, 4));
  return add(
    add(strokes, compare(around, mostAround) < 0 ? around : mostAround),
    multiply(quarterSecond, fraction(conclusionCount(step))),
  );
}

/** Seconds that a mark of this kind takes to be drawn, as the default look draws it. */
export type MarkSeconds<Kind extends keyof BeatMarks> = (mark: BeatMarks[Kind], step: Step) => Fraction;

/** This many things of a kind, one after another. */
export function oneByOne(seconds: Fraction, count: number): Fraction {
  return multiply(seconds, fraction(count));
}

/** In all chains of the step. */
export function linkCount(step: Step): number {
  return step.chains.reduce((sum, chain) => sum + chain.value.links.length, 0);
}

/** Of `so`; three if they are not counted. */
export function conclusionCount(step: Step): number {
  if (step.so === undefined) return 0;
  return step.so.kind === 'all' ? 3 : step.so.conclusions.length;
}

/** A house or a digit counts as one. */
export function targetCount(targets: readonly Target[]): number {
  return targets.reduce((sum, target) => sum + (target.kind === 'candidates' ? target.candidates.length : 1), 0);
}
