/**
 * Forcing chains and nets, the most general names.
 *
 * - Forcing chain: several chains that lead to one conclusion: from each member of a set (a cell, the places of a
 *   digit, guardians, an either/or), or from the opposite of the conclusion to a contradiction. The criterion here is
 *   that each strand can be followed without a case distinction.
 * - Forcing net: strands that join, or branch again: any argument of two or more sets.
 *
 * Searched for: cells and houses of two to four candidates, each of which leads to the same conclusion by at most three
 * strong links.
 */
import { membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, prove } from '../proof/kernel.ts';
import { openSets } from './implications.ts';
import { type CommonEnd, commonEnds, isWanted, leadsTo } from './leading-to-one.ts';
import { minimalPart } from './minimal-argument.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { plainInstance } from './removals.ts';
import { type Instance, type Recognition, type Shape, technique } from './technique.ts';

export const forcingChain = technique({
  name: 'forcing chain',
  plural: 'forcing chains',
  otherNames: [],
  family: 'chains',
  kindOf: ['forcing net'],
  teaching: { place: 4410, cost: 30, sets: 4, each: 2 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseChain,
  find: findForcingChains,
});
export const forcingNet = technique({
  name: 'forcing net',
  plural: 'forcing nets',
  otherNames: [],
  family: 'chains',
  kindOf: [],
  teaching: { place: 4420, cost: 45, sets: 6, each: 2 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseNet,
  find: findForcingChains,
});

const proofBound = 50_000;

function recogniseChain(shape: Shape): Recognition {
  if (shape.sets.length < 2) return undefined;
  return forEachConclusion(shape, (conclusion) => (isForced(shape, conclusion) ? fits : undefined));
}

function isForced({ position, sets, chains }: Shape, conclusion: Conclusion): boolean {
  const outcome = prove(position, sets, conclusion, proofBound);
  if (outcome.kind === 'proved' && (outcome.cases === 0 || chains.length > 1)) return true;
  return sets.some((set) => {
    const others = sets.filter((other) => other !== set);
    return membersOf(set.members).every((member) =>
      leadsTo(position.grid, member, { sets: others, conclusion, by: 'forcing' }),
    );
  });
}

function recogniseNet({ sets }: Shape): Recognition {
  return sets.length < 2 ? undefined : fits;
}

/** The most members of a set, and the most strong links of a chain. */
const mostMembers = 4;
const mostLinks = 3;

/** Those with the shortest chains first; among these, those with the fewest sets. */
function* findForcingChains(position: Position, wanted?: readonly Conclusion[]): Generator<Instance> {
  const starts = openSets(position).filter(({ members }) => countOf(members) <= mostMembers);
  for (let longest = 1; longest <= mostLinks; longest++) {
    const found = starts.flatMap((start) => instancesFrom(position, start, { longest, wanted }));
    found.sort((a, b) => a.sets.length - b.sets.length);
    for (const instance of found) yield* thinned(position, instance);
  }
}

/** One for each conclusion that needs chains of exactly this length, and one for all wanted conclusions together. */
function instancesFrom(
  position: Position,
  start: OneOf,
  { longest, wanted }: { readonly longest: number; readonly wanted: readonly Conclusion[] | undefined },
): Instance[] {
  const ends = commonEnds(position, membersOf(start.members), longest).filter((end) =>
    isWanted(end.conclusion, wanted),
  );
  const asInstance = (some: readonly CommonEnd[]) =>
    plainInstance(
      [...new Set([start, ...some.flatMap((end) => end.links)])],
      some.map((end) => end.conclusion),
    );
  const single = ends.filter((end) => end.longest === longest).map((end) => asInstance([end]));
  return wanted !== undefined && wanted.length > 1 && ends.length === wanted.length
    ? [asInstance(ends), ...single]
    : single;
}

/** Without the sets that its conclusions do not need. */
function* thinned(position: Position, instance: Instance): Generator<Instance> {
  const [only, ...more] = instance.conclusions;
  const sets = more.length === 0 ? minimalPart(position, instance.sets, only!) : instance.sets;
  if (sets !== undefined && sets.length > 1) yield { ...instance, sets };
}
