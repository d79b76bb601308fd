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
  /** Asked again and again: the search ends, with what it has, when this says no. */
  readonly keepGoing: () => boolean;
  /** These candidates are to be placed; without it the whole board is. */
  readonly until?: readonly Candidate[];
  /** Told of each better path, and of its moves. */
  readonly onBetter?: (plan: Plan, moves: readonly Move[]) => void;
  /** Asked for paths that were found beside this search; each is looked at like any other. */
  readonly foundElsewhere?: () => readonly Move[] | undefined;
}

export interface PlanStep {
  readonly name: ArgumentName;
  /** What it costs to teach; 0 for a free one. */
  readonly cost: number;
  /** The position in which it is made. */
  readonly position: Position;
  /** Its sets in that position, its chain or pattern, and no conclusion that the path does not need. */
  readonly instance: Instance;
  /** The earlier steps whose conclusions made its sets what they are: numbers from 0, ascending. */
  readonly restsOn: readonly number[];
  /** The later steps that rest on it, likewise. */
  readonly opens: readonly number[];
}

/**
 * `least`: proved that no path of these arguments costs less, by the reckoning of `least-path.ts`. `found`: the best that
 * was found before time ran out, or by a table that prices singles, of which nothing is proved.
 * `stuck`: no named argument leads on from `end`, every one that there was having been made. `unfinished`: time ran out first.
 */
export type PlanOutcome = 'least' | 'found' | 'stuck' | 'unfinished';

/** Why a path that was found is not proved to be the least. */
export type Unproved = 'time ran out' | 'singles have a price';

export interface Plan {
  readonly outcome: PlanOutcome;
  /** Where the outcome is `found`. */
  readonly unproved: Unproved | undefined;
  /** In order, the free ones included. Where the goal is not reached, the way to `end`. */
  readonly steps: readonly PlanStep[];
  /** What its steps cost together. */
  readonly cost: number;
  /** No path costs less than this, so far as was proved. */
  readonly atLeast: number;
  /** The goal, where it is not the whole board. */
  readonly until: readonly Candidate[] | undefined;
  readonly start: Position;
  readonly end: Position;
}

/**
 * Plans from a position. Pure: the same request gives the same plan, but for where `keepGoing` cuts it short; so it does
 * whatever was found elsewhere, and when.
 */
export function planFor(start: Position, request: PlanRequest): Plan {
  const { costs, keepGoing, until, onBetter } = request;
  const isReached = goalOf(until);
  const search = { costs, keepGoing, isReached };
  const first = firstPath(start, search);
  if (first.kind !== 'reached') return planOf(start, first.moves, { costs, outcome: first.kind, atLeast: 0, until });
  const tell = (moves: readonly Move[]) =>
    onBetter?.(planOf(start, moves, { costs, outcome: 'found', atLeast: 0, until }), moves);
  tell(first.moves);
  const foundElsewhere = request.foundElsewhere ?? (() => undefined);
  const { kind, moves, atLeast } = leastPath(start, first.moves, { ...search, onBetter: tell, foundElsewhere });
  const outcome = kind === 'least' ? 'least' : 'found';
  const unproved = kind === 'least' ? undefined : kind;
  return { ...planOf(start, moves, { costs, outcome, atLeast, until }), unproved };
}

export function goalOf(until: readonly Candidate[] | undefined): (position: Position) => boolean {
  if (until === undefined) return isSolved;
  return ({ placed }) => until.every((candidate) => has(placed, candidate));
}

/** The path of these moves, with what is free between them, told in full, and nothing that does not lead to the goal. */
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
  const told = (until === undefined ? undefined : fullFrom(start, leadingTo(start, whole, until))) ?? {
    made: whole,
    end: whole.reduce((_, each) => positionAfter(each), start),
  };
  const { restsOn } = restingOf(start, told.made);
  const steps = told.made.map(
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
  return { outcome, unproved, steps, cost, atLeast, until, start, end: told.end };
}

/** The moves made anew, one after the other; undefined where one does not hold, or not under its name, without what was left out. */
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
