/**
 * Colouring, of one digit. Places joined by houses where the digit has exactly two places (conjugate pairs) make a
 * cluster, whose places alternate between two colours: all of one colour are true and all of the other false.
 *
 * Simple colouring keeps to one cluster. A trap: what sees both colours is removed. A wrap: two places of one colour
 * see each other, so that colour is false and the other true. Multi-colouring ties two or more clusters together: a
 * colour that sees places of both colours of another cluster is false; if a colour of one sees a colour of the other,
 * one of the two opposite colours is true, and what sees both is removed.
 *
 * The named sets need not cover the whole cluster: further pairs of the position count as part of it.
 */
import { intersection, isEmpty, overlaps, setOf, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { digitOf } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type Cluster, clusters, joinedOf, wrapOf } from './clusters.ts';
import { findMulti, findSimple } from './colouring-instances.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { digitOfAll } from './set-reading.ts';
import { type Recognition, type Shape, technique } from './technique.ts';

export const simpleColouring = technique({
  name: 'simple colouring',
  plural: 'simple colourings',
  otherNames: ['simple colours'],
  family: 'one digit',
  kindOf: [],
  teaching: { place: 2110, cost: 8, sets: 4, each: 1 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Chains of one digit', shows: 'removals' },
  recognise: recogniseSimple,
  find: findSimple,
});
export const multiColouring = technique({
  name: 'multi-colouring',
  plural: 'multi-colourings',
  otherNames: ['multi-colours'],
  family: 'one digit',
  kindOf: [],
  teaching: { place: 4030, cost: 11, sets: 4, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains of one digit', shows: 'removals' },
  recognise: recogniseMulti,
  find: findMulti,
});

function recogniseSimple(shape: Shape): Recognition {
  const used = clustersUsed(shape);
  const [cluster, ...others] = used;
  if (cluster === undefined || others.length > 0) return undefined;
  return forEachConclusion(shape, (conclusion) => (follows(shape, cluster, conclusion) ? fits : undefined));
}

function recogniseMulti(shape: Shape): Recognition {
  return clustersUsed(shape).length > 1 ? fits : undefined;
}

/** The clusters that contain the sets, if all sets are pairs of one digit and there are two or more; otherwise none. */
function clustersUsed({ position, sets }: Shape): readonly Cluster[] {
  const { grid } = position;
  const digit = digitOfAll(grid, sets);
  if (digit === undefined || sets.length < 2 || sets.some((set) => countOf(set.members) !== 2)) return [];
  return joinedOf(grid, clusters(position, digit), sets).filter(({ places }) =>
    sets.some((set) => overlaps(set.members, places)),
  );
}

/** Whether a trap or a wrap of the cluster gives the conclusion. */
function follows({ position: { grid } }: Shape, cluster: Cluster, conclusion: Conclusion): boolean {
  const wrapped = wrapOf(grid, cluster);
  const [a, b] = cluster.colours;
  if (conclusion.kind === 'one-of') {
    const meets = (colour: typeof a) => overlaps(conclusion.candidates, colour);
    return wrapped === undefined ? meets(a) && meets(b) : meets(wrapped.isTrue);
  }
  if (digitOf(grid, conclusion.candidate) !== cluster.digit) return false;
  const seen = grid.conflicts[conclusion.candidate]!;
  if (
    wrapped !== undefined &&
    (overlaps(seen, wrapped.isTrue) || !isEmpty(intersection(setOf(grid, [conclusion.candidate]), wrapped.isFalse)))
  )
    return true;
  return !overlaps(union(a, b), setOf(grid, [conclusion.candidate])) && overlaps(seen, a) && overlaps(seen, b);
}
