/**
 * The houses of a fish as it is presented: the bases, in which the digit must be placed, and the covers, which contain
 * those places.
 *
 * With as many covers as bases, every place in the bases is in a cover or is a fin; what is removed is in more covers
 * than bases and sees every fin. Of the possible choices, one with the fewest fins is drawn, rows across columns before
 * boxes.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { type Candidate, membersOf } from '../grid/candidates.ts';
import { type Cell, cellOf, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { houseOfSet } from './set-houses.ts';

export interface FishHouses {
  readonly bases: readonly HouseShape[];
  readonly covers: readonly HouseShape[];
  readonly fins: readonly Candidate[];
}

/** Nobody teaches larger fish. */
const mostBases = 4;

/** The houses of the step's fish; undefined if its argument is not a fish, or has another name. */
export function fishHousesOf(grid: Grid, { step, argument, conclusions }: CheckedStep): FishHouses | undefined {
  const isNamed = /(X-wing|swordfish|jellyfish)$/.test(step.because?.name ?? '');
  if ((step.because !== undefined && !isNamed) || step.chains.length > 0) return undefined;
  const bases = argument.sets.flatMap((set) => houseOfSet(grid, set) ?? []);
  const places = argument.sets.flatMap(({ members }) => membersOf(members));
  const removed = conclusions.flatMap(({ conclusion, origin, verdict }) =>
    origin === 'so' && verdict !== 'redundant' && conclusion.kind === 'impossible' ? [conclusion.candidate] : [],
  );
  const digits = new Set([...places, ...removed].map((candidate) => digitOf(grid, candidate)));
  const isWhole = bases.length === argument.sets.length && bases.length >= 2 && bases.length <= mostBases;
  if (!isWhole || digits.size !== 1 || removed.length === 0) return undefined;
  const found = coversOf(grid, bases, places, removed);
  return found === undefined || (!isNamed && found.fins.length > 0) ? undefined : { bases, ...found };
}

function coversOf(
  grid: Grid,
  bases: readonly HouseShape[],
  places: readonly Candidate[],
  removed: readonly Candidate[],
): Omit<FishHouses, 'bases'> | undefined {
  const cells = places.map((place) => cellOf(grid, place));
  const victims = removed.map((each) => cellOf(grid, each));
  const open = grid.houses.filter(
    (house) => !bases.includes(house) && [...cells, ...victims].some((cell) => house.cells.includes(cell)),
  );
  let best: Omit<FishHouses, 'bases'> | undefined;
  for (const covers of choices(open, bases.length)) {
    const [inBases, inCovers] = [
      (cell: Cell) => bases.filter((house) => house.cells.includes(cell)).length,
      (cell: Cell) => covers.filter((house) => house.cells.includes(cell)).length,
    ];
    if (!victims.every((cell) => inCovers(cell) > inBases(cell))) continue;
    const fins = new Set(places.filter((place) => inBases(cellOf(grid, place)) > inCovers(cellOf(grid, place))));
    const isSeen = [...fins].every((fin) => victims.every((cell) => grid.peers[cell]!.includes(cellOf(grid, fin))));
    if (isSeen && (best === undefined || fins.size < best.fins.length)) best = { covers, fins: [...fins] };
  }
  return best;
}

/** Every choice of `count` items, in the order of the list. */
function* choices<T>(list: readonly T[], count: number, from = 0): Generator<readonly T[]> {
  if (count === 0) yield [];
  for (let index = from; index <= list.length - count && count > 0; index++) {
    for (const rest of choices(list, count - 1, index + 1)) yield [list[index]!, ...rest];
  }
}
