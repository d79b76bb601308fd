/**
 * How long a step lasts when nothing fixes it: as long as its `say` takes to say, never less than its marks take to be
 * drawn, at least four seconds.
 */
import { add, compare, type Fraction, fraction, multiply, subtract, zero } from '../scene/fraction.ts';
import type { Step } from '../scene/scene.ts';
import type { Moment } from './clock.ts';
import { perConclusion, type StrokesOf, shortestStep, speakingSeconds, waitAfter, weightOf } from './pace.ts';
import { laterOf } from './seconds.ts';
import { type BeatToSpread, endOfBeats, type ItemToSpread } from './spread.ts';

/** What there is to spread over a step. */
export interface StepContent {
  readonly step: Step;
  readonly begin: { readonly seconds: Fraction };
  readonly beats: readonly (Moment | undefined)[];
  readonly items: readonly (Moment | undefined)[];
}

/** Seconds. */
export function stepLength(content: StepContent, strokesOf: StrokesOf): Fraction {
  const speaking = content.step.say === undefined ? zero : speakingSeconds(content.step.say.value);
  const drawn = subtract(drawnAt(content, strokesOf), content.begin.seconds);
  return laterOf(laterOf(speaking, drawn), shortestStep);
}

/** The beats of a step, ready to be spread. */
export function beatsToSpread({ step, beats }: StepContent, strokesOf: StrokesOf): readonly BeatToSpread[] {
  return (step.show ?? []).map((beat, index) => ({
    at: beats[index]?.seconds,
    wait: waitAfter(beat, strokesOf(step, beat)),
    hold: beat.mark.kind === 'ask' ? beat.mark.hold : zero,
  }));
}

/** The items of a step, ready to be spread: `only`, `pencil`, `cascade`. */
export function itemsToSpread({ step, items }: StepContent): readonly ItemToSpread[] {
  return [...step.only, ...step.pencil, ...step.cascade].map((item, index) => ({
    at: items[index]?.seconds,
    weight: weightOf(item),
  }));
}

/** Whether the step argues for something before its items begin. */
export function claimsFirst(step: Step): boolean {
  return step.so !== undefined || step.chains.length > 0;
}

/** Seconds that drawing the claim of a step without `show` takes. */
export function claimSeconds(step: Step, strokesOf: StrokesOf): Fraction {
  return step.show === undefined ? strokesOf(step, undefined) : zero;
}

/** When everything that the step draws is drawn, if there is time. */
function drawnAt(content: StepContent, strokesOf: StrokesOf): Fraction {
  const { step } = content;
  const begin = content.begin.seconds;
  const shown = add(endOfBeats(beatsToSpread(content, strokesOf), begin), claimSeconds(step, strokesOf));
  let shownBy = claimsFirst(step) ? shown : begin;
  for (const item of itemsToSpread(content)) {
    const start = item.at !== undefined && compare(item.at, shownBy) > 0 ? item.at : shownBy;
    shownBy = add(start, multiply(perConclusion, fraction(item.weight)));
  }
  return laterOf(shown, shownBy);
}
