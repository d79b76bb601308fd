/**
 * Sets put into the order of a chain: from what the conclusion rules out, link by link, back to what it rules out.
 *
 * Suppose the conclusion is wrong. That strikes a part of the first set, its near end, so one candidate of the rest,
 * its far end, is true; this strikes the near end of the next set, and so on, until the last far end is struck by the
 * supposition again. That is an alternating chain: strong from near to far, weak from far to the next near.
 */
import { type Candidates, difference, intersection, isEmpty, isWithin, membersOf, setOf } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { seenByAll } from './seen-by-all.ts';

/** A strong link of the chain: one of `near` or one of `far` is true. The two share nothing and are not empty. */
export interface OrderedLink {
  readonly set: OneOf;
  readonly near: Candidates;
  readonly far: Candidates;
}

/** How many parts are examined before the search for orders ends. */
const orderBound = 20_000;

/**
 * The orders in which all the sets (two or more) form a chain to the conclusion, each end of each link accepted by
 * `isNode`. A chain is yielded in both directions.
 */
export function* chainOrders(
  grid: Grid,
  sets: readonly OneOf[],
  conclusion: Conclusion,
  isNode: (grid: Grid, part: Candidates) => boolean,
): Generator<readonly OrderedLink[]> {
  const struck = conclusion.kind === 'impossible' ? grid.conflicts[conclusion.candidate]! : conclusion.candidates;
  const search = { grid, struck, isNode, left: orderBound };
  for (const set of sets) {
    for (const link of waysToSplit(grid, set, struck)) {
      if (!isNode(grid, link.near) || !isNode(grid, link.far)) continue;
      yield* continued(
        search,
        [link],
        sets.filter((other) => other !== set),
      );
    }
  }
}

/** The set split into what is struck and the rest; a pair that is struck entirely is split both ways. */
function waysToSplit(grid: Grid, set: OneOf, struck: Candidates): OrderedLink[] {
  const near = intersection(set.members, struck);
  const far = difference(set.members, struck);
  if (isEmpty(near)) return [];
  if (!isEmpty(far)) return [{ set, near, far }];
  const [a, b, ...more] = membersOf(near).map((member) => setOf(grid, [member]));
  if (a === undefined || b === undefined || more.length > 0) return [];
  return [
    { set, near: a, far: b },
    { set, near: b, far: a },
  ];
}

interface OrderSearch {
  readonly grid: Grid;
  readonly struck: Candidates;
  readonly isNode: (grid: Grid, part: Candidates) => boolean;
  left: number;
}

function* continued(
  search: OrderSearch,
  links: readonly OrderedLink[],
  remaining: readonly OneOf[],
): Generator<readonly OrderedLink[]> {
  const last = links.at(-1)!;
  if (remaining.length === 0) {
    if (links.length > 1 && isWithin(last.far, search.struck)) yield links;
    return;
  }
  const seen = seenByAll(search.grid, last.far);
  for (const set of remaining) {
    if (--search.left < 0) return;
    for (const link of waysToSplit(search.grid, set, seen)) {
      if (!search.isNode(search.grid, link.near) || !search.isNode(search.grid, link.far)) continue;
      yield* continued(
        search,
        [...links, link],
        remaining.filter((other) => other !== set),
      );
    }
  }
}
