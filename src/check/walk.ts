/**
 * How far the walk through a scene has come: the position reached, and what is remembered on the way.
 */
import { membersOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { after, type Position, type Proof } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Advice, Step } from '../scene/scene.ts';
import { type Claim, type Evaluated, evaluate } from './claim.ts';
import type { JudgeBeat } from './marks.ts';
import type { Failure } from './rests-on.ts';
import type { Truth } from './truth.ts';

export interface Lineage {
  position: Position;
  /** What each step proved as an either/or, or said of one that stands already. */
  readonly eithers: Map<string, Proof | Conclusion>;
}

export interface Walk extends Lineage {
  readonly truth: Truth;
  readonly failures: Failure[];
  /** The same scene without anything that assumes one solution; kept once something does. */
  withoutAssuming: Lineage | undefined;
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

/** Lets the proofs enter; says whether any of them depends on an earlier step that assumes one solution. */
export function enter(walk: Walk, step: Step, claim: Claim, evaluated: Evaluated): boolean {
  const proofs = proofsOf(evaluated);
  const assumes = proofs.some((proof) => proof.assumesOneSolution);
  if (assumes) walk.withoutAssuming ??= { position: walk.position, eithers: new Map(walk.eithers) };
  let inherits = false;
  if (walk.withoutAssuming !== undefined) {
    const beside = walk.withoutAssuming;
    const again = assumes ? [] : proofsOf(evaluate(beside.position, claim, beside.eithers));
    const stillProved = new Set(again.map((proof) => printConclusion(walk.position.grid, proof.conclusion)));
    const goneThere = (proof: Proof) => stillProved.has(printConclusion(walk.position.grid, proof.conclusion));
    inherits = !assumes && !proofs.every(goneThere);
    enterInto(beside, step, again);
  }
  enterInto(walk, step, proofs);
  for (const { conclusion, outcome } of evaluated.conclusions) {
    if (outcome.kind === 'spent' && isEither(conclusion)) rememberEither(walk, step, conclusion);
  }
  return inherits;
}

function enterInto(lineage: Lineage, step: Step, proofs: readonly Proof[]): void {
  for (const proof of proofs) if (isEither(proof.conclusion)) rememberEither(lineage, step, proof);
  lineage.position = after(lineage.position, proofs);
}

/** Of several the first is what the step's id stands for. */
function rememberEither(lineage: Lineage, step: Step, either: Proof | Conclusion): void {
  if (!lineage.eithers.has(step.id)) lineage.eithers.set(step.id, either);
}

function isEither(conclusion: Conclusion): boolean {
  return conclusion.kind === 'one-of' && membersOf(conclusion.candidates).length > 1;
}

function proofsOf(evaluated: Evaluated): Proof[] {
  return evaluated.conclusions.flatMap(({ outcome }) => (outcome.kind === 'proved' ? [outcome.proof] : []));
}
