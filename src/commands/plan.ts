/**
 * `proofreel plan`: the path of least teaching cost from a puzzle to its solution.
 */
import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { cellOf, type Grid } from '../grid/grid.ts';
import { parseCells } from '../grid/notation/cells.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { writeWholeFile } from '../output/whole-file.ts';
import { oneOf } from '../proof/kernel.ts';
import { planTreeSvg, printPlanTree } from '../report/plan-tree.ts';
import { printPlan } from '../report/print-plan.ts';
import { positionLines } from '../report/print-position.ts';
import { reportOfPlan } from '../report/report-of-plan.ts';
import { exitStatus } from '../verbs.ts';
import { type Audience, costsFor } from './audience.ts';
import { BadCall } from './bad-call.ts';
import { type GivenPuzzle, readGivenPuzzle } from './given-puzzle.ts';
import { refuseTarget } from './put-text.ts';
import { reachesGoal, searchedPlan, secondsOf } from './searched-plan.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

export interface PlanCall extends Audience {
  readonly costs?: string;
  readonly until?: string;
  readonly seconds?: string;
  readonly json?: boolean;
  readonly tree?: boolean;
  readonly out?: string;
}

export async function plan(given: string, call: PlanCall, terminal: Terminal): Promise<number> {
  const seconds = secondsOf(call.seconds);
  if (call.json === true && call.tree === true)
    throw new BadCall(
      '--json and --tree are two forms of the plan; ask for one (the picture of the tree goes with both: -o TREE.svg)',
    );
  if (call.out !== undefined && !/\.svg$/i.test(call.out))
    throw new BadCall(`-o ${call.out}: plan draws its tree as SVG; name a file that ends in .svg`);
  if (call.out !== undefined) refuseTarget(call.out, { puzzle: given });
  const table = costsFrom(call.costs, terminal);
  if (table === undefined) return exitStatus.unusable;
  const costs = costsFor(table, call);
  const read = readGivenPuzzle(given, terminal);
  if (read === undefined) return exitStatus.unusable;
  const until = call.until === undefined ? undefined : goalFrom(call.until, read);
  const found = searchedPlan(read, { given, costs, until, seconds }, terminal);
  const report = reportOfPlan(given, found);
  if (call.json === true) terminal.out(`${JSON.stringify(report, undefined, 2)}\n`);
  else if (call.tree === true) terminal.out(printPlanTree(report, terminal.outPaint));
  else terminal.out(printPlan(report, positionLines(found.end), terminal.outPaint));
  if (call.out !== undefined) {
    await writeWholeFile(resolve(call.out), (part) => writeFile(part, planTreeSvg(report)));
    terminal.err(`${call.out}: which argument rests on which\n`);
  }
  return reachesGoal(found) ? exitStatus.sound : exitStatus.unsound;
}

/** What is to be placed: cells, or digits in them. @throws BadCall for what is none, is wrong, or stands already */
function goalFrom(text: string, { start, solution }: GivenPuzzle): readonly Candidate[] {
  const { grid } = start;
  const print = (candidate: Candidate) => printConclusion(grid, oneOf(grid, candidate));
  const goals = text.includes('=') ? digitsOf(grid, text) : trueIn(grid, text, solution);
  const wrong = goals.find((each) => !solution.includes(each));
  if (wrong !== undefined)
    throw new BadCall(`--until ${print(wrong)} disagrees with the solution: no path leads there`);
  const open = goals.filter((each) => !has(start.placed, each));
  if (open.length === 0) throw new BadCall(`--until ${text}: that stands on the board from the start`);
  return open;
}

function digitsOf(grid: Grid, text: string): readonly Candidate[] {
  const reading = parseConclusions(grid, text);
  if (!reading.ok) throw new BadCall(`--until "${text}": ${reading.faults[0]?.message ?? 'no digit'}`);
  return reading.value.map(({ conclusion }) => {
    const members = conclusion.kind === 'one-of' ? membersOf(conclusion.candidates) : [];
    if (members.length !== 1) throw new BadCall(`--until "${text}": name cells, or digits in them: r5c5 or r5c5=3`);
    return members[0]!;
  });
}

function trueIn(grid: Grid, text: string, solution: readonly Candidate[]): readonly Candidate[] {
  const reading = parseCells(grid, text);
  if (!reading.ok)
    throw new BadCall(`--until "${text}": ${reading.faults[0]?.message ?? 'no cell'}; name cells, or digits in them`);
  return solution.filter((candidate) => reading.value.includes(cellOf(grid, candidate)));
}
