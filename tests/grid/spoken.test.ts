import { describe, expect, it } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { parseCandidates } from '../../src/grid/notation/candidates.ts';
import { parseCells } from '../../src/grid/notation/cells.ts';
import { spokenCandidates, spokenCells } from '../../src/grid/notation/spoken.ts';

const grid = gridOf('3x3');

describe('notation read aloud', () => {
  const cells: readonly (readonly [string, string])[] = [
    ['r3c5', 'row 3 column 5'],
    ['r12c5', 'rows 1 and 2 column 5'],
    ['r12c57', 'rows 1 and 2 of columns 5 and 7'],
    ['r123456789c5', 'column 5'],
    ['r123c123', 'box 1'],
    ['r123456789c58', 'column 5 and column 8'],
    ['r9c3|r8c1', 'row 8 column 1 and row 9 column 3'],
    ['r9c34|r8c1', 'row 8 column 1, and row 9 columns 3 and 4'],
  ];
  it.each(cells)('%s', (notation, words) => {
    const read = parseCells(grid, notation);
    expect(read.ok && spokenCells(grid, read.value)).toBe(words);
  });
  const candidates: readonly (readonly [string, string])[] = [
    ['7r3c5', 'the 7 in row 3 column 5'],
    ['27r3c5', 'the 2 and 7 in row 3 column 5'],
    ['7r12c5', 'the 7s in rows 1 and 2 column 5'],
    ['7r3c5 8r4c6', 'the 7 in row 3 column 5 and the 8 in row 4 column 6'],
  ];
  it.each(candidates)('%s', (notation, words) => {
    const read = parseCandidates(grid, notation);
    expect(read.ok && spokenCandidates(grid, read.value)).toBe(words);
  });
});
