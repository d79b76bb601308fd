/**
 * The report of a plan.
 */
import { type Candidate, difference, has, membersOf, setOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanReport } from './plan-report.ts';
import { writtenArgument } from './reported-argument.ts';

/** `puzzle`: how the puzzle was given. */
export function reportOfPlan(puzzle: string, plan: Plan): PlanReport {
  const { grid } = plan.start;
  const steps = plan.steps.map((step, index) => ({
    number: index + 1,
    name: step.name,
    cost: step.cost,
    ...writtenArgument(grid, step.instance),
    conclusions: step.instance.conclusions.map((conclusion) => printConclusion(grid, conclusion)),
    restsOn: step.restsOn.map((other) => other + 1),
    opens: step.opens.map((other) => other + 1),
  }));
  return {
    plan: 1,
    puzzle,
    outcome: plan.outcome,
    cost: plan.cost,
    atLeast: plan.atLeast,
    hard: steps.filter(({ cost }) => cost > 0).length,
    steps,
    end: asStart(plan),
  };
}

/** What stands at the end beside the givens, and what was removed that nothing placed rules out. */
function asStart({ start, end }: Plan): PlanReport['end'] {
  const { grid } = end;
  const print = (conclusion: Conclusion) => printConclusion(grid, conclusion);
  const placed = membersOf(difference(end.placed, end.givens));
  const seen = (candidate: Candidate) => membersOf(end.placed).some((each) => has(grid.conflicts[each]!, candidate));
  const removed = membersOf(difference(start.possible, end.possible)).filter((candidate) => !seen(candidate));
  return {
    placed: placed.map((candidate) => print({ kind: 'one-of', candidates: setOf(grid, [candidate]) })),
    removed: removed.map((candidate) => print({ kind: 'impossible', candidate })),
  };
}
