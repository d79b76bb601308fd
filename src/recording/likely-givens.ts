/**
 * Of the likely ways to read a puzzle's givens the one with exactly one solution.
 *
 * Ways are tried in the order of their cost, which is the sum of the costs of what is read in each cell. A cell stays in
 * doubt where another likely reading of it leads to exactly one solution as well, where what is taken looks unlikely, and,
 * if no way has exactly one solution, where the look alone does not decide, or where givens contradict each other.
 */
import { digit } from '../grid/geometry.ts';
import type { Digit, Grid } from '../grid/grid.ts';
import { countSolutions, possibleFrom } from '../grid/solutions.ts';
import type { Reading } from './cell-reading.ts';

export interface LikelyGivens {
  /** By cell. */
  readonly givens: readonly (Digit | undefined)[];
  /** Whether they have exactly one solution. */
  readonly isUnique: boolean;
  /** By cell. */
  readonly isDoubtful: readonly boolean[];
}

/** A reading that costs more than this is unlikely: odds of one to fifty. */
const unlikely = 4;
/** Ways that are tried at most. */
const mostWays = 1500;

/** A way to read: by cell the index of its reading. */
interface Way {
  readonly chosen: readonly number[];
  readonly cost: number;
  /** Cells before this one are settled, so that no way comes twice. */
  readonly from: number;
}

/** `readings`: by cell, the likeliest first; at least one each. */
export function likelyGivens(grid: Grid, readings: readonly (readonly Reading[])[]): LikelyGivens {
  const way = firstUnique(grid, readings);
  if (way === undefined) return undecided(grid, readings);
  const givens = givensBy(grid, readings, way.chosen);
  const against = way.chosen.filter((index) => index > 0).length;
  const isDoubtful = readings.map((inCell, cell) => {
    const taken = inCell[way.chosen[cell]!]!;
    // One cell against its look is the puzzle's own word for it; several together may be a way among many.
    if (taken.cost > unlikely || (taken.cost > 0 && against > 1)) return true;
    return inCell.some((other, index) => {
      if (other === taken || other.cost > unlikely) return false;
      return hasOneSolution(grid, givensBy(grid, readings, replaced(way.chosen, cell, index)));
    });
  });
  return { givens, isUnique: true, isDoubtful };
}

function undecided(grid: Grid, readings: readonly (readonly Reading[])[]): LikelyGivens {
  const givens = givensBy(
    grid,
    readings,
    readings.map(() => 0),
  );
  const isDoubtful = grid.cells.map((cell) => {
    const contradicts = givens[cell] !== undefined && grid.peers[cell]!.some((peer) => givens[peer] === givens[cell]);
    return contradicts || (readings[cell]![1]?.cost ?? Number.POSITIVE_INFINITY) <= unlikely;
  });
  return { givens, isUnique: false, isDoubtful };
}

/** Best first: the ways that differ in one more cell, or in the next reading of the last one that differs. */
function firstUnique(grid: Grid, readings: readonly (readonly Reading[])[]): Way | undefined {
  const open: Way[] = [{ chosen: readings.map(() => 0), cost: 0, from: 0 }];
  for (let tried = 0; tried < mostWays; tried++) {
    const way = takeLeast(open);
    if (way === undefined) return undefined;
    if (hasOneSolution(grid, givensBy(grid, readings, way.chosen))) return way;
    for (let cell = way.from; cell < readings.length; cell++) {
      const now = way.chosen[cell]!;
      const next = readings[cell]![now + 1];
      if (next === undefined) continue;
      open.push({
        chosen: replaced(way.chosen, cell, now + 1),
        cost: way.cost - readings[cell]![now]!.cost + next.cost,
        from: cell,
      });
    }
  }
  return undefined;
}

function takeLeast(open: Way[]): Way | undefined {
  let least = 0;
  for (let index = 1; index < open.length; index++) if (open[index]!.cost < open[least]!.cost) least = index;
  const [way] = open.splice(least, 1);
  return way;
}

function replaced(chosen: readonly number[], cell: number, index: number): readonly number[] {
  return chosen.map((each, other) => (other === cell ? index : each));
}

function givensBy(
  grid: Grid,
  readings: readonly (readonly Reading[])[],
  chosen: readonly number[],
): readonly (Digit | undefined)[] {
  return readings.map((inCell, cell) => {
    const read = inCell[chosen[cell]!]!.digit;
    return read === undefined ? undefined : digit(grid, read);
  });
}

function hasOneSolution(grid: Grid, givens: readonly (Digit | undefined)[]): boolean {
  return countSolutions(grid, possibleFrom(grid, givens), 2) === 1;
}
