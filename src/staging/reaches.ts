/**
 * From where a removal is reached: the step that beginners miss. No matter which of the argument's ends is true, it
 * sees what is removed; a line from each end says so. Each line joins two candidates that conflict, and claims no more.
 */
import type { Argument, CheckedStep } from '../check/verdict.ts';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { cellOf, type Grid, type HouseShape } from '../grid/grid.ts';
import type { ChainEnds } from './chain-ends.ts';
import { chainsOf } from './chain-ends.ts';
import { fishHousesOf } from './fish-houses.ts';

/** A line from a candidate of the argument to the removed one; the two conflict. */
export interface Reach {
  readonly from: Candidate;
  readonly to: Candidate;
}

/** The lines to one removed candidate, or the house along which it is seen. */
export interface Reached {
  readonly removed: Candidate;
  readonly reaches: readonly Reach[];
  readonly house: HouseShape | undefined;
}

/** For every proved removal of `so`, in order, from where it is seen; omitted for one that its own chain leads to. */
export function reachedBy(grid: Grid, checked: CheckedStep): Reached[] {
  const fish = fishHousesOf(grid, checked);
  const removed = checked.conclusions.flatMap(({ conclusion, origin, verdict }) =>
    origin === 'so' && verdict === 'proved' && conclusion.kind === 'impossible' ? [conclusion.candidate] : [],
  );
  return removed.flatMap((each): Reached[] => {
    // The covers of a fish show what its body reaches; what remains to show is what the fins see.
    if (fish !== undefined) return linesTo(each, fish.fins);
    if (checked.step.chains.length > 0) return linesTo(each, endsAbout(grid, chainsOf(checked), each));
    return fromSets(grid, checked.argument, each);
  });
}

function linesTo(removed: Candidate, from: readonly Candidate[], house?: HouseShape): Reached[] {
  if (from.length === 0 && house === undefined) return [];
  return [{ removed, reaches: house === undefined ? from.map((each) => ({ from: each, to: removed })) : [], house }];
}

/** The ends of the chains that see it or, for a loop, the two ends of a weak link. */
function endsAbout(grid: Grid, chains: readonly ChainEnds[], removed: Candidate): Candidate[] {
  const sees = (node: readonly Candidate[]) =>
    node.length > 0 && node.every((candidate) => has(grid.conflicts[removed]!, candidate));
  const both = (a: readonly Candidate[], b: readonly Candidate[]) => (sees(a) && sees(b) ? [...a, ...b] : []);
  const found = chains.flatMap(({ first, last, weak, isLoop }) => {
    if (isLoop) return weak.map(([a, b]) => both(a, b)).find((ends) => ends.length > 0) ?? [];
    // Several chains run from the members of one set, each to what sees the removed candidate.
    if (chains.length > 1) return [...(sees(last) ? last : sees(first) ? first : [])];
    return both(first, last);
  });
  return [...new Set(found)];
}

/** The members of the sets that see it: along one house if they are all in it, otherwise each separately. */
function fromSets(grid: Grid, { sets }: Argument, removed: Candidate): Reached[] {
  const cell = cellOf(grid, removed);
  const seen = sets.flatMap(({ members }) =>
    membersOf(members).filter((member) => has(grid.conflicts[removed]!, member) && cellOf(grid, member) !== cell),
  );
  if (seen.length === 0) return [];
  const holdsAll = ({ cells }: HouseShape, members: readonly Candidate[]) =>
    members.every((member) => cells.includes(cellOf(grid, member)));
  const along = grid.housesOf[cell]!.filter((each) => holdsAll(each, seen));
  const all = sets.flatMap(({ members }) => membersOf(members));
  // The house of a subset rather than one that happens to contain all the members that see it.
  const house = along.find((each) => holdsAll(each, all)) ?? along[0];
  return linesTo(removed, [...new Set(seen)], house);
}
