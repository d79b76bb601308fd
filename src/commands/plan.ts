/**
 * `proofreel plan`: the path of least teaching cost from a puzzle to its solution.
 */
import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import { planTreeSvg, printPlanTree } from '../report/plan-tree.ts';
import { printPlan } from '../report/print-plan.ts';
import { positionLines } from '../report/print-position.ts';
import { reportOfPlan } from '../report/report-of-plan.ts';
import { exitStatus } from '../verbs/exit-status.ts';
import type { plan as verb } from '../verbs/plan.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { CallOf } from '../verbs/verb.ts';
import { costsFor } from './audience.ts';
import { readGivenPuzzle } from './given-puzzle.ts';
import { goalFrom } from './goal.ts';
import { refuseTarget } from './put-text.ts';
import { reachesGoal, searchedPlan } from './searched-plan.ts';
import { costsFrom } from './teaching-costs.ts';
import type { Terminal } from './terminal.ts';

export async function plan(call: CallOf<typeof verb>, terminal: Terminal): Promise<number> {
  const { given, seconds } = call;
  if (call.json && call.tree)
    throw new UsageError(
      '--json and --tree are two forms of the plan; ask for one (the picture of the tree goes with both: -o TREE.svg)',
    );
  if (call.out !== undefined && !/\.svg$/i.test(call.out))
    throw new UsageError(`-o ${call.out}: plan draws its tree as SVG; name a file that ends in .svg`);
  if (call.out !== undefined) refuseTarget(call.out, { puzzle: given });
  const table = costsFrom(call.costs, terminal);
  if (table === undefined) return exitStatus.unusable;
  const costs = costsFor(table, call);
  const read = readGivenPuzzle(given, terminal);
  if (read === undefined) return exitStatus.unusable;
  const until = call.until === undefined ? undefined : goalFrom(call.until, read);
  const found = searchedPlan(read, { given, costs, until, seconds }, terminal);
  const report = reportOfPlan(given, found);
  if (call.json) terminal.out(`${JSON.stringify(report, undefined, 2)}\n`);
  else if (call.tree) terminal.out(printPlanTree(report, terminal.outPaint));
  else terminal.out(printPlan(report, positionLines(found.end), terminal.outPaint));
  if (call.out !== undefined) {
    await writeAtomically(resolve(call.out), (part) => writeFile(part, planTreeSvg(report)));
    terminal.err(`${call.out}: which argument rests on which\n`);
  }
  return reachesGoal(found) ? exitStatus.sound : exitStatus.unsound;
}
