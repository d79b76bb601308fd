/**
 * A draft timed by a recording: each step that was heard begins when it was, and says what was said.
 */
import type { Plan } from '../plan/plan.ts';
import { add, compare, type Fraction, fraction, multiply, subtract } from '../scene/fraction.ts';
import type { Narration } from '../timeline/narration.ts';
import { speakingSeconds } from '../timeline/pace.ts';
import { align, featuresOf } from './align.ts';
import type { DraftStep } from './draft-step.ts';
import { type Heard, utterancesOf } from './heard.ts';
import type { Phrases } from './phrases.ts';

export interface NarratedDraft {
  readonly steps: readonly DraftStep[];
  /** Those that were heard, and those that were not. */
  readonly heard: readonly string[];
  readonly unheard: readonly string[];
  /** Utterances that name an argument or a cell that does not belong to the step of that time. */
  readonly unmatched: readonly { readonly at: string; readonly text: string }[];
}

/** The most sentences that a step says. */
const sentencesKept = 3;

export function narrate(
  steps: readonly DraftStep[],
  plan: Plan,
  narration: Narration,
  phrases: Phrases,
): NarratedDraft {
  const utterances = utterancesOf(narration, phrases, plan.start.grid);
  const alignment = align(steps, plan, utterances);
  const times = timesOf(
    steps,
    alignment.map((index) => (index === undefined ? undefined : utterances[index]!.seconds)),
  );
  const narrated = steps.map((step, index): DraftStep => {
    const at = alignment[index];
    if (at === undefined)
      return { ...step, at: times[index]!, remark: 'Not heard in the narration: its time is a guess.' };
    const next = alignment.find((each, later) => later > index && each !== undefined) ?? utterances.length;
    const words = utterances.slice(at, Math.min(next, at + sentencesKept)).map(({ text }) => text);
    return { ...step, at: times[index]!, say: words.join(' ') };
  });
  const isHeard = (_: DraftStep, index: number) => alignment[index] !== undefined;
  const isStrange = (each: Heard, index: number) => {
    const step = stepAt(alignment, index);
    return /^(name|cell) /.test(each) && (step === undefined || !featuresOf(steps[step]!, plan).has(each));
  };
  return {
    steps: narrated,
    heard: steps.filter(isHeard).map(({ id }) => id),
    unheard: steps.filter((step, index) => !isHeard(step, index)).map(({ id }) => id),
    unmatched: utterances
      .filter(({ heard }, index) => [...heard].some((each) => isStrange(each, index)))
      .map(({ seconds, text }) => ({ at: clockText(seconds), text })),
  };
}

/** The step presented while an utterance is said: the last that was heard by then. */
function stepAt(alignment: readonly (number | undefined)[], utterance: number): number | undefined {
  const step = alignment.findLastIndex((at) => at !== undefined && at <= utterance);
  return step < 0 ? undefined : step;
}

/**
 * A time for every step, in ascending order: those not heard share the time between those heard; after the last, each
 * follows when the words of the previous one are said (`+8`).
 */
function timesOf(steps: readonly DraftStep[], heard: readonly (Fraction | undefined)[]): readonly string[] {
  let last = { index: -1, seconds: fraction(0) };
  const known: Fraction[] = [];
  for (const [index, seconds] of heard.entries()) {
    if (seconds === undefined) continue;
    const from = compare(seconds, last.seconds) < 0 ? last.seconds : seconds;
    const gap = subtract(from, last.seconds);
    const parts = index - last.index;
    for (let step = 1; step <= parts; step++) {
      known[last.index + step] = add(
        last.seconds,
        multiply(gap, fraction(last.index < 0 ? step - 1 : step, last.index < 0 ? Math.max(1, parts - 1) : parts)),
      );
    }
    known[index] = from;
    last = { index, seconds: from };
  }
  return steps.map((_, index) => {
    const seconds = known[index];
    const before = steps[index - 1];
    if (seconds !== undefined || before === undefined) return clockText(seconds ?? fraction(0));
    const { numerator, denominator } = speakingSeconds(before.say);
    return `+${Math.max(4, Number((numerator + denominator - 1n) / denominator))}`;
  });
}

/** `1:02.46`, rounded to hundredths. */
function clockText({ numerator, denominator }: Fraction): string {
  const hundredths = Number((numerator * 200n + denominator) / (denominator * 2n));
  const [minutes, rest] = [Math.floor(hundredths / 6000), hundredths % 6000];
  const seconds = (rest / 100).toFixed(2).replace(/\.?0+$/, '');
  return `${minutes}:${seconds.split('.')[0]!.padStart(2, '0')}${seconds.includes('.') ? `.${seconds.split('.')[1]}` : ''}`;
}
