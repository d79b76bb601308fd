/**
 * Instances of three-dimensional Medusa: traps by the shortest strands of pairs between the colours, then colours that
 * are false.
 */
import { type Candidate, difference, has, membersOf, overlaps, setOf, union } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { openSets } from './implications.ts';
import { isWanted } from './leading-to-one.ts';
import { emptiesBy, type MedusaCluster, medusaClusters, type Settled, wrapOfCluster } from './medusa-clusters.ts';
import { minimalPart } from './minimal-argument.ts';
import { placementOf, plainInstance, removalsOf } from './removals.ts';
import { digitsOf } from './seen-by-all.ts';
import type { Instance } from './technique.ts';

/**
 * For each cluster: each conclusion with the pairs that it needs; if several are wanted, also all together with all
 * their pairs.
 */
export function* findMedusas(position: Position, wanted?: readonly Conclusion[]): Generator<Instance> {
  for (const cluster of medusaClusters(position)) {
    const single: Instance[] = [];
    for (const { conclusion, sets } of conclusionsOf(position, cluster)) {
      if (!isWanted(conclusion, wanted)) continue;
      const needed = minimalPart(position, sets, conclusion);
      if (needed === undefined || !isAcrossDigits(position, needed)) continue;
      if (needed.filter((set) => cluster.pairs.includes(set)).length < 2) continue;
      single.push(plainInstance(needed, [conclusion]));
    }
    single.sort((a, b) => a.sets.length - b.sets.length);
    if (wanted !== undefined && wanted.length > 1 && single.length === wanted.length) {
      yield plainInstance(
        [...new Set(single.flatMap((each) => each.sets))],
        single.flatMap((each) => each.conclusions),
      );
    }
    yield* single;
  }
}

interface Concluded {
  readonly conclusion: Conclusion;
  readonly sets: readonly OneOf[];
}

function* conclusionsOf(position: Position, cluster: MedusaCluster): Generator<Concluded> {
  const wrapped = wrapOfCluster(position.grid, cluster);
  if (wrapped !== undefined) {
    yield* settledBy(position, cluster, wrapped, undefined);
    return;
  }
  for (const conclusion of removalsOf(position, trapped(position, cluster))) {
    if (conclusion.kind === 'impossible')
      yield { conclusion, sets: shortestStrand(position, cluster, conclusion.candidate) };
  }
  for (const further of openSets(position)) {
    const emptied = overlaps(further.members, cluster.members)
      ? undefined
      : emptiesBy(position.grid, cluster, further.members);
    if (emptied === undefined) continue;
    yield* settledBy(position, cluster, emptied, further);
    return;
  }
}

function* settledBy(
  position: Position,
  cluster: MedusaCluster,
  { isTrue, isFalse }: Settled,
  further: OneOf | undefined,
): Generator<Concluded> {
  const sets = further === undefined ? cluster.pairs : [...cluster.pairs, further];
  for (const member of membersOf(isTrue)) yield { conclusion: placementOf(position.grid, member), sets };
  for (const conclusion of removalsOf(position, isFalse)) yield { conclusion, sets };
}

function trapped({ grid, possible }: Position, { members, colours: [a, b] }: MedusaCluster) {
  const seen = membersOf(difference(possible, members)).filter(
    (candidate) => overlaps(grid.conflicts[candidate]!, a) && overlaps(grid.conflicts[candidate]!, b),
  );
  return setOf(grid, seen);
}

/** The shortest strand of pairs between two candidates of both colours that conflict with this one. */
function shortestStrand(
  { grid }: Position,
  { colours: [a, b], pairs }: MedusaCluster,
  candidate: Candidate,
): readonly OneOf[] {
  const seen = grid.conflicts[candidate]!;
  let shortest: readonly OneOf[] = pairs;
  for (const start of membersOf(a).filter((member) => has(seen, member))) {
    const paths = new Map<Candidate, readonly OneOf[]>([[start, []]]);
    for (const [member, path] of paths) {
      if (path.length >= shortest.length) break;
      if (has(b, member) && has(seen, member)) shortest = path;
      for (const pair of pairs) {
        if (!has(pair.members, member)) continue;
        for (const other of membersOf(pair.members)) if (!paths.has(other)) paths.set(other, [...path, pair]);
      }
    }
  }
  return shortest;
}

function isAcrossDigits({ grid }: Position, sets: readonly OneOf[]): boolean {
  const all = sets.map((set) => set.members).reduce(union);
  return digitsOf(grid, all).length > 1;
}
