/**
 * Three-dimensional Medusa: colouring across digits. Candidates joined by pairs (the two digits of a cell, the two
 * places of a digit in a house) make a cluster of two colours; all of one colour are true and all of the other false.
 *
 * - Trap: what conflicts with both colours is removed, whether through a house or within a cell.
 * - Wrap: two candidates of one colour conflict, so that colour is false and the other true.
 * - Emptied: one colour conflicts with every candidate of a further cell, or with every place of a digit in a further
 *   house, so that colour is false.
 *
 * Further pairs of the position count as part of the cluster. With pairs of only one digit it is simple colouring, and
 * gets a warning.
 */
import { type Candidates, has, overlaps } from '../grid/candidates.ts';
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { clusterWith, emptiesBy, type MedusaCluster, wrapOfCluster } from './medusa-clusters.ts';
import { findMedusas } from './medusa-instances.ts';
import { bestOf, fits, forEachConclusion, loosely } from './recognition.ts';
import { digitsOf } from './seen-by-all.ts';
import { type Recognition, type Shape, technique } from './technique.ts';

export const medusa = technique({
  name: 'three-dimensional Medusa',
  plural: 'three-dimensional Medusas',
  otherNames: ['3D Medusa', '3-dimensional Medusa'],
  family: 'chains',
  kindOf: [],
  teaching: { place: 4260, cost: 18, sets: 6, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise,
  find: findMedusas,
});

function recognise(shape: Shape): Recognition {
  const { position, sets } = shape;
  if (sets.length < 2) return undefined;
  return bestOf(clusterWith(position, sets), (cluster) => {
    const further = sets.filter((set) => !cluster.pairs.includes(set) && !isPairOf(cluster, set));
    if (further.length > 1 || sets.length - further.length < 2) return undefined;
    const answer = forEachConclusion(shape, (conclusion) =>
      follows(position.grid, cluster, further[0], conclusion) ? fits : undefined,
    );
    if (answer === undefined || digitsUsed(position.grid, sets) > 1) return answer;
    return loosely('all of it is one digit: simple colouring');
  });
}

/** Whether both members of a set of two are in the cluster, and therefore in its two colours. */
function isPairOf({ colours: [a, b] }: MedusaCluster, { members }: OneOf): boolean {
  return overlaps(members, a) && overlaps(members, b);
}

function digitsUsed(grid: Grid, sets: readonly OneOf[]): number {
  return new Set(sets.flatMap((set) => digitsOf(grid, set.members))).size;
}

function follows(grid: Grid, cluster: MedusaCluster, further: OneOf | undefined, conclusion: Conclusion): boolean {
  const [a, b] = cluster.colours;
  const settled =
    wrapOfCluster(grid, cluster) ?? (further === undefined ? undefined : emptiesBy(grid, cluster, further.members));
  if (settled !== undefined) {
    return conclusion.kind === 'one-of'
      ? overlaps(conclusion.candidates, settled.isTrue)
      : has(settled.isFalse, conclusion.candidate) || seesSome(grid, conclusion, settled.isTrue);
  }
  if (further !== undefined) return false;
  if (conclusion.kind === 'one-of') return overlaps(conclusion.candidates, a) && overlaps(conclusion.candidates, b);
  return !has(cluster.members, conclusion.candidate) && seesSome(grid, conclusion, a) && seesSome(grid, conclusion, b);
}

function seesSome(grid: Grid, conclusion: Extract<Conclusion, { kind: 'impossible' }>, colour: Candidates): boolean {
  return overlaps(grid.conflicts[conclusion.candidate]!, colour);
}
