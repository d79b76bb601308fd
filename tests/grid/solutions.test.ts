import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Candidates, membersOf, setOf } from '../../src/grid/candidates.ts';
import { type BoxShape, candidatesInCell, type Grid, gridOf } from '../../src/grid/grid.ts';
import { countSolutions, possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { chanceFrom } from '../random.ts';
import { withConflicts, withHouses } from './boards.ts';
import { givensFrom } from './givens.ts';
import { exactCoverOn, type Oracle, satisfiabilityOn } from './solution-oracles.ts';

const nine = gridOf('3x3');
const empty = (grid: Grid) => possibleFrom(grid, []);

describe('published counts', () => {
  test('288 completed grids of 4x4 (OEIS A107739)', () => {
    expect(countSolutions(gridOf('2x2'), empty(gridOf('2x2')), 1000)).toBe(288);
  });
  test('28,200,960 completed grids of 6x6 (OEIS A107739): digits can be renamed, so 1/720 have 123456 in row 1', () => {
    const six = gridOf('2x3');
    expect(countSolutions(six, possibleFrom(six, givensFrom(six, '123456')), 1e6)).toBe(28_200_960 / 720);
  });
  test('each of 500 puzzles of 17 givens has one solution (G. F. Royle)', () => {
    const puzzles = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8')
      .trim()
      .split('\n');
    expect(puzzles).toHaveLength(500);
    const manifold = puzzles.filter(
      (puzzle) => countSolutions(nine, possibleFrom(nine, givensFrom(nine, puzzle)), 2) !== 1,
    );
    expect(manifold).toEqual([]);
  });
});

describe('few and many', () => {
  test('the empty 9x9 has more than one', () => {
    expect(countSolutions(nine, empty(nine), 2)).toBe(2);
  });
  test('no more than asked for', () => {
    expect(solutionsOf(nine, empty(nine), 5)).toHaveLength(5);
    expect(solutionsOf(nine, empty(nine), 1)).toHaveLength(1);
    expect(solutionsOf(nine, empty(nine), 0)).toEqual([]);
  });
  test('no candidates at all', () => {
    expect(countSolutions(nine, setOf(nine, []), 2)).toBe(0);
  });
  test('a digit without a place in a house', () => {
    const withoutOnes = empty(nine);
    const row = nine.houses[0]!;
    const left = membersOf(withoutOnes).filter(
      (each) => !row.cells.some((cell) => candidatesInCell(nine, cell)[0] === each),
    );
    expect(countSolutions(nine, setOf(nine, left), 2)).toBe(0);
  });
  test('the same answer when asked again', () => {
    const possible = empty(gridOf('2x2'));
    expect(solutionsOf(gridOf('2x2'), possible, 288)).toEqual(solutionsOf(gridOf('2x2'), possible, 288));
  });
});

describe('possibleFrom', () => {
  const four = gridOf('2x2');
  const digitsOf = (givens: string) => {
    const possible = possibleFrom(four, givensFrom(four, givens));
    return four.cells.map((cell) =>
      candidatesInCell(four, cell)
        .flatMap((each, at) => (membersOf(possible).includes(each) ? [at + 1] : []))
        .join(''),
    );
  };
  test('what no given sees, and the given itself', () => {
    expect(digitsOf('1...  ....  ....  ....')).toEqual([
      ...['1', '234', '234', '234'],
      ...['234', '234', '1234', '1234'],
      ...['234', '1234', '1234', '1234'],
      ...['234', '1234', '1234', '1234'],
    ]);
  });
  test('givens that see each other leave no solution', () => {
    expect(digitsOf('1..1').slice(0, 4)).toEqual(['', '234', '234', '']);
    expect(countSolutions(four, possibleFrom(four, givensFrom(four, '1..1')), 2)).toBe(0);
  });
});

const diagonal = [0, 5, 10, 15];
const otherDiagonal = [3, 6, 9, 12];

/** The same solutions by both, or where there are `most` or more, as many; says how many. */
function compare(grid: Grid, possible: Candidates, most: number, oracle: Oracle): number {
  const ours = solutionsOf(grid, possible, most).map((solution) => membersOf(solution).join());
  const theirs = oracle(possible, most).map((solution) => solution.join());
  expect(new Set(ours).size).toBe(ours.length);
  expect(ours.length).toBe(theirs.length);
  if (ours.length < most) expect(ours.sort()).toEqual(theirs.sort());
  return ours.length;
}

/** All candidates, each left out with this chance; what remains has anything from no solution to many. */
function thinned(grid: Grid, seed: number, outOfTen: number): Candidates {
  const chance = chanceFrom(seed);
  const solution = chance.pick(solutionsOf(grid, empty(grid), 40));
  const keep = new Set(chance.below(4) === 0 ? [] : membersOf(solution));
  return setOf(
    grid,
    membersOf(empty(grid)).filter((each) => keep.has(each) || chance.below(10) >= outOfTen),
  );
}

describe('general libraries agree', () => {
  const rows: readonly (readonly [BoxShape, outOfTen: number, rounds: number])[] = [
    ['2x2', 3, 60],
    ['2x3', 4, 40],
    ['2x4', 5, 30],
    ['3x3', 6, 30],
  ];
  test.each(rows)('exact cover on %s', (boxes, outOfTen, rounds) => {
    const grid = gridOf(boxes);
    const oracle = exactCoverOn(grid);
    const counts = new Set<number>();
    for (let seed = 1; seed <= rounds; seed++) counts.add(compare(grid, thinned(grid, seed, outOfTen), 50, oracle));
    expect([...counts].sort((a, b) => a - b).slice(0, 2), 'none, one, and several all occur').toEqual([0, 1]);
    expect(counts.size).toBeGreaterThan(2);
  });
  test.each(rows)('satisfiability on %s', (boxes, outOfTen, rounds) => {
    const grid = gridOf(boxes);
    const oracle = satisfiabilityOn(grid);
    for (let seed = 100; seed <= 100 + rounds / 4; seed++) compare(grid, thinned(grid, seed, outOfTen), 10, oracle);
  });
});

describe('boards with other rules, told by their tables alone', () => {
  const four = gridOf('2x2');
  const six = gridOf('2x3');
  const isKnightApart = (across: number, down: number) => across * down === 2;
  const boards = [
    {
      name: '4x4 with its diagonals as houses',
      plain: four,
      grid: withHouses(four, [diagonal, otherDiagonal]),
      row: '',
    },
    {
      name: '4x4 without 1 beside 4',
      plain: four,
      grid: withConflicts(four, (across, down, a, b) => across + down === 1 && a + b === 5),
      row: '',
    },
    {
      name: '6x6 without equal digits a knight apart',
      plain: six,
      grid: withConflicts(six, (across, down, a, b) => isKnightApart(across, down) && a === b),
      row: '123456',
    },
  ];
  test.each(boards)('$name', ({ plain, grid, row }) => {
    const possible = possibleFrom(grid, givensFrom(grid, row));
    const count = countSolutions(grid, possible, 400);
    expect(count).toBeGreaterThan(0);
    expect(count).toBeLessThan(countSolutions(plain, possibleFrom(plain, givensFrom(plain, row)), 400));
    compare(grid, possible, 400, satisfiabilityOn(grid));
  });
});
