/**
 * Random positions and sets for tests of the kernel.
 */
import { type Candidate, has, membersOf, setOf } from '../../src/grid/candidates.ts';
import { countOf } from '../../src/grid/counting.ts';
import { candidatesInCell, cellOf, type Grid } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { begin, digitsIn, type OneOf, type Position, placesIn, takeAsRead } from '../../src/proof/kernel.ts';
import type { Chance } from '../random.ts';

/** A completed grid, filled cell by cell with backtracking. */
export function randomSolution(grid: Grid, chance: Chance): Candidate[] {
  const filled: Candidate[] = [];
  const fill = (cell: number): boolean => {
    if (cell === grid.cellCount) return true;
    for (const candidate of chance.shuffled(candidatesInCell(grid, grid.cells[cell]!))) {
      if (filled.some((other) => has(grid.conflicts[candidate]!, other))) continue;
      filled.push(candidate);
      if (fill(cell + 1)) return true;
      filled.pop();
    }
    return false;
  };
  fill(0);
  return filled;
}

/** A position that keeps the solution: some of it given, some other candidates removed. */
export function randomPosition(grid: Grid, solution: readonly Candidate[], chance: Chance): Position {
  const share = 20 + chance.below(30);
  const givens = solution.filter(() => chance.below(100) < share);
  let position = begin(grid, givens, { oneSolution: true });
  const isTrue = setOf(grid, solution);
  const removalShare = 30 + chance.below(65);
  for (const candidate of membersOf(position.possible)) {
    if (has(isTrue, candidate) || chance.below(100) >= removalShare) continue;
    position = takeAsRead(position, { kind: 'impossible', candidate });
  }
  return position;
}

/** Sets of cells and houses that crowd around one part of the grid, so that arguments come about. */
export function randomSets(position: Position, count: number, chance: Chance): OneOf[] {
  const { grid } = position;
  const digits = chance.shuffled(grid.digits).slice(0, 1 + chance.below(3));
  const all: OneOf[] = [];
  for (const house of grid.houses) for (const digit of digits) all.push(placesIn(position, digit, house));
  for (const cell of grid.cells) all.push(digitsIn(position, cell));
  const open = all.filter((set) => countOf(set.members) > 1 && countOf(set.members) < 5);
  return chance.shuffled(open).slice(0, count);
}

export function randomConclusion(position: Position, sets: readonly OneOf[], chance: Chance): Conclusion {
  const { grid } = position;
  const near = sets.flatMap((set) => membersOf(set.members));
  const peers = near.flatMap((candidate) => membersOf(grid.conflicts[candidate]!));
  const possible = [...near, ...peers].filter(
    (candidate) => has(position.possible, candidate) && !isPlacedCell(position, candidate),
  );
  const from = possible.length > 0 ? possible : membersOf(position.possible);
  if (chance.below(2) === 0) return { kind: 'impossible', candidate: chance.pick(from) };
  const some = Array.from({ length: 1 + chance.below(3) }, () => chance.pick(from));
  return { kind: 'one-of', candidates: setOf(grid, some) };
}

function isPlacedCell({ grid, placed }: Position, candidate: Candidate): boolean {
  return candidatesInCell(grid, cellOf(grid, candidate)).some((other) => has(placed, other));
}
