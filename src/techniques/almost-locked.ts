/**
 * Chains of almost locked sets: cells of one house with one more digit than cells, the smallest being a cell of two
 * digits (common practice, from memory). Two of them are linked by a digit all of whose places in one see all its
 * places in the other.
 *
 * - ALS-XZ: two of them, linked by x; another digit z that both have is removed from every cell that sees all its
 *   places. If they are linked by two digits, both are locked, and every other digit of either is removed from every
 *   cell that sees its places there.
 * - ALS-XY-wing: three of them in a chain, linked by two digits; the outer two share the digit that is removed.
 * - ALS chain: two or more.
 *
 * An XY-wing and an XYZ-wing have these shapes too. Cells that all lie in one house are a naked subset and none of
 * these.
 */
import { sharedHouses } from '../grid/geometry.ts';
import { searchChains } from './chain-search.ts';
import { bestOf, fits, forEachConclusion } from './recognition.ts';
import { lockedLinks } from './search-links.ts';
import { readAsCells } from './set-reading.ts';
import { ringsTo, type StrungLink, strungChains } from './strung-chains.ts';
import type { Recognition, Shape, TechniqueAbout, TechniqueRecord } from './technique.ts';

export const alsXZ = ofCount(
  { fewest: 2, most: 2 },
  {
    name: 'ALS-XZ',
    plural: 'ALS-XZs',
    otherNames: [],
    family: 'almost locked sets',
    kindOf: ['ALS chain'],
    teaching: { place: 4230, cost: 16, sets: 4, each: 1 },
    isOffered: true,
    phrase: 'step by step',
    page: { under: 'Almost locked sets', shows: 'removals' },
  },
);

export const alsXYWing = ofCount(
  { fewest: 3, most: 3 },
  {
    name: 'ALS-XY-wing',
    plural: 'ALS-XY-wings',
    otherNames: [],
    family: 'almost locked sets',
    kindOf: ['ALS chain'],
    teaching: { place: 4270, cost: 20, sets: 5, each: 1 },
    isOffered: false,
    phrase: 'step by step',
    page: { under: 'Almost locked sets', shows: 'removals' },
  },
);

export const alsChain = ofCount(
  { fewest: 2, most: Number.POSITIVE_INFINITY },
  {
    name: 'ALS chain',
    plural: 'ALS chains',
    otherNames: ['almost locked set chain'],
    family: 'chains',
    kindOf: [],
    teaching: { place: 4300, cost: 22, sets: 5, each: 1 },
    isOffered: false,
    phrase: 'step by step',
    page: { under: 'Almost locked sets', shows: 'removals' },
  },
);

/** The most cells of an almost locked set, and the most such sets of a chain, that are searched for. */
const mostCells = 5;
const mostSets = 4;

/** How many almost locked sets there are. */
export interface LockedCount {
  readonly fewest: number;
  readonly most: number;
}

function ofCount<const Name extends string, const Other extends string = never>(
  count: LockedCount,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => recognise(shape, count),
    find: (position, wanted, needless) =>
      searchChains({
        position,
        links: lockedLinks(position, mostCells),
        fewest: count.fewest,
        most: Math.min(count.most, mostSets),
        wanted,
        needless,
      }),
  };
}

function recognise(shape: Shape, { fewest, most }: LockedCount): Recognition {
  const { grid } = shape.position;
  const cells = readAsCells(shape.sets);
  if (
    cells === undefined ||
    cells.length < 3 ||
    sharedHouses(
      grid,
      cells.map((cell) => cell.cell),
    ).length > 0
  )
    return undefined;
  const stringing = { grid, sets: shape.sets, shapes: ['almost locked'] as const };
  const judge = (links: readonly StrungLink[]) => (links.length >= fewest && links.length <= most ? fits : undefined);
  return forEachConclusion(
    shape,
    (conclusion) => bestOf(strungChains(stringing, conclusion), judge) ?? bestOf(ringsTo(stringing, conclusion), judge),
  );
}
