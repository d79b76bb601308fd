/**
 * What a step's removals open: singles that were not singles before them. A fact about the position after the step,
 * found by counting, and therefore not a claim that has to be proved.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { type Candidate, type Candidates, difference, has, membersOf, setOf } from '../grid/candidates.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, digitOf, type Grid } from '../grid/grid.ts';

/** With more than this many, the eye does not know where to look: only the first are shown. */
const most = 2;

/**
 * The candidates that the removals of `so` leave as the only one in their cell, then in a house; empty if the step
 * places a digit, or is not sound.
 */
export function openedBy(
  grid: Grid,
  { sound, step, conclusions, possibleBefore, placedBefore }: CheckedStep,
): Candidate[] {
  const so = conclusions.filter(({ origin }) => origin === 'so');
  if (!sound || step.fails || so.some(({ conclusion }) => conclusion.kind === 'one-of')) return [];
  const removed = so.flatMap(({ conclusion, verdict }) =>
    verdict === 'proved' && conclusion.kind === 'impossible' ? [conclusion.candidate] : [],
  );
  const after = difference(possibleBefore, setOf(grid, removed));
  const filled = new Set<Cell>(membersOf(placedBefore).map((candidate) => cellOf(grid, candidate)));
  const singleIn = (group: readonly Candidate[]) => {
    const [now, before] = [group.filter((each) => has(after, each)), countIn(possibleBefore, group)];
    return now.length === 1 && before > 1 && !filled.has(cellOf(grid, now[0]!)) ? now : [];
  };
  // What is left in the cell of a removal is seen immediately; what is left in a house has to be searched for.
  const naked = removed.map((candidate) => candidatesInCell(grid, cellOf(grid, candidate)));
  const singles = [...naked, ...removed.flatMap((candidate) => housesOf(grid, candidate))].flatMap(singleIn);
  return [...new Set(singles)].slice(0, most);
}

/** The places of its digit in each of its houses. */
function housesOf(grid: Grid, candidate: Candidate): Candidate[][] {
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  return grid.housesOf[cell]!.map(({ cells }) => cells.map((each) => candidateAt(grid, each, digit)));
}

function countIn(possible: Candidates, group: readonly Candidate[]): number {
  return group.filter((each) => has(possible, each)).length;
}
