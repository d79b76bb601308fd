/** Instances of colouring in a position: whole clusters first, then thinned to the pairs that the conclusion needs. */
import { type Candidates, difference, intersection, membersOf, overlaps, setOf, union } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, prove } from '../proof/kernel.ts';
import { type Cluster, clusters, wrapOf } from './clusters.ts';
import { digitsWanted, plainInstance, removalsOf } from './removals.ts';
import type { Instance } from './technique.ts';

/** For each cluster: what a wrap or its traps give together, then each conclusion with just the pairs that it needs. */
export function* findSimple(position: Position, wanted?: readonly Conclusion[]): Generator<Instance> {
  const { grid } = position;
  for (const digit of digitsWanted(grid, wanted)) {
    for (const cluster of clusters(position, digit)) {
      if (cluster.pairs.length < 2) continue;
      const wrapped = wrapOf(grid, cluster);
      const gone =
        wrapped === undefined
          ? difference(seenByBoth(position, cluster.colours[0], cluster.colours[1]), cluster.places)
          : wrapped.isFalse;
      const placed = wrapped === undefined ? [] : membersOf(wrapped.isTrue);
      const conclusions: Conclusion[] = [
        ...placed.map((place): Conclusion => ({ kind: 'one-of', candidates: setOf(grid, [place]) })),
        ...removalsOf(position, gone),
      ];
      yield* instancesFor(position, [cluster], conclusions);
    }
  }
}

/** For each two clusters of a digit: what the ties between their colours give. */
export function* findMulti(position: Position, wanted?: readonly Conclusion[]): Generator<Instance> {
  for (const digit of digitsWanted(position.grid, wanted)) {
    const all = clusters(position, digit);
    for (const [index, first] of all.entries()) {
      for (const second of all.slice(index + 1)) {
        yield* instancesFor(position, [first, second], removalsOf(position, goneByTies(position, first, second)));
      }
    }
  }
}

function goneByTies(position: Position, first: Cluster, second: Cluster): Candidates {
  let gone = setOf(position.grid, []);
  for (const [own, opposite] of bothWays(first.colours)) {
    for (const [other, otherOpposite] of bothWays(second.colours)) {
      if (!colourSees(position, own, other)) continue;
      if (colourSees(position, own, otherOpposite)) gone = union(gone, own);
      if (colourSees(position, opposite, other)) gone = union(gone, other);
      gone = union(gone, seenByBoth(position, opposite, otherOpposite));
    }
  }
  return gone;
}

function bothWays([a, b]: Cluster['colours']): readonly Cluster['colours'][] {
  return [
    [a, b],
    [b, a],
  ];
}

function colourSees(position: Position, a: Candidates, b: Candidates): boolean {
  return overlaps(seenBySome(position, a), b);
}

function seenByBoth(position: Position, a: Candidates, b: Candidates): Candidates {
  return intersection(seenBySome(position, a), seenBySome(position, b));
}

function seenBySome({ grid }: Position, colour: Candidates): Candidates {
  return membersOf(colour)
    .map((place) => grid.conflicts[place]!)
    .reduce(union, setOf(grid, []));
}

/**
 * One instance for all conclusions and, if there are several, one for each, as far as the kernel proves them; what a
 * single pair gives on its own is not colouring.
 */
function* instancesFor(
  position: Position,
  used: readonly Cluster[],
  conclusions: readonly Conclusion[],
): Generator<Instance> {
  const pairs = used.flatMap((cluster) => cluster.pairs);
  const proved = conclusions.filter((conclusion) => provesAll(position, pairs, [conclusion]));
  const together = proved.filter((conclusion) => !pairs.some((pair) => provesAll(position, [pair], [conclusion])));
  if (together.length === 0) return;
  yield plainInstance(tied(position, used, together), together);
  if (together.length > 1) for (const each of together) yield plainInstance(tied(position, used, [each]), [each]);
}

/** Pairs are left out one by one as long as each cluster stays connected and everything is still proved. */
function tied(position: Position, used: readonly Cluster[], conclusions: readonly Conclusion[]): readonly OneOf[] {
  let pairs: readonly OneOf[] = used.flatMap((cluster) => cluster.pairs);
  for (const pair of [...pairs].reverse()) {
    const without = pairs.filter((other) => other !== pair);
    const isSplit = used.some(
      (cluster) => !isConnected(without.filter((each) => overlaps(each.members, cluster.places))),
    );
    if (!isSplit && provesAll(position, without, conclusions)) pairs = without;
  }
  return pairs;
}

function isConnected(pairs: readonly OneOf[]): boolean {
  const [first, ...others] = pairs;
  if (first === undefined) return false;
  let reached = first.members;
  let left = others;
  for (;;) {
    const joined = left.filter((pair) => overlaps(pair.members, reached));
    if (joined.length === 0) return left.length === 0;
    reached = joined.map((pair) => pair.members).reduce(union, reached);
    left = left.filter((pair) => !joined.includes(pair));
  }
}

function provesAll(position: Position, sets: readonly OneOf[], conclusions: readonly Conclusion[]): boolean {
  return conclusions.every((conclusion) => prove(position, sets, conclusion, 20_000).kind === 'proved');
}
