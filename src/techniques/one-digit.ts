/**
 * Patterns of one digit that are chains: two or more strong links joined by weak ones; what sees both ends is removed.
 *
 * - Skyscraper: two rows (or two columns) with two places each, joined along a column (a row); the two roof ends are
 *   not in one line, since that would be an X-wing.
 * - Two-string kite: a row and a column with two places each, joined in a box.
 * - Empty rectangle: a box whose places lie in one row and one column, the two arms being the ends of its strong link,
 *   joined along a line to a line with two places. A box of two places counts as well (some ask for three).
 * - Turbot fish: any two strong links of single places joined by a weak one, except an X-wing.
 * - X-chain: two or more strong links. Grouped: at least one node has several places.
 *
 * A skyscraper or a kite one of whose ends is a group is accepted under its name, with a warning.
 */
import { intersection, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import type { Grid, HouseKind } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { chainOrders, type OrderedLink } from './chain-order.ts';
import { concludesSomething, type DigitChain, digitChains, instanceOfChain } from './digit-chains.ts';
import { needsEverySet } from './minimal-argument.ts';
import { bestOf, fits, forEachConclusion, loosely } from './recognition.ts';
import { digitsWanted } from './removals.ts';
import { cellsOf, isNode } from './seen-by-all.ts';
import { digitOfAll } from './set-reading.ts';
import type { Instance, Needless, Recognition, Shape, TechniqueAbout, TechniqueRecord } from './technique.ts';
import { followsFromEnds, writtenOrder } from './written-chain.ts';

/** How many strong links a chain with needless ones has at most. */
const longestNeedless = 4;

type Judge = (grid: Grid, links: readonly OrderedLink[]) => Recognition;

interface Pattern {
  readonly judge: Judge;
  /** Whether the search uses single places as nodes, groups as well, or first one and then the other. */
  readonly nodes: readonly ('single places' | 'groups')[];
  /** The most strong links it can have, if there is a limit. */
  readonly longest?: number;
  /** Whether loosely fitting instances are searched for too, after the rest. */
  readonly loosely?: boolean;
}

export const skyscraper = ofPattern(
  { judge: judgeSkyscraper, nodes: ['single places', 'groups'], longest: 2, loosely: true },
  {
    name: 'skyscraper',
    plural: 'skyscrapers',
    otherNames: [],
    family: 'one digit',
    kindOf: ['turbot fish'],
    teaching: { place: 2020, cost: 6 },
    isOffered: true,
    phrase: 'skyscraper',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

export const twoStringKite = ofPattern(
  { judge: judgeKite, nodes: ['single places', 'groups'], longest: 2, loosely: true },
  {
    name: 'two-string kite',
    plural: 'two-string kites',
    otherNames: ['2-string kite'],
    family: 'one digit',
    kindOf: ['turbot fish'],
    teaching: { place: 2030, cost: 6 },
    isOffered: true,
    phrase: 'kite',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

export const emptyRectangle = ofPattern(
  { judge: judgeEmptyRectangle, nodes: ['groups'], longest: 2, loosely: true },
  {
    name: 'empty rectangle',
    plural: 'empty rectangles',
    otherNames: [],
    family: 'one digit',
    kindOf: ['grouped X-chain'],
    teaching: { place: 2040, cost: 7 },
    isOffered: true,
    phrase: 'step by step',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

export const turbotFish = ofPattern(
  { judge: judgeTurbotFish, nodes: ['single places'], longest: 2 },
  {
    name: 'turbot fish',
    plural: 'turbot fish',
    otherNames: [],
    family: 'one digit',
    kindOf: ['X-chain'],
    teaching: { place: 2050, cost: 7 },
    isOffered: false,
    phrase: 'step by step',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

export const xChain = ofPattern(
  { judge: judgeXChain, nodes: ['single places'] },
  {
    name: 'X-chain',
    plural: 'X-chains',
    otherNames: [],
    family: 'one digit',
    kindOf: ['AIC'],
    teaching: { place: 4010, cost: 9, sets: 3, each: 1 },
    isOffered: true,
    phrase: 'step by step',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

export const groupedXChain = ofPattern(
  { judge: judgeGroupedXChain, nodes: ['groups'] },
  {
    name: 'grouped X-chain',
    plural: 'grouped X-chains',
    otherNames: [],
    family: 'one digit',
    kindOf: ['grouped AIC'],
    teaching: { place: 4120, cost: 12, sets: 3, each: 1 },
    isOffered: true,
    phrase: 'step by step',
    page: { under: 'Chains of one digit', shows: 'removals' },
  },
);

function ofPattern<const Name extends string, const Other extends string = never>(
  pattern: Pattern,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => recognise(shape, pattern),
    find: (position, wanted, needless) => find(position, pattern, wanted, needless),
  };
}

function recognise(shape: Shape, { judge, longest }: Pattern): Recognition {
  const { grid } = shape.position;
  if (shape.sets.length < 2 || shape.sets.length > (longest ?? shape.sets.length)) return undefined;
  if (digitOfAll(grid, shape.sets) === undefined) return undefined;
  const written = writtenOrder(shape);
  return forEachConclusion(shape, (conclusion) => {
    const asWritten =
      written !== undefined && followsFromEnds(grid, written, conclusion) ? judge(grid, written) : undefined;
    if (asWritten?.kind === 'fits') return asWritten;
    return bestOf(chainOrders(grid, shape.sets, conclusion, isNode), (links) => judge(grid, links)) ?? asWritten;
  });
}

function* find(
  position: Position,
  { judge, nodes, longest, loosely }: Pattern,
  wanted: readonly Conclusion[] | undefined,
  needless: Needless = 'left out',
): Generator<Instance> {
  // A needless set may go with a placement whose cell the removal lies in: any digit's chain can then end there.
  const digits = needless === 'kept' ? position.grid.digits : digitsWanted(position.grid, wanted);
  const shown = new Set<string>();
  const later: Instance[] = [];
  const withNeedless: Instance[] = [];
  const mostLinks = needless === 'kept' ? Math.min(longest ?? longestNeedless, longestNeedless) : longest;
  for (const each of needless === 'kept' ? (['single places', 'groups'] as const) : nodes) {
    const grouped = each === 'groups';
    for (const chain of digitChains(position, { digits, grouped, longest: mostLinks, needless })) {
      if (wanted === undefined && !concludesSomething(position, chain)) continue;
      const key = keyOf(position.grid, chain);
      const recognition = shown.has(key) ? undefined : judge(position.grid, chain.links);
      if (recognition === undefined) continue;
      if (recognition.kind === 'loosely' && loosely !== true && needless === 'left out') continue;
      const eithers = eithersIn(wanted).filter((each) => followsFromEnds(position.grid, chain.links, each));
      const instance = instanceOfChain(position, chain, eithers);
      if (!needsEverySet(position, instance)) {
        const ending = (wanted ?? []).filter((each) => followsFromEnds(position.grid, chain.links, each));
        if (needless === 'kept' && ending.length > 0) withNeedless.push({ ...instance, conclusions: ending });
        continue;
      }
      shown.add(key);
      if (recognition.kind === 'fits') yield instance;
      else later.push(instance);
    }
  }
  yield* later;
  yield* withNeedless;
}

function eithersIn(wanted: readonly Conclusion[] | undefined): readonly Conclusion[] {
  return (wanted ?? []).filter((each) => each.kind === 'one-of' && countOf(each.candidates) > 1);
}

function keyOf(grid: Grid, { digit, links }: DigitChain): string {
  return [
    digit,
    ...links.flatMap((link) => [cellsOf(grid, link.near), cellsOf(grid, link.far)].map((cells) => cells.join('+'))),
  ].join();
}

function judgeSkyscraper(grid: Grid, links: readonly OrderedLink[]): Recognition {
  const [kind, other] = kindsOf(links);
  if (kind === undefined || kind === 'box' || kind !== other) return undefined;
  const [first, second] = [links[0]!, links[1]!];
  const across = kind === 'row' ? 'column' : 'row';
  if (!shareHouse(grid, first.far, second.near, across) || areAligned(grid, first.near, second.far, across))
    return undefined;
  return warnOfGroups(links, 'an end of this skyscraper is a group of places');
}

function judgeKite(grid: Grid, links: readonly OrderedLink[]): Recognition {
  const kinds = kindsOf(links);
  if (!kinds.includes('row') || !kinds.includes('column')) return undefined;
  if (!shareHouse(grid, links[0]!.far, links[1]!.near, 'box')) return undefined;
  return warnOfGroups(links, 'an end of this kite is a group of places');
}

function judgeEmptyRectangle(grid: Grid, links: readonly OrderedLink[]): Recognition {
  const box = links.find((link) => kindOf(link) === 'box');
  const line = links.find((link) => kindOf(link) !== 'box');
  if (box === undefined || line === undefined || kindOf(line) === undefined) return undefined;
  const inOneLine = sharedHouses(grid, cellsOf(grid, box.set.members)).length > 1;
  const joined = sharedHouses(grid, cellsOf(grid, union(links[0]!.far, links[1]!.near))).some(
    (house) => house.kind !== 'box',
  );
  if (inOneLine || !joined) return undefined;
  return countOf(line.set.members) === 2
    ? fits
    : loosely('the line of this empty rectangle has more than two places: an end of it is a group');
}

function judgeTurbotFish(grid: Grid, links: readonly OrderedLink[]): Recognition {
  const [first, second] = [links[0]!, links[1]!];
  const [kind, other] = kindsOf(links);
  const across = kind === 'row' ? 'column' : 'row';
  // Ends that see one another in a box alone leave it a skyscraper.
  const isXWing =
    (kind === 'row' || kind === 'column') &&
    kind === other &&
    shareHouse(grid, first.far, second.near, across) &&
    areAligned(grid, first.near, second.far, across);
  return isXWing ? undefined : warnOfGroups(links, 'a node is a group of places: a grouped turbot fish');
}

function judgeXChain(_grid: Grid, links: readonly OrderedLink[]): Recognition {
  return warnOfGroups(links, 'a node is a group of places: a grouped X-chain');
}

function judgeGroupedXChain(_grid: Grid, links: readonly OrderedLink[]): Recognition {
  return hasGroups(links) ? fits : loosely('no node is a group: an X-chain');
}

function warnOfGroups(links: readonly OrderedLink[], warning: string): Recognition {
  return hasGroups(links) ? loosely(warning) : fits;
}

function hasGroups(links: readonly OrderedLink[]): boolean {
  return links.some(({ near, far }) => countOf(near) > 1 || countOf(far) > 1);
}

function kindsOf(links: readonly OrderedLink[]): (HouseKind | undefined)[] {
  return links.map(kindOf);
}

function kindOf({ set }: OrderedLink): HouseKind | undefined {
  return set.source.kind === 'places' ? set.source.house.kind : undefined;
}

/** Whether some place of one part shares a house of this kind with some place of the other. */
function areAligned(grid: Grid, a: OrderedLink['near'], b: OrderedLink['near'], kind: HouseKind): boolean {
  return cellsOf(grid, a).some((own) =>
    cellsOf(grid, b).some((other) => sharedHouses(grid, [own, other]).some((house) => house.kind === kind)),
  );
}

/** Whether the parts share a house of this kind and have no place in common. */
function shareHouse(grid: Grid, a: OrderedLink['near'], b: OrderedLink['near'], kind: HouseKind): boolean {
  if (countOf(intersection(a, b)) > 0) return false;
  return sharedHouses(grid, cellsOf(grid, union(a, b))).some((house) => house.kind === kind);
}
