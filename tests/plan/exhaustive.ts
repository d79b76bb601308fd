/**
 * The cost of the least costly path by looking at all paths: positions by cost (E. W. Dijkstra, Numerische Mathematik 1, 1959),
 * from each every argument that is found, one after the other. It shares the finders and the kernel with the plan, and
 * nothing of its search: no bound, no pruning.
 */
import { membersOf } from '../../src/grid/candidates.ts';
import { countOf } from '../../src/grid/counting.ts';
import { after, type Position, prove } from '../../src/proof/kernel.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import type { TeachingCosts } from '../../src/techniques/teaching.ts';

/** Undefined where no path reaches the solution, `too many` where more positions than `most` would have to be looked at. */
export function leastByAllPaths(start: Position, costs: TeachingCosts, most: number): number | 'too many' | undefined {
  const waiting = new Map<number, Position[]>([[0, [start]]]);
  const done = new Set<string>();
  while (waiting.size > 0) {
    const cost = Math.min(...waiting.keys());
    const list = waiting.get(cost)!;
    const position = list.pop()!;
    if (list.length === 0) waiting.delete(cost);
    const key = `${membersOf(position.possible).join()} ${membersOf(position.placed).join()}`;
    if (done.has(key)) continue;
    done.add(key);
    if (countOf(position.placed) === position.grid.cellCount) return cost;
    if (done.size > most) return 'too many';
    for (const [next, price] of nextFrom(position, costs)) {
      const at = cost + price;
      waiting.set(at, [...(waiting.get(at) ?? []), next]);
    }
  }
  return undefined;
}

function* nextFrom(position: Position, costs: TeachingCosts): Generator<readonly [Position, number]> {
  // What is free is done at once, one after the other: it costs nothing, and takes no other proof away.
  for (const name of costs.free) {
    for (const { sets, conclusions } of instancesOf(position, name)) {
      yield [proved(position, sets, conclusions), 0];
      return;
    }
  }
  for (const { name, cost, sets: covered, each } of costs.names) {
    if (costs.free.includes(name)) continue;
    for (const { sets, conclusions } of instancesOf(position, name)) {
      const price = costs.step + cost + each * Math.max(0, sets.length - covered);
      yield [proved(position, sets, conclusions), price];
    }
  }
}

function proved(
  position: Position,
  sets: Parameters<typeof prove>[1],
  conclusions: readonly Parameters<typeof prove>[2][],
): Position {
  const proofs = conclusions.flatMap((conclusion) => {
    const outcome = prove(position, sets, conclusion);
    return outcome.kind === 'proved' ? [outcome.proof] : [];
  });
  return after(position, proofs);
}
