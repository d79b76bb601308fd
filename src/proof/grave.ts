/**
 * The whole grid as a deadly pattern: which extra candidates keep every open cell from having exactly two, and every
 * digit from standing exactly twice, or not at all, among the open cells of each house.
 */
import { type Candidate, type Candidates, difference, has, isWithin, membersOf, setOf } from '../grid/candidates.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';

interface Board {
  readonly grid: Grid;
  readonly possible: Candidates;
  readonly placed: Candidates;
}

export type Graves =
  | { readonly kind: 'extras'; readonly extras: Candidates }
  | { readonly kind: 'refused'; readonly why: string };

/** How many pairs are tried in the cells before the grid counts as too far from being one. */
const pairBound = 200_000;

/** The extra candidates, if they can be chosen in one way alone, or those named in `without`, if they are such. */
export function gravesOf(board: Board, without: Candidates | undefined): Graves {
  const open = openCellsOf(board);
  if (open.length === 0) return { kind: 'refused', why: 'no cell is open' };
  if (without !== undefined) {
    if (!isWithin(without, board.possible))
      return { kind: 'refused', why: 'one of the candidates named after `without` is not possible' };
    return isGrave(board, open, without)
      ? { kind: 'extras', extras: without }
      : {
          kind: 'refused',
          why: 'without these candidates the open cells still do not all have two, each digit twice or not at all in every house',
        };
  }
  const found = extrasOf(board, open);
  if (found === 'too far')
    return { kind: 'refused', why: 'the grid is too far from two candidates in every open cell' };
  const [first, second] = found;
  if (first === undefined)
    return {
      kind: 'refused',
      why: 'no extra candidates can be left out so that every open cell has two and every digit stands twice or not at all in each house',
    };
  if (second !== undefined)
    return {
      kind: 'refused',
      why: 'the extra candidates can be chosen in more ways than one: name them after `grid without`',
    };
  return { kind: 'extras', extras: first };
}

function openCellsOf(board: Board): Cell[] {
  const placed = new Set(membersOf(board.placed).map((candidate) => cellOf(board.grid, candidate)));
  return board.grid.cells.filter((cell) => !placed.has(cell));
}

function isGrave(board: Board, open: readonly Cell[], without: Candidates): boolean {
  const left = difference(board.possible, without);
  const inCell = (cell: Cell) => candidatesInCell(board.grid, cell).filter((candidate) => has(left, candidate));
  if (!open.every((cell) => inCell(cell).length === 2)) return false;
  const isOpen = new Set(open);
  return board.grid.houses.every((house) =>
    board.grid.digits.every((digit) => {
      const count = house.cells.filter(
        (cell) => isOpen.has(cell) && has(left, candidateAt(board.grid, cell, digit)),
      ).length;
      return count === 0 || count === 2;
    }),
  );
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
