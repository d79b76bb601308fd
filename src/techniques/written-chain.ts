/**
 * A chain as its author wrote it, read link by link: the order in which its sets are presented, if it uses all of them.
 */
import { type Candidates, intersection, isEmpty, isWithin, union } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { ChainNode, Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { candidatesOf } from '../proof/links.ts';
import type { OrderedLink } from './chain-order.ts';
import type { Shape } from './technique.ts';

/**
 * The strong links from end to end, if the argument is one open chain that begins and ends with one and uses every set.
 */
export function writtenOrder({ position, chains, sets }: Shape): readonly OrderedLink[] | undefined {
  const [chain, ...others] = chains;
  if (chain === undefined || others.length > 0 || chain.loop || chain.links.length % 2 === 0) return undefined;
  const order: OrderedLink[] = [];
  for (const [index, { kind, from, to }] of chain.links.entries()) {
    if (index % 2 === 1) continue;
    const near = stillPossible(position, chain.nodes[from]!);
    const far = stillPossible(position, chain.nodes[to]!);
    const set = sets.find((each) => isWithin(each.members, union(near, far)));
    if (kind !== 'strong' || set === undefined || isEmpty(near) || isEmpty(far)) return undefined;
    order.push({ set, near, far });
  }
  return usesEvery(order, sets) ? order : undefined;
}

/** Whether the conclusion says no more than that one of the two ends of the chain is true. */
export function followsFromEnds(grid: Grid, order: readonly OrderedLink[], conclusion: Conclusion): boolean {
  const [start, end] = [order[0]!.near, order.at(-1)!.far];
  const within = (candidates: Candidates) => isWithin(start, candidates) && isWithin(end, candidates);
  if (conclusion.kind === 'one-of') return within(conclusion.candidates);
  return within(grid.conflicts[conclusion.candidate]!);
}

function stillPossible(position: Position, node: ChainNode): Candidates {
  return intersection(candidatesOf(position.grid, node), position.possible);
}

function usesEvery(order: readonly OrderedLink[], sets: readonly OneOf[]): boolean {
  return sets.every((set) => order.some((link) => link.set === set));
}
