/** Deadly patterns on boards with regions of other shapes and further rules. */
import { describe, expect, test } from 'vitest';
import { type Candidate, has, membersOf } from '../../src/grid/candidates.ts';
import { columnOf, rowOf } from '../../src/grid/geometry.ts';
import { type BoardRule, candidateAt, cellOf, type Digit, digitOf, type Grid, gridWith } from '../../src/grid/grid.ts';
import { parseDeadly } from '../../src/grid/notation/deadly.ts';
import { countSolutions, possibleFrom, solutionsOf } from '../../src/grid/solutions.ts';
import type { Deadly } from '../../src/grid/terms.ts';
import { guardiansOf } from '../../src/proof/guardians.ts';
import { begin } from '../../src/proof/kernel.ts';

const ordinary = (...rules: readonly BoardRule[]) => gridWith({ regions: '3x3', rules });
/** Six columns, two cells wide and three high in pairs but for the middle. */
const inPieces = gridWith({
  regions: [...'aabbccaabbccaabbccddeeffddeeffddeeff'].map((letter) => letter.charCodeAt(0) - 97),
  rules: [],
});

const refused = 'its digits cannot be exchanged within every house: it has a filling without a twin';
const clash = 'its digits cannot fill its cells without a clash';
const rows: readonly (readonly [about: string, grid: Grid, deadly: string, outcome: string])[] = [
  ['a rectangle in two boxes', ordinary(), '12r12c14', 'taken'],
  ['one corner on a diagonal', ordinary('diagonals'), '12r12c14', refused],
  ['no corner on a diagonal', ordinary('diagonals'), '12r13c25', 'taken'],
  ['corners across from one another on a diagonal', ordinary('diagonals'), '12r45c45', clash],
  ['a cell outside sees one corner by a move', ordinary('anti-knight'), '12r12c14', refused],
  ['a cell outside sees corners of both digits, by a king or by its box', ordinary('anti-king'), '12r12c14', 'taken'],
  ['a cell outside sees one corner, by a king', ordinary('anti-king'), '12r13c14', refused],
  ['regions: two columns of one region and two of another', inPieces, '12r12c13', 'taken'],
  ['regions: in four of them', inPieces, '12r14c13', refused],
  [
    'the whole grid, on a board with moves',
    ordinary('anti-king'),
    'grid',
    'this board has rules beyond its houses, for which it is not known to hold',
  ],
  [
    'the whole grid, on a board with diagonals',
    ordinary('diagonals'),
    'grid',
    'the grid is too far from two candidates in every open cell',
  ],
];

test.each(rows)('%s', (_, grid, deadly, outcome) => {
  expect(judge(grid, deadly)).toBe(outcome);
});

/**
 * What is taken as deadly must be so: in a solution that holds it, its digits can be exchanged for another solution. Tried
 * with all rectangles of all solutions of small boards (first row in order), the exchange checked by the solution counter.
 */
describe('every rectangle that is taken gives a second solution', () => {
  const boards: readonly (readonly [string, Grid, most: number])[] = [
    ['4x4', gridWith({ regions: '2x2', rules: [] }), 12],
    ['6x6', gridWith({ regions: '2x3', rules: [] }), 60],
    ['6x6 with diagonals', gridWith({ regions: '2x3', rules: ['diagonals'] }), 12],
    ['6x6, no knight', gridWith({ regions: '2x3', rules: ['anti-knight'] }), 16],
    ['6x6, no king', gridWith({ regions: '2x3', rules: ['anti-king'] }), 103],
    ['6x6 in pieces', inPieces, 60],
  ];
  test.each(boards)('%s', (_, grid, most) => {
    for (const solution of solutionsOf(grid, possibleFrom(grid, grid.digits), most)) {
      for (const corners of rectanglesOf(grid, membersOf(solution))) {
        const digits = [...new Set(corners.map((corner) => digitOf(grid, corner)))].sort((a, b) => a - b);
        const cells = corners.map((corner) => cellOf(grid, corner));
        const set = guardiansOf(begin(grid, [], { oneSolution: true }), {
          kind: 'pattern',
          parts: [{ digits, cells }],
        });
        if ('refused' in set) continue;
        expect(countSolutions(grid, possibleFrom(grid, exchanged(grid, membersOf(solution), corners)), 1)).toBe(1);
      }
    }
  });
  test('some are taken', () => {
    const [, grid] = boards[1]!;
    const [solution] = solutionsOf(grid, possibleFrom(grid, grid.digits), 1);
    expect(rectanglesOf(grid, membersOf(solution!)).length).toBeGreaterThan(0);
    expect(judge(grid, '12r12c14')).toBe('taken');
  });
});

/** Two digits in two rows and two columns, each in corners across from one another. */
function rectanglesOf(grid: Grid, solution: readonly Candidate[]): Candidate[][] {
  const at = (row: number, column: number) => solution[(row - 1) * grid.size + column - 1]!;
  return solution.flatMap((first) =>
    solution.flatMap((last) => {
      const [top, bottom] = [rowOf(grid, cellOf(grid, first)), rowOf(grid, cellOf(grid, last))];
      const [left, right] = [columnOf(grid, cellOf(grid, first)), columnOf(grid, cellOf(grid, last))];
      if (top >= bottom || left >= right || digitOf(grid, first) !== digitOf(grid, last)) return [];
      const [beside, below] = [at(top, right), at(bottom, left)];
      return digitOf(grid, beside) === digitOf(grid, below) ? [[first, beside, below, last]] : [];
    }),
  );
}

/** The solution with the two digits of the corners exchanged. */
function exchanged(grid: Grid, solution: readonly Candidate[], corners: readonly Candidate[]): Digit[] {
  const [a, b] = [digitOf(grid, corners[0]!), digitOf(grid, corners[1]!)];
  return solution.map((candidate) => {
    if (!corners.includes(candidate)) return digitOf(grid, candidate);
    return digitOf(grid, candidate) === a ? b : a;
  });
}

function judge(grid: Grid, text: string): string {
  const deadly = parseDeadly(grid, text);
  if (!deadly.ok) return deadly.faults[0]!.message;
  const set = guardiansOf(begin(grid, [], { oneSolution: true }), deadly.value satisfies Deadly);
  if ('refused' in set) return set.refused;
  return has(set.members, candidateAt(grid, grid.cells[0]!, grid.digits[0]!))
    ? 'its own digits among the guardians'
    : 'taken';
}
