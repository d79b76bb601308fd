/** What a pattern proves, as conclusions, and the simplest kind of instance. */
import { type Candidate, type Candidates, intersection, membersOf, setOf } from '../grid/candidates.ts';
import type { Digit, Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { digitsOf } from './seen-by-all.ts';
import type { Instance } from './technique.ts';

/** Those of these candidates that are possible, as removals. */
export function removalsOf(position: Position, candidates: Candidates): Conclusion[] {
  return membersOf(intersection(position.possible, candidates)).map((candidate) => ({ kind: 'impossible', candidate }));
}

/** The candidate is true. */
export function placementOf(grid: Grid, candidate: Candidate): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, [candidate]) };
}

/** The digits of these conclusions, ascending; all digits if no conclusions are given. */
export function digitsWanted(grid: Grid, wanted: readonly Conclusion[] | undefined): readonly Digit[] {
  if (wanted === undefined) return grid.digits;
  const candidates = wanted.flatMap((each) =>
    each.kind === 'impossible' ? [each.candidate] : membersOf(each.candidates),
  );
  return digitsOf(grid, setOf(grid, candidates));
}

/** An instance that consists only of sets and what they prove. */
export function plainInstance(sets: readonly OneOf[], conclusions: readonly Conclusion[]): Instance {
  return { sets, conclusions, chain: undefined, deadly: undefined };
}
