/**
 * The search for a plan as the verbs run it: on two cores, for `seconds` seconds, with its progress on a terminal.
 */
import type { Candidate } from '../grid/candidates.ts';
import { type Plan, planFor } from '../plan/plan.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import type { GivenPuzzle } from './given-puzzle.ts';
import { planHelper } from './plan-helper.ts';
import type { Terminal } from './terminal.ts';

export interface PlanSearch {
  /** The puzzle as given. */
  readonly given: string;
  readonly costs: TeachingCosts;
  /** What is to be placed; if undefined, the whole board. */
  readonly until?: readonly Candidate[] | undefined;
  readonly seconds: number;
}

export function searchedPlan({ start }: GivenPuzzle, search: PlanSearch, terminal: Terminal): Plan {
  const { given, costs, until, seconds } = search;
  const helper = planHelper({ given, costs, until });
  try {
    return planFor(start, {
      costs,
      ...(until === undefined ? {} : { until }),
      keepGoing: untilPassed(seconds),
      foundElsewhere: helper.found,
      onBetter: ({ cost }) => {
        helper.beat(cost);
        sayBetter(cost, terminal);
      },
    });
  } finally {
    helper.end();
    if (terminal.isWatched) terminal.err(clearLine);
  }
}

export function reachesGoal({ outcome }: Plan): boolean {
  return outcome === 'least' || outcome === 'found';
}

/** Returns true until that many seconds have passed. */
export function untilPassed(seconds: number): () => boolean {
  const end = performance.now() + 1000 * seconds;
  return () => performance.now() < end;
}

const clearLine = '\r\u001b[K';

function sayBetter(cost: number, terminal: Terminal): void {
  if (terminal.isWatched)
    terminal.err(`${clearLine}a path of cost ${Number(cost.toFixed(3))}; searching for one that costs less`);
}
