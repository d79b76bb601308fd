/**
 * How far the walk through a scene has come: the position reached, and what is remembered on the way.
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

export interface Walk {
  position: Position;
  /** What each step proved as an either/or, or said of one that stands already. */
  readonly eithers: Map<string, Proof | Conclusion>;
  readonly truth: Truth;
  readonly failures: Failure[];
  readonly advice: Advice;
  readonly judgeBeat: JudgeBeat;
  /** The position before each step so far, with the step's id. */
  readonly history: { readonly id: string; readonly before: Position }[];
  /** How many more fixes may be looked for: each takes a search of its own, and nobody fixes forty steps at once. */
  fixesLeft: number;
  readonly diagnostics: Diagnostic[];
  /** Unsound steps that would be sound if earlier ones were. */
  readonly restingSteps: Set<string>;
}

/** Lets the proofs enter, and remembers the either/ors. */
export function enter(walk: Walk, step: Step, { conclusions }: Evaluated): void {
  const proofs = conclusions.flatMap(({ outcome }) => (outcome.kind === 'proved' ? [outcome.proof] : []));
  for (const proof of proofs) if (isEither(proof.conclusion)) rememberEither(walk, step, proof);
  for (const { conclusion, outcome } of conclusions) {
    if (outcome.kind === 'spent' && isEither(conclusion)) rememberEither(walk, step, conclusion);
  }
  walk.position = after(walk.position, proofs);
}

/** Of several the first is what the step's id stands for. */
function rememberEither({ eithers }: Walk, step: Step, either: Proof | Conclusion): void {
  if (!eithers.has(step.id)) eithers.set(step.id, either);
}

function isEither(conclusion: Conclusion): boolean {
  return conclusion.kind === 'one-of' && membersOf(conclusion.candidates).length > 1;
}
