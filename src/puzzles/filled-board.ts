/**
 * Randomly filled boards, free of conflicts.
 */
import { Bug } from '../grid/bug.ts';
import { bitsIn } from '../grid/counting.ts';
import { digit } from '../grid/geometry.ts';
import type { Digit, Grid } from '../grid/grid.ts';
import type { Chance } from './chance.ts';

/** The digit of each cell. Every filled board can occur; not all equally often. */
export function filledBoard(grid: Grid, chance: Chance): readonly Digit[] {
  const all = 2 ** grid.size - 1;
  const filled = fill(grid, new Array<number>(grid.cellCount).fill(all), chance);
  if (filled === undefined) throw new Bug('a board could not be filled');
  return filled.map((mask) => digit(grid, 32 - Math.clz32(mask)));
}

/** Digits as bits, by cell; copied for each digit tried. Undefined if the cells cannot be filled. */
function fill(grid: Grid, open: readonly number[], chance: Chance, settled = new Set<number>()): number[] | undefined {
  const cell = cellToFill(grid, open, chance, settled);
  if (cell === undefined) return [...open];
  for (const tried of chance.shuffled(grid.digits.filter((each) => (open[cell]! >> (each - 1)) & 1))) {
    const bit = 1 << (tried - 1);
    const next = [...open];
    next[cell] = bit;
    for (const peer of grid.peers[cell]!) next[peer]! &= ~bit;
    if (next.includes(0)) continue;
    const whole = fill(grid, next, chance, new Set([...settled, cell]));
    if (whole !== undefined) return whole;
  }
  return undefined;
}

/** One of the cells with the fewest digits left, so that dead ends are found early. */
function cellToFill(
  grid: Grid,
  open: readonly number[],
  chance: Chance,
  settled: ReadonlySet<number>,
): number | undefined {
  const left = grid.cells.filter((cell) => !settled.has(cell));
  const fewest = Math.min(...left.map((cell) => bitsIn(open[cell]!)));
  const those = left.filter((cell) => bitsIn(open[cell]!) === fewest);
  return those.length === 0 ? undefined : chance.pick(those);
}
