/**
 * What an argument costs an audience, from the table of teaching costs.
 */
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { NameCost, TeachingCosts } from '../techniques/teaching.ts';

/** Costs are sums of decimal fractions, so comparisons allow this tolerance. */
export const play = 1e-9;

/** The cost of one argument of this name with this many sets. */
export function costOf(costs: TeachingCosts, name: NameCost, setCount: number): number {
  return costs.step + name.cost + name.each * Math.max(0, setCount - name.sets);
}

/** The least that an argument of this name can cost. */
export function leastCostOf(costs: TeachingCosts, name: NameCost): number {
  return costs.step + name.cost;
}

/** The least that any argument that is not free costs; a path with one of them costs no less. 0 if there is none. */
export function leastOfAll(costs: TeachingCosts): number {
  const [least] = namesByCost(costs);
  return least === undefined ? 0 : leastCostOf(costs, least);
}

/** Whether no set of one candidate is left once all free moves are made. */
export function singlesAreFree({ free }: Pick<TeachingCosts, 'free'>): boolean {
  return free.includes('naked single') && free.includes('hidden single');
}

export function isLess(a: number, b: number): boolean {
  return a < b - play;
}

/** The names of the table from the least costly to the costliest, in the table's order where they cost the same. */
export function namesByCost(costs: TeachingCosts): readonly NameCost[] {
  return costs.names
    .filter(({ name }) => !costs.free.includes(name))
    .toSorted((a, b) => leastCostOf(costs, a) - leastCostOf(costs, b));
}

/** The table without the names that are barred for an audience; barred free ones are dropped too. */
export function restricted(costs: TeachingCosts, isAllowed: (name: ArgumentName) => boolean): TeachingCosts {
  return {
    ...costs,
    free: costs.free.filter(isAllowed),
    names: costs.names.filter(({ name }) => isAllowed(name)),
  };
}
