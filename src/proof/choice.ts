/**
 * The one search of the project: choose one candidate from every set so that no two of them conflict.
 *
 * It is a plain depth-first choice, the smallest set first. Taking the smallest first, and leaving out a set that
 * already holds a chosen candidate, are its only speed-ups; neither changes the answer (a test says so): a set that
 * holds a chosen candidate can take that very candidate, and the order of the sets matters to no choice.
 */
import { type Candidate, has } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';

export type Choice =
  /** One candidate from every set, free of conflicts; where a taken candidate settles a set, it is among them. */
  | { readonly kind: 'free'; readonly chosen: readonly Candidate[]; readonly cases: number }
  /** There is no such choice. */
  | { readonly kind: 'none'; readonly cases: number }
  /** The bound was reached first: nothing is known. */
  | { readonly kind: 'too-large' };

/** How many candidates may be tried before the search gives up: far above any argument that can be taught. */
export const choiceBound = 1_000_000;

/**
 * Looks for one candidate from every set, all of them free of conflicts with one another and with `taken`.
 * `cases` counts the candidates tried where a set left more than one: an argument by forcing alone has none.
 */
export function choose(
  grid: Grid,
  sets: readonly (readonly Candidate[])[],
  taken: readonly Candidate[] = [],
  bound = choiceBound,
): Choice {
  let open: readonly (readonly Candidate[])[] = sets;
  const chosen: Candidate[] = [];
  for (const candidate of taken) {
    if (open.some((members) => members.includes(candidate))) chosen.push(candidate);
    open = leftBeside(grid, open, candidate);
  }
  const search = { grid, cases: 0, left: bound };
  const found = chooseFrom(search, open, chosen);
  if (search.left < 0) return { kind: 'too-large' };
  return found ? { kind: 'free', chosen, cases: search.cases } : { kind: 'none', cases: search.cases };
}

interface Search {
  readonly grid: Grid;
  cases: number;
  left: number;
}

function chooseFrom(search: Search, open: readonly (readonly Candidate[])[], chosen: Candidate[]): boolean {
  const smallest = smallestOf(open);
  if (smallest === undefined) return true;
  for (const candidate of smallest) {
    if (smallest.length > 1) search.cases++;
    if (--search.left < 0) return false;
    chosen.push(candidate);
    if (chooseFrom(search, leftBeside(search.grid, open, candidate), chosen)) return true;
    chosen.pop();
  }
  return false;
}

/** What the sets still offer beside this candidate; those that hold it are settled and drop out. */
function leftBeside(grid: Grid, open: readonly (readonly Candidate[])[], candidate: Candidate): Candidate[][] {
  const ruledOut = grid.conflicts[candidate]!;
  const left: Candidate[][] = [];
  for (const members of open) {
    if (!members.includes(candidate)) left.push(members.filter((member) => !has(ruledOut, member)));
  }
  return left;
}

function smallestOf(open: readonly (readonly Candidate[])[]): readonly Candidate[] | undefined {
  let smallest = open[0];
  for (const members of open) if (members.length < smallest!.length) smallest = members;
  return smallest;
}
