/**
 * What is wrong with a false step (`fails: true`): it says that its argument does not show what it concludes, and is right
 * exactly if each conclusion has a counterexample: a choice from all sets of the argument that leaves the conclusion wrong
 * or, where no argument is named, a solution of the puzzle that does. What nothing can contradict (it is so already) and
 * what is too large to decide have none.
 */

import { has, membersOf, overlaps } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { givesAnArgument } from './argument.ts';
import type { CheckedClaim } from './check-claim.ts';
import { inWords } from './explain.ts';
import type { StepFault } from './verdict.ts';

/** The conclusions without a counterexample, by what is the matter with them. (One that concludes nothing is not read.) */
export function faultsOfFalseStep(checked: readonly CheckedClaim[]): StepFault[] {
  const missing = new Map<FalseStepCode, string[]>();
  for (const claim of checked) {
    for (const [index, { text }] of claim.conclusions.entries()) {
      const code = withoutCounterexample(claim, index);
      if (code !== undefined) missing.set(code, [...(missing.get(code) ?? []), text]);
    }
  }
  return [...missing].map(([code, texts]) => ({ code, message: messages[code](inWords(texts), texts.length === 1) }));
}

const messages = {
  'false-step-holds': (texts) => `the step is marked \`fails: true\`, but its argument does prove ${texts}`,
  'false-step-given': (texts, isOne) =>
    `the step is marked \`fails: true\`, but the givens say ${texts} by themselves, so nothing contradicts ${isOne ? 'it' : 'them'}`,
  'false-step-redundant': (texts, isOne) =>
    `the step is marked \`fails: true\`, but ${texts} ${isOne ? 'is' : 'are'} known already when it begins, so nothing contradicts ${isOne ? 'it' : 'them'}`,
  'false-step-bare': (texts) =>
    `the step is marked \`fails: true\`, but names no argument that could fail to show ${texts}; name its sets with \`from\`, or its links with \`chain\``,
  'false-step-undecided': (texts) =>
    `the step is marked \`fails: true\`, but whether its argument proves ${texts} is too large to decide; name fewer sets`,
} as const satisfies Record<string, (texts: string, isOne: boolean) => string>;

type FalseStepCode = keyof typeof messages;

/** Why the conclusion has no counterexample; undefined where it has one. */
function withoutCounterexample(checked: CheckedClaim, index: number): FalseStepCode | undefined {
  const { claim, evaluated, position, conclusions } = checked;
  const { conclusion, outcome } = evaluated.conclusions[index]!;
  switch (outcome.kind) {
    case 'proved':
      return 'false-step-holds';
    case 'spent':
      return isOfGivens(position, conclusion) ? 'false-step-given' : 'false-step-redundant';
    case 'too-large':
      return 'false-step-undecided';
    case 'not-shown':
      return givesAnArgument(claim.given) || conclusions[index]!.verdict === 'false' ? undefined : 'false-step-bare';
    default:
      return outcome satisfies never;
  }
}

/** Whether a given says it by itself: it is the digit placed, or rules out the candidate removed. */
function isOfGivens({ grid, givens }: Position, conclusion: Conclusion): boolean {
  if (conclusion.kind === 'one-of') return overlaps(givens, conclusion.candidates);
  return membersOf(givens).some((given) => has(grid.conflicts[conclusion.candidate]!, given));
}
