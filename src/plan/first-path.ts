/**
 * The first path found: in each position, all arguments of the least costly name that has any; then pruned of what was
 * not needed.
 */
import type { Position } from '../proof/kernel.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import { leastCostlyMoves } from './available.ts';
import { close } from './free-moves.ts';
import { type Move, make, positionAfter } from './move.ts';
import { pruned } from './prune.ts';

export interface Search {
  readonly costs: TeachingCosts;
  readonly keepGoing: () => boolean;
  readonly isReached: (position: Position) => boolean;
}

export interface FirstPath {
  readonly kind: 'reached' | 'stuck' | 'unfinished';
  /** Those that are not free; if the goal was not reached, all that were made. */
  readonly moves: readonly Move[];
}

export function firstPath(start: Position, { costs, keepGoing, isReached }: Search): FirstPath {
  const { free } = costs;
  const moves: Move[] = [];
  let position = close(start, free);
  while (!isReached(position)) {
    const offered = leastCostlyMoves(position, costs, keepGoing);
    if (offered === 'out of time') return { kind: 'unfinished', moves };
    const before = moves.length;
    for (const move of offered) {
      const made = make(position, move);
      if (made === undefined) continue;
      moves.push(move);
      position = close(positionAfter(made), free);
      if (isReached(position)) break;
    }
    if (moves.length === before) return { kind: 'stuck', moves };
  }
  return { kind: 'reached', moves: pruned(moves, { start, free, isReached }) ?? moves };
}
