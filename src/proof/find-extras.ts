/**
 * The extra candidates without which the whole grid is a deadly pattern, named or looked for. They are a hint and no more:
 * `deadly.ts` judges whether it is so.
 */
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  isEmpty,
  isWithin,
  membersOf,
  setOf,
} from '../grid/candidates.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Board } from './terms.ts';

/** How many pairs are tried in the cells before the grid counts as too far from being one. */
const pairBound = 200_000;

/** The extras that were named, or those found if they can be chosen in one way alone; or why there are none. */
export function extrasFor(
  board: Board,
  named: Candidates | undefined,
): { readonly extras: Candidates } | { readonly refused: string } {
  const placed = new Set(membersOf(board.placed).map((candidate) => cellOf(board.grid, candidate)));
  const open = board.grid.cells.filter((cell) => !placed.has(cell));
  if (open.length === 0) return { refused: 'no cell is open' };
  if (named !== undefined)
    return isWithin(named, board.possible)
      ? { extras: named }
      : { refused: 'one of the candidates named after `without` is not possible' };
  const found = extrasOf(board, open);
  if (found === 'too far') return { refused: 'the grid is too far from two candidates in every open cell' };
  const [first, second] = found;
  if (first === undefined)
    return {
      refused:
        'no extra candidates can be left out so that every open cell has two and every digit stands twice or not at all in each house',
    };
  if (second !== undefined)
    return { refused: 'the extra candidates can be chosen in more ways than one: name them after `grid without`' };
  if (isEmpty(first))
    return { refused: 'every open cell has two candidates already, so nothing keeps it from being left over' };
  return { extras: first };
}

/** Up to two choices of extras, by trying every pair of digits in the open cells, the cells with fewest first. */
function extrasOf(board: Board, open: readonly Cell[]): Candidates[] | 'too far' {
  const { grid } = board;
  const inCell = (cell: Cell) => candidatesInCell(grid, cell).filter((candidate) => has(board.possible, candidate));
  const cells = [...open].sort((a, b) => inCell(a).length - inCell(b).length);
  const counts = grid.houses.map(() => grid.digits.map(() => 0));
  const kept: Candidate[] = [];
  const found: Candidates[] = [];
  let tries = 0;

  const add = (candidate: Candidate, by: 1 | -1) => {
    const column = digitOf(grid, candidate) - 1;
    for (const { house } of grid.housesOf[cellOf(grid, candidate)]!) counts[house]![column]! += by;
  };
  const fits = (candidate: Candidate) =>
    grid.housesOf[cellOf(grid, candidate)]!.every(({ house }) => counts[house]![digitOf(grid, candidate) - 1]! < 2);

  const tryFrom = (next: number): void => {
    const cell = cells[next];
    if (cell === undefined) {
      if (counts.every((row) => row.every((count) => count !== 1))) {
        found.push(difference(setOf(grid, cells.flatMap(inCell)), setOf(grid, kept)));
      }
      return;
    }
    const choices = inCell(cell);
    for (const [index, first] of choices.entries()) {
      for (const second of choices.slice(index + 1)) {
        if (found.length === 2 || ++tries > pairBound) return;
        if (!fits(first) || !fits(second)) continue;
        for (const candidate of [first, second]) add(candidate, 1);
        kept.push(first, second);
        if (canFinish(grid, counts, cells, next + 1, board.possible)) tryFrom(next + 1);
        kept.length -= 2;
        for (const candidate of [first, second]) add(candidate, -1);
      }
    }
  };
  tryFrom(0);
  if (tries > pairBound && found.length < 2) return 'too far';
  return found;
}

/** Whether every digit that stands once in a house can still come to stand there twice. */
function canFinish(
  grid: Grid,
  counts: readonly (readonly number[])[],
  cells: readonly Cell[],
  next: number,
  possible: Candidates,
): boolean {
  const rest = new Set(cells.slice(next));
  return grid.houses.every((house) =>
    grid.digits.every((digit: Digit) => {
      if (counts[house.house]![digit - 1] !== 1) return true;
      return house.cells.some((cell) => rest.has(cell) && has(possible, candidateAt(grid, cell, digit)));
    }),
  );
}
