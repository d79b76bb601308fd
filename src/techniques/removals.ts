/** What a pattern proves, as conclusions, and the plainest kind of instance. */
import { type Candidate, type Candidates, intersection, membersOf, setOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import type { Instance } from './technique.ts';

/** These candidates, so far as they are possible, as removals. */
export function removalsOf(position: Position, candidates: Candidates): Conclusion[] {
  return membersOf(intersection(position.possible, candidates)).map((candidate) => ({ kind: 'impossible', candidate }));
}

/** The candidate is true. */
export function placementOf(grid: Grid, candidate: Candidate): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, [candidate]) };
}

/** An instance that is nothing but sets and what they prove. */
export function plainInstance(sets: readonly OneOf[], conclusions: readonly Conclusion[]): Instance {
  return { sets, conclusions, chain: undefined, deadly: undefined };
}
