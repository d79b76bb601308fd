/**
 * Boards with regions of other shapes, diagonals, and moves. What counts as a solution is decided by general solvers that are
 * told the rules in words of their own: rows, columns, the drawing, and distances, never the grid's tables.
 */
import Logic from 'logic-solver';
import { describe, expect, test } from 'vitest';
import { membersOf } from '../../src/grid/candidates.ts';
import { cellAt, houseAt, sees } from '../../src/grid/geometry.ts';
import { type BoardRule, type BoxShape, type Grid, gridOf, gridWith } from '../../src/grid/grid.ts';
import { parseHouses } from '../../src/grid/notation/houses.ts';
import { printCells } from '../../src/grid/notation/print.ts';
import { parseSets } from '../../src/grid/notation/sets.ts';
import { countSolutions, possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import { exactCoverOn } from './solution-oracles.ts';

/** A drawing in letters, rows apart from one another, as numbers of regions in reading order. */
const regions = (drawing: string) => {
  const letters = [...drawing.replaceAll(' ', '')];
  const order = [...new Set(letters)];
  return letters.map((letter) => order.indexOf(letter));
};

const four = 'aabb aacb dccb dddc'; // each a piece of four
const five = 'abbbb aaaab ccccc deeee dddde';
const rows = 'aaaaa bbbbb ccccc ddddd eeeee'; // a region may be a row as well
const six = 'aaabbb aaabbb ccddee ccddee ccddee ffffff';

interface Board {
  readonly about: string;
  readonly drawing?: string;
  readonly boxes?: BoxShape;
  readonly rules: readonly BoardRule[];
  readonly count: number;
}

const gridFor = ({ drawing, boxes, rules }: Board) =>
  gridWith({ regions: drawing === undefined ? boxes! : regions(drawing), rules });

/** What stands beside each is the number of solutions with 1, 2, 3 ... in the first row, to show that there is something to compare. */
const boards: readonly Board[] = [
  { about: '4x4', boxes: '2x2', rules: [], count: 12 },
  { about: '4x4 with diagonals', boxes: '2x2', rules: ['diagonals'], count: 2 },
  { about: '4x4, no knight', boxes: '2x2', rules: ['anti-knight'], count: 1 },
  { about: '4x4, no king', boxes: '2x2', rules: ['anti-king'], count: 0 },
  { about: '4x4 in pieces', drawing: four, rules: [], count: 3 },
  { about: '5x5 in pieces', drawing: five, rules: [], count: 120 },
  { about: '5x5 in pieces with diagonals', drawing: five, rules: ['diagonals'], count: 2 },
  { about: '5x5 in pieces, no knight', drawing: five, rules: ['anti-knight'], count: 1 },
  { about: '5x5 Latin squares with diagonals', drawing: rows, rules: ['diagonals'], count: 8 },
  { about: '5x5 Latin squares, no king', drawing: rows, rules: ['anti-king'], count: 2 },
  { about: '6x6 with diagonals', boxes: '2x3', rules: ['diagonals'], count: 12 },
  { about: '6x6, no knight', boxes: '2x3', rules: ['anti-knight'], count: 16 },
  { about: '6x6, no king', boxes: '2x3', rules: ['anti-king'], count: 103 },
  { about: '6x6 in pieces with diagonals', drawing: six, rules: ['diagonals'], count: 2 },
  { about: '6x6 in pieces, no king', drawing: six, rules: ['anti-king'], count: 54 },
];

/** The first row in order: all solutions of 5x5 boards are these with the digits renamed. */
const firstRow = (grid: Grid) => grid.digits;

describe('as many solutions as a satisfiability solver finds that is told the rules in words', () => {
  test.each(boards)('$about', (board) => {
    const grid = gridFor(board);
    const counted = countSolutions(grid, possibleFrom(grid, firstRow(grid)), 5000);
    expect([counted, countByWords(board, grid.size)]).toEqual([board.count, board.count]);
  });
});

describe('the very solutions of exact cover, where all rules are houses', () => {
  test.each(boards.filter(({ rules }) => rules.every((rule) => rule === 'diagonals')))('$about', (board) => {
    const grid = gridFor(board);
    const possible = possibleFrom(grid, firstRow(grid));
    const own = solutionsOf(grid, possible, 5000).map((solution) => membersOf(solution).join());
    const due = exactCoverOn(grid)(possible, 5000).map((solution) => solution.join());
    expect(own.sort()).toEqual(due.sort());
  });
});

test('1344 Latin squares of order 5 with the first row in order: 161,280 in all, of 120 first rows (OEIS A002860, from memory)', () => {
  const grid = gridWith({ regions: regions(rows), rules: [] });
  expect(countSolutions(grid, possibleFrom(grid, firstRow(grid)), 5000)).toBe(161_280 / 120);
});

test('6x6 in pieces: a row may be a region as well', () => {
  const grid = gridWith({ regions: regions(six), rules: [] });
  expect(printCells(grid, houseAt(grid, 'box', 6)!.cells)).toBe('r6c123456');
  expect(countSolutions(grid, possibleFrom(grid, firstRow(grid)), 3)).toBe(3);
});

describe('tables', () => {
  const nine = gridWith({ regions: '3x3', rules: ['diagonals', 'anti-knight', 'anti-king'] });
  test('without regions and rules it is the ordinary board, the same object', () => {
    expect(gridWith({ regions: '3x3', rules: [] })).toBe(gridOf('3x3'));
    expect(gridWith({ regions: '2x2', rules: ['anti-king', 'diagonals'] })).toBe(
      gridWith({ regions: '2x2', rules: ['diagonals', 'anti-king'] }),
    );
  });
  test('diagonals are houses, from the top left and from the top right, cells in reading order', () => {
    const [down, up] = [houseAt(nine, 'diagonal', 1)!, houseAt(nine, 'diagonal', 2)!];
    expect([down.name, up.name, nine.houses.length]).toEqual(['d1', 'd2', 29]);
    expect(down.cells).toEqual(nine.digits.map((line) => cellAt(nine, line, line)));
    expect(up.cells).toEqual(nine.digits.map((line) => cellAt(nine, line, 10 - line)));
    expect(nine.housesOf[cellAt(nine, 5, 5)]!.map((house) => house.name)).toEqual(['r5', 'c5', 'b5', 'd1', 'd2']);
  });
  test('moves are peers without a house', () => {
    const from = cellAt(nine, 4, 6);
    expect(sees(nine, from, cellAt(nine, 2, 7))).toBe(true);
    expect(sees(nine, from, cellAt(nine, 3, 7))).toBe(true);
    expect(sees(nine, from, cellAt(nine, 1, 7))).toBe(false);
    const moves = gridWith({ regions: '3x3', rules: ['anti-knight'] });
    expect(moves.houses.length).toBe(27);
    expect(sees(moves, from, cellAt(moves, 2, 7))).toBe(true);
    expect(sees(moves, from, cellAt(moves, 3, 7))).toBe(false);
  });
  test('peers go both ways, and none twice', () => {
    for (const cell of nine.cells) {
      expect(new Set(nine.peers[cell]).size).toBe(nine.peers[cell]!.length);
      expect(nine.peers[cell]!.every((peer) => peer !== cell && sees(nine, peer, cell))).toBe(true);
    }
  });
  test('regions that do not share out the cells are no board', () => {
    expect(() => gridWith({ regions: regions('aabb aabb ccdd cccd'), rules: [] })).toThrow('evenly');
    expect(() => gridWith({ regions: regions('aabbb'), rules: [] })).toThrow('evenly');
  });
});

describe('notation', () => {
  const crossed = gridWith({ regions: '3x3', rules: ['diagonals'] });
  test('d1 and d2 where the board has them', () => {
    const houses = parseHouses(crossed, 'd12 r3');
    expect(houses.ok && houses.value.map((house) => house.name)).toEqual(['d1', 'd2', 'r3']);
    const sets = parseSets(crossed, '7d2');
    expect(sets.ok && sets.value.length).toBe(1);
  });
  test('no d3, and no d1 on the ordinary board', () => {
    const read = parseHouses(crossed, 'd3');
    expect(!read.ok && read.faults[0]!.message).toBe('there is no diagonal 3: diagonals run from 1 to 2');
    expect(parseHouses(gridOf('3x3'), 'd1').ok).toBe(false);
    expect(parseSets(gridOf('3x3'), '7d1').ok).toBe(false);
  });
});

/** Solutions with 1, 2, 3 ... in the first row, up to 5000. */
function countByWords({ drawing, boxes, rules }: Board, size: number): number {
  const solver = new Logic.Solver();
  const all = Array.from({ length: size }, (_, index) => index);
  const named = (row: number, column: number, digit: number) => `${digit} in ${row},${column}`;
  const regionOf = (row: number, column: number) => {
    if (drawing !== undefined) return drawing.replaceAll(' ', '')[row * size + column];
    const [rows, columns] = boxes!.split('x').map(Number) as [number, number];
    return `${Math.floor(row / rows)} ${Math.floor(column / columns)}`;
  };
  const places = all.flatMap((row) => all.map((column) => ({ row, column })));
  for (const { row, column } of places)
    solver.require(Logic.exactlyOne(...all.map((digit) => named(row, column, digit))));
  for (const [index, a] of places.entries()) {
    for (const b of places.slice(index + 1)) {
      const [down, across] = [Math.abs(a.row - b.row), Math.abs(a.column - b.column)];
      const isDiagonal = a.row - a.column === 0 && b.row - b.column === 0;
      const isOtherDiagonal = a.row + a.column === size - 1 && b.row + b.column === size - 1;
      const apart =
        down === 0 ||
        across === 0 ||
        regionOf(a.row, a.column) === regionOf(b.row, b.column) ||
        (rules.includes('diagonals') && (isDiagonal || isOtherDiagonal)) ||
        (rules.includes('anti-knight') && down * across === 2) ||
        (rules.includes('anti-king') && down === 1 && across === 1);
      if (!apart) continue;
      for (const digit of all)
        solver.require(Logic.or(`-${named(a.row, a.column, digit)}`, `-${named(b.row, b.column, digit)}`));
    }
  }
  for (const column of all) solver.require(named(0, column, column));
  for (let count = 0; count < 5000; count++) {
    const solution = solver.solve();
    if (solution === null) return count;
    solver.forbid(Logic.and(...solution.getTrueVars()));
  }
  return 5000;
}
