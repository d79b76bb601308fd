/**
 * The two colours of a cluster: candidates joined by sets of two members that conflict, so that one colour is true and
 * the other is not.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { ArgumentSet } from './verdict.ts';

/** Both ascending; `own` contains the candidate that was named. */
export interface Sides {
  readonly own: readonly Candidate[];
  readonly other: readonly Candidate[];
}

/** The cluster that the candidate belongs to, by the sets of two members that conflict; undefined if it is in none. */
export function sidesOf(grid: Grid, sets: readonly ArgumentSet[], candidate: Candidate): Sides | undefined {
  const pairs = sets
    .map((set) => membersOf(set.members))
    .filter(([one, other, third]) => {
      const isPair = one !== undefined && other !== undefined && third === undefined;
      return isPair && has(grid.conflicts[one]!, other);
    });
  const side = new Map<Candidate, boolean>([[candidate, true]]);
  // Iterating over a map also visits the entries added meanwhile.
  for (const [reached, isOwn] of side) {
    for (const pair of pairs.filter((each) => each.includes(reached))) {
      for (const next of pair) if (!side.has(next)) side.set(next, !isOwn);
    }
  }
  if (side.size === 1) return undefined;
  const on = (isOwn: boolean) => [...side].filter(([, own]) => own === isOwn).map(([each]) => each);
  return { own: on(true).sort((a, b) => a - b), other: on(false).sort((a, b) => a - b) };
}
