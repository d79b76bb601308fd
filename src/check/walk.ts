/**
 * The state of the walk through a scene: the position reached, and what is remembered along the way.
 */
import { membersOf } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { after, type Position, type Proof } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Advice, Step } from '../scene/scene.ts';
import type { Evaluated } from './claim.ts';
import type { JudgeBeat } from './marks.ts';
import type { Failure } from './rests-on.ts';
import type { Truth } from './truth.ts';

/**
 * What is searched for beyond the verdicts: what a report holds; nothing; every way to fix one step; or another argument
 * for what that step concludes.
 */
export type Purpose =
  | { readonly kind: 'report' }
  | { readonly kind: 'verdicts' }
  | { readonly kind: 'fixing' | 'arguing otherwise'; readonly step: string };

export interface Walk {
  readonly purpose: Purpose;
  position: Position;
  /** The either/or that each step proved, or restated when it was already known. */
  readonly eithers: Map<string, Proof | Conclusion>;
  readonly truth: Truth;
  readonly failures: Failure[];
  readonly advice: Advice;
  readonly judgeBeat: JudgeBeat;
  /** The position before each step so far, with the step's id. */
  readonly history: { readonly id: string; readonly before: Position }[];
  /** How many more fixes may be searched for: each needs its own search, and nobody fixes forty steps in one go. */
  fixesLeft: number;
  readonly diagnostics: Diagnostic[];
  /** Unsound steps that would be sound if earlier ones were. */
  readonly restingSteps: Set<string>;
}

/** Enters the proofs, and remembers the either/ors. */
export function enter(walk: Walk, step: Step, { conclusions }: Evaluated): void {
  const proofs = conclusions.flatMap(({ outcome }) => (outcome.kind === 'proved' ? [outcome.proof] : []));
  for (const proof of proofs) if (isEither(proof.conclusion)) rememberEither(walk, step, proof);
  for (const { conclusion, outcome } of conclusions) {
    if (outcome.kind === 'spent' && isEither(conclusion)) rememberEither(walk, step, conclusion);
  }
  walk.position = after(walk.position, proofs);
}

/** If there are several, the step's id stands for the first. */
function rememberEither({ eithers }: Walk, step: Step, either: Proof | Conclusion): void {
  if (!eithers.has(step.id)) eithers.set(step.id, either);
}

function isEither(conclusion: Conclusion): boolean {
  return conclusion.kind === 'one-of' && membersOf(conclusion.candidates).length > 1;
}
