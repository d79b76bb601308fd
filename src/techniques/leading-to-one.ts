/**
 * Sets each of whose members leads to the same conclusion: both the search for them (over a cell's digits, a digit's
 * places, the guardians of a pattern) and the test when such an argument is given.
 */
import { type Candidate, difference, has, membersOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { choose } from '../proof/choice.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { consequencesOf } from './implications.ts';
import { placementOf } from './removals.ts';

/** How many candidates may be tried to follow one member. */
const caseBound = 20_000;

/**
 * Whether the candidate, taken as true, and the sets contradict the conclusion's opposite; by forcing only, or by cases
 * too.
 */
export function leadsTo(
  grid: Grid,
  candidate: Candidate,
  {
    sets,
    conclusion,
    by,
  }: { readonly sets: readonly OneOf[]; readonly conclusion: Conclusion; readonly by: 'forcing' | 'cases' },
): boolean {
  if (conclusion.kind === 'one-of') {
    if (has(conclusion.candidates, candidate)) return true;
    const left = sets.map((set) => membersOf(difference(set.members, conclusion.candidates)));
    return hasNoChoice(grid, left, [candidate], by);
  }
  if (conclusion.candidate === candidate) return false;
  if (has(grid.conflicts[candidate]!, conclusion.candidate)) return true;
  return hasNoChoice(
    grid,
    sets.map((set) => membersOf(set.members)),
    [conclusion.candidate, candidate],
    by,
  );
}

function hasNoChoice(
  grid: Grid,
  sets: readonly (readonly Candidate[])[],
  taken: readonly Candidate[],
  by: 'forcing' | 'cases',
): boolean {
  const choice = choose(grid, sets, taken, caseBound);
  return choice.kind === 'none' && (by === 'cases' || choice.cases === 0);
}

/** One conclusion, and the strong links by which each of several candidates leads to it. */
export interface CommonEnd {
  readonly conclusion: Conclusion;
  /** Each once. */
  readonly links: readonly OneOf[];
  /** How many links the longest of the chains has. */
  readonly longest: number;
}

/** What all these candidates lead to by chains of at most `mostLinks` strong links: removals, then placements. */
export function commonEnds(position: Position, candidates: readonly Candidate[], mostLinks: number): CommonEnd[] {
  const all = candidates.map((each) => consequencesOf(position, each, mostLinks));
  const [first] = all;
  if (first === undefined) return [];
  const ends: CommonEnd[] = [];
  const add = (conclusion: Conclusion, paths: readonly (readonly OneOf[] | undefined)[]) => {
    const known = paths.filter((path) => path !== undefined);
    if (known.length < paths.length) return;
    ends.push({
      conclusion,
      links: [...new Set(known.flat())],
      longest: Math.max(...known.map((path) => path.length)),
    });
  };
  for (const end of first.isFalse.keys()) {
    add(
      { kind: 'impossible', candidate: end },
      all.map((each) => each.isFalse.get(end)),
    );
  }
  for (const end of first.isTrue.keys()) {
    if (!has(position.placed, end))
      add(
        placementOf(position.grid, end),
        all.map((each) => each.isTrue.get(end)),
      );
  }
  return ends;
}

/** Whether this is one of the wanted conclusions; true for any if `wanted` is undefined. */
export function isWanted(conclusion: Conclusion, wanted: readonly Conclusion[] | undefined): boolean {
  return wanted === undefined || wanted.some((each) => keyOf(each) === keyOf(conclusion));
}

function keyOf(conclusion: Conclusion): string {
  return conclusion.kind === 'impossible' ? `-${conclusion.candidate}` : membersOf(conclusion.candidates).join();
}
