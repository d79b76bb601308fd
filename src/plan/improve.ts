/**
 * Less costly paths by random search: repeatedly a path that tries the names in another order, pruned in another order.
 * Proves nothing about what is least; it lowers the cost from which a proof has to start.
 */
import type { Position } from '../proof/kernel.ts';
import type { NameCost, TeachingCosts } from '../techniques/teaching.ts';
import { movesNamed } from './available.ts';
import type { Search } from './first-path.ts';
import { close } from './free-moves.ts';
import { sumOf } from './least-path.ts';
import { type Move, make, positionAfter } from './move.ts';
import { pruned } from './prune.ts';
import { isLess, leastCostOf, namesByCost } from './teaching.ts';

export interface Improvement extends Search {
  /** From 0 to 1, 1 excluded: the same numbers give the same paths. */
  readonly chance: () => number;
  readonly onBetter: (moves: readonly Move[]) => void;
  /** What a path has to cost less than, as far as is known elsewhere. */
  readonly below: () => number;
}

/** How many pruning orders are tried for each path. */
const ordersOfPruning = 4;

/** Continues until `keepGoing` returns false. */
export function improve(start: Position, improvement: Improvement): void {
  const { costs, keepGoing, chance, isReached, onBetter } = improvement;
  let best = improvement.below();
  while (keepGoing()) {
    best = Math.min(best, improvement.below());
    const moves = ladder(start, improvement, mixed(costs, best, chance));
    for (let order = 0; moves !== undefined && order < ordersOfPruning && keepGoing(); order++) {
      const weigh = ({ cost }: Move) => cost * (0.5 + chance());
      const path = pruned(moves, { start, free: costs.free, isReached, weigh });
      if (path === undefined || !isLess(sumOf(path), best)) continue;
      best = sumOf(path);
      onBetter(path);
    }
  }
}

/** The names that can be part of a less costly path, roughly by cost; a few are left out each time. */
function mixed(costs: TeachingCosts, best: number, chance: () => number): readonly NameCost[] {
  const usable = namesByCost(costs).filter((name) => isLess(leastCostOf(costs, name), best));
  return usable
    .filter(() => chance() > 0.15)
    .map((name) => ({ name, rank: leastCostOf(costs, name) * (0.6 + 0.8 * chance()) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ name }) => name);
}

/** In each position, all moves of the first name that has any; undefined if that does not reach the goal. */
function ladder(
  start: Position,
  { costs, keepGoing, isReached }: Improvement,
  names: readonly NameCost[],
): readonly Move[] | undefined {
  const moves: Move[] = [];
  let position = close(start, costs.free);
  for (let at = 0; !isReached(position); ) {
    const name = names[at];
    if (name === undefined || !keepGoing()) return undefined;
    const before = moves.length;
    for (const move of movesNamed(position, name, costs)) {
      const made = make(position, move);
      if (made === undefined) continue;
      moves.push(move);
      position = close(positionAfter(made), costs.free);
    }
    at = moves.length > before ? 0 : at + 1;
  }
  return moves;
}
