/**
 * Why a single is one: the digits on the board that rule everything else out, as few as possible.
 */
import type { ArgumentSet, CheckedStep } from '../check/verdict.ts';
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { sees } from '../grid/geometry.ts';
import { type Cell, candidateAt, cellOf, type Digit, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Sight } from '../scene/scene.ts';
import { ascending, houseOfSet } from './set-houses.ts';

export interface SingleReasons {
  /** The candidate that is left. */
  readonly single: Candidate;
  /**
   * The house of a hidden single, or of the last cell; for a naked single, the houses that contain the other digits.
   */
  readonly houses: readonly HouseShape[];
  /** For a hidden single: the digits elsewhere that rule out the house's other cells. */
  readonly sights: readonly Sight[];
  /** For a naked single: cells with the other digits that it sees, one for each digit. */
  readonly seen: readonly Cell[];
}

/** The reasons of a set with one candidate; undefined if it is neither a house's nor a cell's, or has several. */
export function reasonsOfSingle(
  grid: Grid,
  { placedBefore, possibleBefore }: Pick<CheckedStep, 'placedBefore' | 'possibleBefore'>,
  set: ArgumentSet,
): SingleReasons | undefined {
  const [single, ...others] = membersOf(set.members);
  if (single === undefined || others.length > 0) return undefined;
  const [cell, digit] = [cellOf(grid, single), digitOf(grid, single)];
  const placed = new Map(membersOf(placedBefore).map((each) => [cellOf(grid, each), digitOf(grid, each)]));
  const named = houseOfSet(grid, set);
  const full = grid.housesOf[cell]!.find(({ cells }) => cells.every((each) => each === cell || placed.has(each)));
  const plain = { single, sights: [], seen: [] };
  if (full !== undefined && (named === undefined || named === full)) return { ...plain, houses: [full] };
  if (named !== undefined) {
    const shut = named.cells.filter(
      (each) => !placed.has(each) && !has(possibleBefore, candidateAt(grid, each, digit)),
    );
    const copies = grid.cells.filter((each) => placed.get(each) === digit);
    const cells = fewest(copies, (copy) => shut.filter((each) => sees(grid, copy, each)));
    const way = { kind: 'into', house: named } as const;
    return { ...plain, houses: [named], sights: cells.map((each): Sight => ({ cell: each, digit, way })) };
  }
  if (/^r\d+c\d+$/.test(set.name)) return { ...plain, ...seenFrom(grid, cell, digit, placed) };
  return undefined;
}

/** The fewest houses of the cell that hold as many other digits as it sees, and a cell for each digit. */
function seenFrom(
  grid: Grid,
  cell: Cell,
  own: Digit,
  placed: ReadonlyMap<Cell, Digit>,
): Pick<SingleReasons, 'houses' | 'seen'> {
  const digitsIn = (cells: readonly Cell[]) => cells.flatMap((each) => placed.get(each) ?? []);
  const houses = fewest(grid.housesOf[cell]!, (house) => digitsIn(house.cells));
  const near = [...houses.flatMap(({ cells }) => cells), ...grid.peers[cell]!];
  const seen = new Map<Digit, Cell>();
  for (const each of near) {
    const digit = placed.get(each);
    if (digit !== undefined && digit !== own && !seen.has(digit)) seen.set(digit, each);
  }
  return { houses, seen: ascending([...seen.values()]) };
}

/** The fewest of the list, the first such choice, that together cover as much as the whole list does. */
function fewest<T, S>(list: readonly T[], serves: (each: T) => readonly S[]): readonly T[] {
  const served = list.map((each) => new Set(serves(each)));
  const all = new Set(served.flatMap((each) => [...each]));
  for (let count = 0; count <= list.length; count++) {
    const found = choose(served, all, count, 0);
    if (found !== undefined) return found.map((index) => list[index]!);
  }
  return list;
}

function choose<S>(
  served: readonly ReadonlySet<S>[],
  open: ReadonlySet<S>,
  count: number,
  from: number,
): number[] | undefined {
  if (open.size === 0) return [];
  if (count === 0) return undefined;
  for (let index = from; index < served.length; index++) {
    const left = new Set([...open].filter((each) => !served[index]!.has(each)));
    const rest = left.size === open.size ? undefined : choose(served, left, count - 1, index + 1);
    if (rest !== undefined) return [index, ...rest];
  }
  return undefined;
}
