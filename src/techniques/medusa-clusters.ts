/** Clusters of pairs across digits, with their two colours. */
import {
  type Candidate,
  type Candidates,
  has,
  isWithin,
  membersOf,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import type { Grid } from '../grid/grid.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { openSets } from './implications.ts';

export interface MedusaCluster {
  readonly members: Candidates;
  /** All of one colour are true, and all of the other false. */
  readonly colours: readonly [Candidates, Candidates];
  readonly pairs: readonly OneOf[];
}

/** One colour that is false, and the other that is true. */
export interface Settled {
  readonly isFalse: Candidates;
  readonly isTrue: Candidates;
}

const known = new WeakMap<Position, readonly MedusaCluster[]>();

/** All clusters of two or more pairs, by their first candidate; computed once, since a position never changes. */
export function medusaClusters(position: Position): readonly MedusaCluster[] {
  const made = known.get(position) ?? clustersOf(position.grid, pairsOf(position.grid, openSets(position)));
  known.set(position, made);
  return made;
}

/**
 * The clusters of the position that contain some of these sets; sets that are pairs are added to the clusters' pairs.
 */
export function clusterWith(position: Position, sets: readonly OneOf[]): readonly MedusaCluster[] {
  const { grid } = position;
  const own = pairsOf(grid, sets);
  if (own.length === 0) return [];
  const all = medusaClusters(position);
  const isKnown = own.every((set) => all.some((cluster) => isWithin(set.members, cluster.members)));
  const clusters = isKnown ? all : clustersOf(grid, [...pairsOf(grid, openSets(position)), ...own]);
  return clusters.filter((cluster) => own.some((set) => isWithin(set.members, cluster.members)));
}

/** Which colour is false because two of its candidates conflict. */
export function wrapOfCluster(grid: Grid, { colours: [a, b] }: MedusaCluster): Settled | undefined {
  if (clashes(grid, a)) return { isFalse: a, isTrue: b };
  if (clashes(grid, b)) return { isFalse: b, isTrue: a };
  return undefined;
}

/** Which colour is false because it would leave nothing of a further set. */
export function emptiesBy(grid: Grid, { colours: [a, b] }: MedusaCluster, members: Candidates): Settled | undefined {
  const empties = (colour: Candidates) =>
    membersOf(members).every((member) => !has(colour, member) && overlaps(grid.conflicts[member]!, colour));
  if (empties(a)) return { isFalse: a, isTrue: b };
  if (empties(b)) return { isFalse: b, isTrue: a };
  return undefined;
}

function clashes(grid: Grid, colour: Candidates): boolean {
  return membersOf(colour).some((member) => overlaps(grid.conflicts[member]!, colour));
}

/** The sets of two candidates that cannot both be true, so that exactly one is. */
function pairsOf(grid: Grid, sets: readonly OneOf[]): OneOf[] {
  return sets.filter(({ members }) => {
    if (countOf(members) !== 2) return false;
    const [a, b] = membersOf(members);
    return has(grid.conflicts[a!]!, b!);
  });
}

function clustersOf(grid: Grid, pairs: readonly OneOf[]): MedusaCluster[] {
  const partners = new Map<Candidate, Candidate[]>();
  for (const pair of pairs) {
    const [a, b] = membersOf(pair.members) as [Candidate, Candidate];
    partners.set(a, [...(partners.get(a) ?? []), b]);
    partners.set(b, [...(partners.get(b) ?? []), a]);
  }
  const left = new Set([...partners.keys()].sort((a, b) => a - b));
  const found: MedusaCluster[] = [];
  for (const start of left) {
    const colourOf = new Map<Candidate, 0 | 1>([[start, 0]]);
    for (const [member, colour] of colourOf) {
      left.delete(member);
      for (const other of partners.get(member)!) if (!colourOf.has(other)) colourOf.set(other, colour === 0 ? 1 : 0);
    }
    const ofColour = (wanted: 0 | 1) =>
      setOf(
        grid,
        [...colourOf.keys()].filter((member) => colourOf.get(member) === wanted),
      );
    const colours = [ofColour(0), ofColour(1)] as const;
    const members = union(...colours);
    const own = pairs.filter((pair) => isWithin(pair.members, members));
    if (own.length > 1) found.push({ members, colours, pairs: own });
  }
  return found;
}
