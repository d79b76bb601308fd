/**
 * The moves that a position offers, by cost: each argument once, under the name by which it costs least.
 */
import type { Position } from '../proof/kernel.ts';
import { techniqueNamed } from '../techniques/all-techniques.ts';
import type { NameCost, TeachingCosts } from '../techniques/teaching.ts';
import { argumentKey, type Move, moveOf, provedBy } from './move.ts';
import { costOf, isLess, leastCostOf, namesByCost } from './teaching.ts';

/** How many instances of one name are looked at. */
const instanceBound = 1_000;

/** The moves under one name, each with every conclusion of the finder that the kernel proves. */
export function* movesNamed(position: Position, name: NameCost, costs: TeachingCosts): Generator<Move> {
  let left = instanceBound;
  for (const instance of techniqueNamed(name.name).find(position)) {
    if (--left < 0) return;
    const conclusions = provedBy(position, instance.sets, instance.conclusions).map((proof) => proof.conclusion);
    if (conclusions.length === 0) continue;
    const move = moveOf(name.name, costOf(costs, name, instance.sets.length), { ...instance, conclusions });
    if (move !== undefined) yield move;
  }
}

/** The moves of the first name that has any; empty if no name has. */
export function leastCostlyMoves(
  position: Position,
  costs: TeachingCosts,
  keepGoing: () => boolean,
): readonly Move[] | 'out of time' {
  for (const name of namesByCost(costs)) {
    if (!keepGoing()) return 'out of time';
    const moves = [...movesNamed(position, name, costs)];
    if (moves.length > 0) return moves;
  }
  return [];
}

/** All moves that cost less than `below`; each argument once, the least costly first. */
export function movesBelow(
  position: Position,
  costs: TeachingCosts,
  below: number,
  keepGoing: () => boolean,
): readonly Move[] | 'out of time' {
  const found = new Map<string, Move>();
  for (const name of namesByCost(costs)) {
    if (!isLess(leastCostOf(costs, name), below)) break;
    if (!keepGoing()) return 'out of time';
    for (const move of movesNamed(position, name, costs)) {
      if (!keepGoing()) return 'out of time';
      if (!isLess(move.cost, below)) continue;
      const key = argumentKey(move);
      const known = found.get(key);
      if (known !== undefined && !isLess(move.cost, known.cost)) continue;
      found.delete(key); // re-inserted: it may have been found first under a costlier name
      found.set(key, move);
    }
  }
  return [...found.values()].sort((a, b) => a.cost - b.cost);
}
