/**
 * `--until`: how far a plan or a draft goes.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { cellOf, type Grid } from '../grid/grid.ts';
import { parseCells } from '../grid/notation/cells.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { oneOf } from '../proof/kernel.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { GivenPuzzle } from './given-puzzle.ts';

/**
 * What is to be placed: cells, or digits in them. @throws UsageError for what is neither, is wrong, or is already
 * placed
 */
export function goalFrom(text: string, { start, solution }: GivenPuzzle): readonly Candidate[] {
  const { grid } = start;
  const print = (candidate: Candidate) => printConclusion(grid, oneOf(grid, candidate));
  const goals = text.includes('=') ? digitsOf(grid, text) : trueIn(grid, text, solution);
  const wrong = goals.find((each) => !solution.includes(each));
  if (wrong !== undefined)
    throw new UsageError(`--until ${print(wrong)} disagrees with the solution: no path leads there`);
  const open = goals.filter((each) => !has(start.placed, each));
  if (open.length === 0) throw new UsageError(`--until ${text}: that is on the board from the start`);
  return open;
}

function digitsOf(grid: Grid, text: string): readonly Candidate[] {
  const reading = parseConclusions(grid, text);
  if (!reading.ok) throw new UsageError(`--until "${text}": ${reading.faults[0]?.message ?? 'no digit'}`);
  return reading.value.map(({ conclusion }) => {
    const members = conclusion.kind === 'one-of' ? membersOf(conclusion.candidates) : [];
    if (members.length !== 1) throw new UsageError(`--until "${text}": name cells, or digits in them: r5c5 or r5c5=3`);
    return members[0]!;
  });
}

function trueIn(grid: Grid, text: string, solution: readonly Candidate[]): readonly Candidate[] {
  const reading = parseCells(grid, text);
  if (!reading.ok)
    throw new UsageError(
      `--until "${text}": ${reading.faults[0]?.message ?? 'no cell'}; name cells, or digits in them`,
    );
  return solution.filter((candidate) => reading.value.includes(cellOf(grid, candidate)));
}
