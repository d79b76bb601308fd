/**
 * `proofreel plan`: the path of least teaching cost from a puzzle to its solution.
 */
import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { writeWholeFile } from '../output/whole-file.ts';
import { type Plan, planFor } from '../plan/plan.ts';
import { planTreeSvg, printPlanTree } from '../report/plan-tree.ts';
import { printPlan } from '../report/print-plan.ts';
import { positionLines } from '../report/print-position.ts';
import { reportOfPlan } from '../report/report-of-plan.ts';
import { exitStatus } from '../verbs.ts';
import { type Audience, costsFor } from './audience.ts';
import { BadCall } from './bad-call.ts';
import { readGivenPuzzle } from './given-puzzle.ts';
import { planHelper } from './plan-helper.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

export interface PlanCall extends Audience {
  readonly costs?: string;
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
  const table = costsFrom(call.costs, terminal);
  if (table === undefined) return exitStatus.unusable;
  const costs = costsFor(table, call);
  const read = readGivenPuzzle(given, terminal);
  if (read === undefined) return exitStatus.unusable;
  const helper = planHelper(given, costs);
  const found = planFor(read.start, {
    costs,
    keepGoing: untilPassed(seconds),
    foundElsewhere: helper.found,
    onBetter: ({ cost }) => {
      helper.beat(cost);
      sayBetter(cost, terminal);
    },
  });
  helper.end();
  if (terminal.isWatched) terminal.err(clearLine);
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

export function reachesGoal({ outcome }: Plan): boolean {
  return outcome === 'least' || outcome === 'found';
}

/** Seconds of `--seconds`, 10 where it is not given. */
export function secondsOf(text: string | undefined): number {
  if (text === undefined) return 10;
  const seconds = Number(text);
  if (!/^\d+(\.\d+)?$/.test(text.trim()) || seconds <= 0 || seconds > 86_400)
    throw new BadCall(`--seconds ${text}: write a number of seconds above 0, up to 86400 (a day)`);
  return seconds;
}

/** Says yes until so many seconds have passed from now. */
export function untilPassed(seconds: number): () => boolean {
  const end = performance.now() + 1000 * seconds;
  return () => performance.now() < end;
}

const clearLine = '\r\u001b[K';

function sayBetter(cost: number, terminal: Terminal): void {
  if (terminal.isWatched)
    terminal.err(`${clearLine}a path of ${Number(cost.toFixed(3))} points; looking for a cheaper one`);
}
