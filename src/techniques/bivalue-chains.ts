/**
 * Chains through cells of two digits (common practice, from memory).
 *
 * - XY-chain: three or more such cells, each sharing a digit with the next, which it sees; it begins and ends with the
 *   same digit and removes it from every cell that sees both ends. An XY-wing is one. Two such cells are a naked pair.
 * - Remote pair: four or more cells of the same two digits, each seeing the next. Cells an odd number of steps apart
 *   hold different digits, so both digits are removed from every cell that sees two such cells. Two or three cells do
 *   not count.
 */
import { difference, membersOf, overlaps, setOf, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sees } from '../grid/geometry.ts';
import { digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { searchChains } from './chain-search.ts';
import { bestOf, fits, forEachConclusion } from './recognition.ts';
import { removalsOf } from './removals.ts';
import { bivalueLinks } from './search-links.ts';
import { digitsOf, ofDigit } from './seen-by-all.ts';
import { type CellSet, readAsCells } from './set-reading.ts';
import { ringsTo, type StrungLink, strungChains } from './strung-chains.ts';
import { type Instance, type Needless, type Recognition, type Shape, technique } from './technique.ts';

export const xyChain = technique({
  name: 'XY-chain',
  plural: 'XY-chains',
  otherNames: [],
  family: 'chains',
  kindOf: ['AIC'],
  teaching: { place: 4020, cost: 9, sets: 4, each: 1 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseXYChain,
  find: findXYChains,
});
export const remotePair = technique({
  name: 'remote pair',
  plural: 'remote pairs',
  otherNames: [],
  family: 'chains',
  kindOf: ['XY-chain'],
  teaching: { place: 2070, cost: 7, sets: 4, each: 1 },
  isOffered: true,
  phrase: 'step by step',
  page: { under: 'Chains', shows: 'removals' },
  recognise: recogniseRemotePair,
  find: findRemotePairs,
});

/** The most cells of a chain that is searched for. */
const mostCells = 9;

function recogniseXYChain(shape: Shape): Recognition {
  const { grid } = shape.position;
  const cells = bivalueCells(shape);
  if (cells === undefined || cells.length < 3) return undefined;
  const stringing = { grid, sets: shape.sets };
  return forEachConclusion(
    shape,
    (conclusion) =>
      bestOf(strungChains(stringing, conclusion), () => fits) ?? bestOf(ringsTo(stringing, conclusion), () => fits),
  );
}

function recogniseRemotePair(shape: Shape): Recognition {
  const { grid } = shape.position;
  const cells = bivalueCells(shape);
  if (cells === undefined || cells.length < 4) return undefined;
  const digits = digitsOf(grid, cells[0]!.members).join();
  if (cells.some((cell) => digitsOf(grid, cell.members).join() !== digits)) return undefined;
  const colours = colouredBySight(grid, cells);
  if (colours === undefined) return undefined;
  return forEachConclusion(shape, (conclusion) => (followsFromBoth(grid, colours, conclusion) ? fits : undefined));
}

function bivalueCells({ sets }: Shape): readonly CellSet[] | undefined {
  const cells = readAsCells(sets);
  return cells?.every((cell) => countOf(cell.members) === 2) === true ? cells : undefined;
}

type Colours = readonly [readonly CellSet[], readonly CellSet[]];

/** The cells an even and an odd number of steps from the first, if all can be reached. */
function colouredBySight(grid: Grid, cells: readonly CellSet[]): Colours | undefined {
  const colours: [CellSet[], CellSet[]] = [[cells[0]!], []];
  const reached = new Map([[cells[0]!, 0]]);
  for (const [cell, colour] of reached) {
    for (const next of cells) {
      if (reached.has(next) || !sees(grid, cell.cell, next.cell)) continue;
      reached.set(next, 1 - colour);
      colours[1 - colour]!.push(next);
    }
  }
  return reached.size === cells.length ? colours : undefined;
}

/** Whether it sees cells of both colours, even if these see each other. */
function followsFromBoth(grid: Grid, colours: Colours, conclusion: Conclusion): boolean {
  if (conclusion.kind === 'one-of') {
    return colours.every((colour) => colour.some((cell) => overlaps(cell.members, conclusion.candidates)));
  }
  const seen = grid.conflicts[conclusion.candidate]!;
  const digit = digitOf(grid, conclusion.candidate);
  return colours.every((colour) =>
    colour.some((cell) => overlaps(setOf(grid, ofDigit(grid, cell.members, digit)), seen)),
  );
}

function findXYChains(position: Position, wanted?: readonly Conclusion[], needless?: Needless): Generator<Instance> {
  return searchChains({ position, links: bivalueLinks(position), fewest: 3, most: mostCells, wanted, needless });
}

/**
 * The shortest chains between two cells an odd number of steps apart; what sees both colours of the chain is removed.
 */
function* findRemotePairs(position: Position): Generator<Instance> {
  const { grid } = position;
  const shown = new Set<string>();
  const byPair = new Map<string, StrungLink[]>();
  for (const link of bivalueLinks(position)) {
    const key = digitsOf(grid, link.sets[0]!.members).join();
    byPair.set(key, [...(byPair.get(key) ?? []), link]);
  }
  for (const links of byPair.values()) {
    const accepts = (chain: readonly StrungLink[]) => chain.length % 2 === 0;
    for (const instance of searchChains({ position, links, fewest: 4, most: mostCells, accepts, wanted: undefined })) {
      const cells = instance.sets
        .map((set) => membersOf(set.members)[0]!)
        .sort((a, b) => a - b)
        .join();
      const conclusions = clearedByBoth(position, instance.sets);
      if (!shown.has(cells) && conclusions.length > 0) yield { ...instance, conclusions };
      shown.add(cells);
    }
  }
}

function clearedByBoth(position: Position, sets: readonly OneOf[]): Conclusion[] {
  const { grid } = position;
  const colours = colouredBySight(grid, readAsCells(sets) ?? []);
  if (colours === undefined) return [];
  const own = sets.map((set) => set.members).reduce(union);
  return removalsOf(position, difference(position.possible, own)).filter((conclusion) =>
    followsFromBoth(grid, colours, conclusion),
  );
}
