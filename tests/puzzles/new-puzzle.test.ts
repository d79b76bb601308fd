/** New puzzles, held against the counting of solutions and against a solve by the kernel. */
import { describe, expect, it } from 'vitest';
import { sees } from '../../src/grid/geometry.ts';
import { type BoxShape, gridOf } from '../../src/grid/grid.ts';
import { countSolutions, possibleFrom } from '../../src/grid/solutions.ts';
import { chanceFrom } from '../../src/puzzles/chance.ts';
import { filledBoard } from '../../src/puzzles/filled-board.ts';
import { type Givens, hardArguments, isEasy } from '../../src/puzzles/hard-part.ts';
import { type Attempt, anyPuzzle, attempts, hardPuzzle, printGivens, type Wish } from '../../src/puzzles/new-puzzle.ts';
import { cellsTogether, symmetries } from '../../src/puzzles/symmetry.ts';

const shapes: readonly BoxShape[] = ['2x2', '2x3', '2x4', '3x3'];

function found(wish: Wish, seed: number, count: number, most = 400): Extract<Attempt, { kind: 'found' }>[] {
  const puzzles: Extract<Attempt, { kind: 'found' }>[] = [];
  let left = most;
  for (const attempt of attempts(wish, chanceFrom(seed), () => wish.needs)) {
    if (attempt.kind === 'found') puzzles.push(attempt);
    if (puzzles.length === count || --left === 0) break;
  }
  return puzzles;
}

const plain: Wish = { grid: gridOf('3x3'), needs: [], locked: false, symmetry: 'none', minimal: false };

describe('filled boards', () => {
  it.each(shapes)('%s: every digit once in every house', (shape) => {
    const grid = gridOf(shape);
    for (let seed = 0; seed < 20; seed++) {
      const board = filledBoard(grid, chanceFrom(seed));
      for (const house of grid.houses)
        expect(new Set(house.cells.map((cell) => board[cell])).size, house.name).toBe(grid.size);
    }
  });
});

describe('symmetry', () => {
  it.each(symmetries)('%s: every cell in one group, and a turn of the groups is itself', (symmetry) => {
    const grid = gridOf('2x3');
    const groups = cellsTogether(grid, symmetry);
    expect(groups.flat().toSorted((a, b) => a - b)).toEqual([...grid.cells]);
  });

  it.each([
    ['rotational', (cell: number) => 80 - cell],
    ['diagonal', (cell: number) => (cell % 9) * 9 + Math.floor(cell / 9)],
    ['mirror', (cell: number) => cell - (cell % 9) + 8 - (cell % 9)],
  ] as const)('%s puzzles have it', (symmetry, twin) => {
    const { givens } = found({ ...plain, symmetry }, 3, 1)[0]!;
    for (const [cell, given] of givens.entries())
      expect(givens[twin(cell)] === undefined, `${cell}`).toBe(given === undefined);
  });
});

describe('puzzles of an easy part alone', () => {
  it.each(shapes)('%s: one solution, and singles fill it', (shape) => {
    const grid = gridOf(shape);
    for (const { givens, solution } of found({ ...plain, grid }, 11, 8)) {
      expect(countSolutions(grid, possibleFrom(grid, givens), 2)).toBe(1);
      expect(isEasy(grid, givens, { locked: false })).toBe(true);
      for (const [cell, given] of givens.entries()) if (given !== undefined) expect(given).toBe(solution[cell]);
    }
  });

  it('are the same for the same seed, and others for another', () => {
    const texts = (seed: number) => found(plain, seed, 4).map(({ givens }) => printGivens(givens));
    expect(texts(5)).toEqual(texts(5));
    expect(texts(5).filter((text) => texts(6).includes(text))).toEqual([]);
  });

  it('keep every given, where minimal is asked for', () => {
    const [first] = found({ ...plain, minimal: true }, 2, 1);
    expect(withoutEach(first!.givens).every((fewer) => solutionsOf(fewer) === 2)).toBe(true);
  });
});

describe('puzzles that need an argument', () => {
  it.each(['pointing pair', 'naked pair', 'skyscraper'] as const)(
    '%s: it and singles carry it, and singles do not',
    (name) => {
      const wish = { ...plain, needs: [name] };
      const puzzles = found(wish, 7, 1);
      expect(puzzles).toHaveLength(1);
      for (const { givens } of puzzles) {
        expect(solutionsOf(givens)).toBe(1);
        expect(isEasy(plain.grid, givens, { locked: false })).toBe(false);
        expect(isEasy(plain.grid, givens, { locked: true })).toBe(name === 'pointing pair');
        expect(hardArguments(plain.grid, givens, { names: [name], locked: false })).toEqual([name]);
      }
    },
  );

  it('are passed over where other arguments cost less', () => {
    const wish: Wish = { ...plain, needs: ['naked pair'] };
    const kinds = new Set<string>();
    let left = 12;
    for (const { kind } of attempts(wish, chanceFrom(7), () => ['pointing pair'])) {
      kinds.add(kind);
      if (--left === 0) break;
    }
    expect([...kinds].sort()).toEqual(['less costly otherwise', 'rejected']);
  });
});

describe('any puzzle', () => {
  it('has one solution and cannot spare a given', () => {
    const givens = anyPuzzle(plain.grid, 'none', chanceFrom(4));
    expect(solutionsOf(givens)).toBe(1);
    expect(withoutEach(givens).every((fewer) => solutionsOf(fewer) === 2)).toBe(true);
  });
});

it('a hard puzzle is one that singles and locked candidates do not carry', () => {
  for (const seed of [1, 2, 3]) {
    const givens = hardPuzzle(plain.grid, 'none', chanceFrom(seed));
    expect(solutionsOf(givens)).toBe(1);
    expect(isEasy(plain.grid, givens, { locked: true })).toBe(false);
  }
});

it('a broken board is no puzzle', () => {
  const { grid } = plain;
  const [a, b] = [grid.cells[0]!, grid.cells.find((cell) => sees(grid, grid.cells[0]!, cell))!];
  const digits = filledBoard(grid, chanceFrom(1));
  const clash: Givens = grid.cells.map((cell) => (cell === a || cell === b ? digits[a] : undefined));
  expect(hardArguments(grid, clash, { names: ['naked pair'], locked: false })).toBeUndefined();
});

function solutionsOf(givens: Givens): number {
  return countSolutions(plain.grid, possibleFrom(plain.grid, givens), 2);
}

/** The givens with each one of them left out. */
function withoutEach(givens: Givens): Givens[] {
  return givens.flatMap((given, cell) =>
    given === undefined ? [] : [givens.map((each, other) => (other === cell ? undefined : each))],
  );
}
