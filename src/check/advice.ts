/**
 * Advice, which changes no verdict: sets that no conclusion needs, and further removals that the argument proves.
 */
import { type Candidate, difference, membersOf, setOf } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type Position, prove } from '../proof/kernel.ts';
import type { NamedSet } from './argument.ts';
import { removalsProved } from './claim.ts';

/** Advice must not hold up the verdicts: each question gets this many tries, far fewer than a verdict gets. */
const adviceBound = 20_000;

/** Sets that can all be left out together while every conclusion stays proved. */
export function unneededSets(
  position: Position,
  sets: readonly NamedSet[],
  conclusions: readonly Conclusion[],
): NamedSet[] {
  if (conclusions.length === 0) return [];
  let kept = [...sets];
  for (const set of sets) {
    const fewer = kept.filter((other) => other !== set);
    const stillProved = conclusions.every(
      (conclusion) =>
        prove(
          position,
          fewer.map((named) => named.set),
          conclusion,
          adviceBound,
        ).kind === 'proved',
    );
    if (stillProved) kept = fewer;
  }
  return sets.filter((set) => !kept.includes(set));
}

/** Removals that the same sets prove but the step does not conclude. */
export function missedRemovals(
  position: Position,
  sets: readonly NamedSet[],
  concluded: readonly Conclusion[],
): Candidate[] {
  const removed = concluded.flatMap((conclusion) => (conclusion.kind === 'impossible' ? [conclusion.candidate] : []));
  const proved = removalsProved(position, sets, adviceBound);
  return membersOf(difference(setOf(position.grid, proved), setOf(position.grid, removed)));
}
