/**
 * A plan: a path from a position to its goal whose steps are named arguments, at the least cost of teaching.
 */

import type { Candidate } from '../grid/candidates.ts';
import { has } from '../grid/candidates.ts';
import type { Position } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import type { Instance } from '../techniques/technique.ts';
import { firstPath } from './first-path.ts';
import { leastPath } from './least-path.ts';
import { isSolved, type MadeMove, type Move, make, positionAfter } from './move.ts';
import { replay } from './replay.ts';
import { allUnder, restingOf } from './rests-on.ts';

export interface PlanRequest {
  readonly costs: TeachingCosts;
  /** Polled throughout: when it returns false, the search ends with what it has. */
  readonly keepGoing: () => boolean;
  /** These candidates are to be placed; without it the whole board is. */
  readonly until?: readonly Candidate[];
  /** Receives each better path, and its moves. */
  readonly onBetter?: (plan: Plan, moves: readonly Move[]) => void;
  /** Polled for paths that were found outside this search; each is treated like any other. */
  readonly foundElsewhere?: () => readonly Move[] | undefined;
}

export interface PlanStep {
  readonly name: ArgumentName;
  /** What it costs to teach; 0 for a free one. */
  readonly cost: number;
  /** The position in which it is made. */
  readonly position: Position;
  /** Its sets in that position, its chain or pattern, and only conclusions that the path needs. */
  readonly instance: Instance;
  /** The earlier steps whose conclusions made its sets what they are: numbers from 0, ascending. */
  readonly restsOn: readonly number[];
  /** The later steps that rest on it, likewise. */
  readonly opens: readonly number[];
}

/**
 * `least`: proved that no path of these arguments costs less, by the method of `least-path.ts`. `found`: the best found
 * before time ran out, or with a table that prices singles, for which nothing is proved. `stuck`: no named argument
 * leads on from `end`, all available ones having been made. `unfinished`: time ran out first.
 */
export type PlanOutcome = 'least' | 'found' | 'stuck' | 'unfinished';

/** Why a path that was found is not proved to be the least. */
export type Unproved = 'time ran out' | 'singles have a price';

export interface Plan {
  readonly outcome: PlanOutcome;
  /** Defined if the outcome is `found`. */
  readonly unproved: Unproved | undefined;
  /** In order, the free ones included. If the goal is not reached, the way to `end`. */
  readonly steps: readonly PlanStep[];
  /** The total cost of its steps. */
  readonly cost: number;
  /** No path costs less than this, as far as was proved. */
  readonly atLeast: number;
  /** The goal, if it is not the whole board. */
  readonly until: readonly Candidate[] | undefined;
  readonly start: Position;
  readonly end: Position;
}

/**
 * Plans from a position. Pure: the same request gives the same plan, except where `keepGoing` cuts it short; what was
 * found elsewhere, and when, makes no difference.
 */
export function planFor(start: Position, request: PlanRequest): Plan {
  const { costs, keepGoing, until, onBetter } = request;
  const isReached = goalOf(until);
  const search = { costs, keepGoing, isReached };
  const first = firstPath(start, search);
  if (first.kind !== 'reached') return planOf(start, first.moves, { costs, outcome: first.kind, atLeast: 0, until });
  const report = (moves: readonly Move[]) =>
    onBetter?.(planOf(start, moves, { costs, outcome: 'found', atLeast: 0, until }), moves);
  report(first.moves);
  const foundElsewhere = request.foundElsewhere ?? (() => undefined);
  const { kind, moves, atLeast } = leastPath(start, first.moves, { ...search, onBetter: report, foundElsewhere });
  const outcome = kind === 'least' ? 'least' : 'found';
  const unproved = kind === 'least' ? undefined : kind;
  return { ...planOf(start, moves, { costs, outcome, atLeast, until }), unproved };
}

export function goalOf(until: readonly Candidate[] | undefined): (position: Position) => boolean {
  if (until === undefined) return isSolved;
  return ({ placed }) => until.every((candidate) => has(placed, candidate));
}

/** The whole path of these moves, with the free ones between them, and nothing that does not lead to the goal. */
export function planOf(
  start: Position,
  moves: readonly Move[],
  {
    costs,
    outcome,
    atLeast,
    until,
  }: {
    readonly costs: TeachingCosts;
    readonly outcome: PlanOutcome;
    readonly atLeast: number;
    readonly until: readonly Candidate[] | undefined;
  },
): Plan {
  const whole = replay(start, moves, { free: costs.free, keepFree: true }).made;
  const path = (until === undefined ? undefined : fullFrom(start, leadingTo(start, whole, until))) ?? {
    made: whole,
    end: whole.reduce((_, each) => positionAfter(each), start),
  };
  const { restsOn } = restingOf(start, path.made);
  const steps = path.made.map(
    ({ move, instance, position }, index): PlanStep => ({
      name: move.name,
      cost: move.cost,
      position,
      instance,
      restsOn: restsOn[index]!,
      opens: [...restsOn.keys()].filter((later) => restsOn[later]!.includes(index)),
    }),
  );
  const cost = steps.reduce((sum, step) => sum + step.cost, 0);
  const unproved = outcome === 'found' ? 'time ran out' : undefined;
  return { outcome, unproved, steps, cost, atLeast, until, start, end: path.end };
}

/** The moves made again, one after the other; undefined if one fails, or loses its name, without what was left out. */
function fullFrom(
  start: Position,
  moves: readonly MadeMove[],
): { readonly made: readonly MadeMove[]; readonly end: Position } | undefined {
  const made: MadeMove[] = [];
  let end = start;
  for (const { move, instance } of moves) {
    const again = make(end, { ...move, conclusions: instance.conclusions });
    if (again === undefined) return undefined;
    made.push(again);
    end = positionAfter(again);
  }
  return { made, end };
}

function leadingTo(start: Position, made: readonly MadeMove[], until: readonly Candidate[]): readonly MadeMove[] {
  const { restsOn } = restingOf(start, made);
  const places = ({ instance }: MadeMove) =>
    instance.conclusions.some((each) => each.kind === 'one-of' && until.some((goal) => has(each.candidates, goal)));
  const goals = made.flatMap((each, index) => (places(each) ? [index] : []));
  const kept = allUnder(restsOn, goals);
  return made.filter((_, index) => kept.has(index));
}
