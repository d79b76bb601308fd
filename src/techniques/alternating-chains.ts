/**
 * Alternating inference chains and loops (common practice, from memory).
 *
 * - AIC: two or more strong links joined by weak ones; what sees both ends is removed, and if both ends are the same
 *   candidate, it is true. Its strong links may be cells, houses, almost locked or hidden sets, either/ors, or the
 *   guardians of a deadly pattern. Grouped: one of its nodes has several candidates; if the name does not say so, that
 *   is a warning.
 * - Continuous loop: the last end strikes the first, so that all its links are both strong and weak, and every one of
 *   them removes candidates.
 * - Discontinuous loop: any such chain seen from the candidate that it proves false (between two weak links) or true
 *   (between two strong ones). A chain whose ends are linked gets a warning; one written as a continuous loop does not
 *   count.
 */
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { searchChains } from './chain-search.ts';
import { bestOf, fits, forEachConclusion, loosely } from './recognition.ts';
import { bilocalLinks, bivalueLinks, groupedLinks } from './search-links.ts';
import { areOfOneHouse, hasGroups, ringsTo, type StrungLink, severalSets, strungChains } from './strung-chains.ts';
import { type Instance, type Needless, type Recognition, type Shape, technique } from './technique.ts';

export const alternatingChain = technique({
  name: 'AIC',
  plural: 'AICs',
  otherNames: ['alternating inference chain'],
  family: 'chains',
  kindOf: ['forcing chain'],
  teaching: { place: 4130, cost: 13, sets: 3, each: 1 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals', seenAs: ['discontinuous loop'] },
  recognise: (shape) =>
    recogniseChain(shape, (links) => (hasGroups(links) ? loosely('a node is a group: a grouped AIC') : fits)),
  find: findChains,
});

export const groupedAlternatingChain = technique({
  name: 'grouped AIC',
  plural: 'grouped AICs',
  otherNames: ['grouped alternating inference chain'],
  family: 'chains',
  kindOf: ['forcing chain'],
  teaching: { place: 4150, cost: 16, sets: 3, each: 1 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals', seenAs: ['discontinuous loop'] },
  recognise: (shape) =>
    recogniseChain(shape, (links) => (hasGroups(links) ? fits : loosely('no node is a group: an AIC'))),
  find: findGrouped,
});

export const continuousLoop = technique({
  name: 'continuous loop',
  plural: 'continuous loops',
  otherNames: ['continuous nice loop'],
  family: 'chains',
  kindOf: ['AIC'],
  teaching: { place: 4140, cost: 14, sets: 4, each: 1 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseContinuous,
  find: findContinuous,
});

export const discontinuousLoop = technique({
  name: 'discontinuous loop',
  plural: 'discontinuous loops',
  otherNames: ['discontinuous nice loop'],
  family: 'chains',
  kindOf: [],
  teaching: 'under other names',
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseDiscontinuous,
  find: findDiscontinuous,
});

/** How many strong links the chains and loops that are searched for may have. */
const chainLengths = { fewest: 2, most: 7 };
const loopLengths = { fewest: 2, most: 6 };

function plainLinks(position: Position): StrungLink[] {
  return [...bivalueLinks(position), ...bilocalLinks(position)];
}

/** Those without groups first. */
function* findChains(position: Position, wanted?: readonly Conclusion[], needless?: Needless): Generator<Instance> {
  yield* searchChains({ position, links: plainLinks(position), ...chainLengths, wanted, needless });
  yield* findGrouped(position, wanted, needless);
}

function findGrouped(position: Position, wanted?: readonly Conclusion[], needless?: Needless): Generator<Instance> {
  const links = [...plainLinks(position), ...groupedLinks(position)];
  return searchChains({ position, links, ...chainLengths, accepts: hasGroups, wanted, needless });
}

function* findContinuous(position: Position, wanted?: readonly Conclusion[], needless?: Needless): Generator<Instance> {
  const plain = plainLinks(position);
  yield* searchChains({ position, links: plain, ...loopLengths, only: 'ring', wanted, needless });
  yield* searchChains({
    position,
    links: [...plain, ...groupedLinks(position)],
    ...loopLengths,
    only: 'ring',
    accepts: hasGroups,
    wanted,
    needless,
  });
}

function* findDiscontinuous(
  position: Position,
  wanted?: readonly Conclusion[],
  needless?: Needless,
): Generator<Instance> {
  for (const instance of findChains(position, wanted, needless)) {
    if (instance.chain?.loop === false) yield instance;
  }
}

function recogniseChain(shape: Shape, judge: (links: readonly StrungLink[]) => Recognition): Recognition {
  if (shape.sets.length < 2) return undefined;
  return forEachConclusion(shape, (conclusion) => {
    const asChain = bestOf(strungChains(stringingOf(shape), conclusion), judge);
    return asChain?.kind === 'fits' ? asChain : (bestOf(ringsTo(stringingOf(shape), conclusion), judge) ?? asChain);
  });
}

function recogniseContinuous(shape: Shape): Recognition {
  if (shape.sets.length < 2) return undefined;
  return forEachConclusion(shape, (conclusion) => bestOf(ringsTo(stringingOf(shape), conclusion), () => fits));
}

function recogniseDiscontinuous(shape: Shape): Recognition {
  const [chain, ...others] = shape.chains;
  const writtenAsRing = chain !== undefined && others.length === 0 && chain.loop && chain.nodes.length % 2 === 0;
  const isContinuous = recogniseContinuous(shape) !== undefined;
  if (writtenAsRing && isContinuous) return undefined;
  return recogniseChain(shape, () =>
    isContinuous ? loosely('its ends are linked too: it is a continuous loop') : fits,
  );
}

function stringingOf({ position, sets }: Shape) {
  const { grid } = position;
  return { grid, sets, shapes: areOfOneHouse(grid, sets) ? [] : severalSets };
}
