/**
 * Why the argument of a false step fails.
 */

import type { CheckedStep } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';

/**
 * The candidates, ascending, that can all be true together although the conclusion says otherwise: one from every set,
 * and the candidate claimed impossible. If no such choice is known, what breaks the links; empty if nothing fails.
 */
export function breakingChoice({ conclusions, links }: CheckedStep): Candidate[] {
  const escaped = conclusions.find(({ counterexample }) => counterexample !== undefined);
  const candidates = new Set(escaped?.counterexample ?? links.flatMap((link) => link.brokenBy));
  if (escaped?.conclusion.kind === 'impossible') candidates.add(escaped.conclusion.candidate);
  return [...candidates].sort((a, b) => a - b);
}

/** The candidates of the first conclusion that fails, ascending; empty if nothing fails. */
export function victimsOf({ conclusions }: CheckedStep): Candidate[] {
  const failing = conclusions.find(({ counterexample }) => counterexample !== undefined);
  if (failing === undefined) return [];
  const { conclusion } = failing;
  return conclusion.kind === 'impossible' ? [conclusion.candidate] : membersOf(conclusion.candidates);
}
