/**
 * The report of a plan.
 */
import { type Candidate, difference, has, membersOf, setOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlanReport } from './plan-report.ts';
import { writtenArgument } from './reported-argument.ts';

/** `puzzle`: the puzzle as given. */
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
    proof: proofOf(plan),
    ...(plan.until === undefined ? {} : { until: plan.until.map((each) => placing(plan, each)) }),
    atLeast: plan.atLeast,
    hard: steps.filter(({ cost }) => cost > 0).length,
    steps,
    end: asStart(plan),
  };
}

/** What is proved about the cost of a plan, in a sentence. */
function proofOf({ outcome, unproved, cost }: Plan): string {
  switch (outcome) {
    case 'least':
      return cost === 0
        ? 'Free steps reach the goal, and nothing costs less.'
        : 'No path of the arguments that the search knows how to find costs less, assuming that an argument does not become costlier as more is known.';
    case 'found':
      return unproved === 'singles have a price'
        ? 'Nothing is proved, since naked or hidden singles are not free: when they have a cost, a less costly path may be missed.'
        : 'Time ran out before it was proved that no path costs less.';
    case 'stuck':
      return 'None of the arguments that the search knows how to find leads on.';
    case 'unfinished':
      return 'Time ran out before a path was found.';
    default:
      return outcome satisfies never;
  }
}

function placing({ start: { grid } }: Plan, candidate: Candidate): string {
  return printConclusion(grid, { kind: 'one-of', candidates: setOf(grid, [candidate]) });
}

/** What is placed at the end apart from the givens, and what was removed that no placement rules out. */
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
