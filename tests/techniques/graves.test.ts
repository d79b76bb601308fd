import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { checkFound, checkNames, type DeadlyRow, deadlyShape } from './deadly-argument.ts';
import { positionWith } from './written-argument.ts';

/** A 4x4 board of two candidates a cell, two solutions laid over one another; the first column is left to the row. */
const grid = gridOf('2x2');
const rest = '34r1c34 34r2c2 12r2c34 12r3c1 34r3c34 12r4c34';

const rows: readonly DeadlyRow[] = [
  {
    about: 'one extra: it is placed',
    grid,
    deadly: 'grid',
    pencil: `${rest} 123r1c1 12r1c2 34r2c1 12r3c2 34r4c12`,
    so: 'r1c1=3',
    fits: ['BUG+1', 'BUG+n'],
  },
  {
    about: 'one extra, named outright; the others of its cell go',
    grid,
    deadly: 'grid without 3r1c1',
    pencil: `${rest} 123r1c1 12r1c2 34r2c1 12r3c2 34r4c12`,
    so: 'r1c1<>12',
    fits: ['BUG+1', 'BUG+n'],
  },
  {
    about: 'two extras of one digit: not a BUG+1',
    grid,
    deadly: 'grid',
    pencil: `${rest} 123r1c12 34r2c1 12r3c2 34r4c12`,
    so: 'r1c34<>3',
    fits: ['BUG+n'],
  },
  {
    about: 'two extras, each with a chain to the same end',
    grid,
    deadly: 'grid',
    pencil: `${rest} 123r1c1 12r1c2 34r2c1 123r3c2 34r4c12`,
    from: 'r2c1 r4c2',
    so: 'r4c1<>4',
    fits: ['BUG+n'],
  },
];

describe('graves fit their names and no others', () => {
  test.each(rows)('$about', checkNames);
});

describe('graves are found by the names that fit them', () => {
  test.each(rows)('$about', checkFound);
});

test('a number of extras that is written is counted', () => {
  const two = deadlyShape(rows[2]!);
  expect(judgeName(two, 'BUG+n', 2)).toMatchObject({ judged: 'fits', warning: undefined });
  expect(judgeName(two, 'BUG+n')).toMatchObject({ judged: 'fits', warning: undefined });
  const warning = 'the grid has 2 extra candidates: BUG+2';
  expect(judgeName(two, 'BUG+n', 7)).toMatchObject({ judged: 'fits', warning });
});

test('nothing is found if a cell has one candidate, or many have three', () => {
  const single = positionWith({ grid, pencil: `${rest} 123r1c1 12r1c2 3r2c1 12r3c2 34r4c12` });
  expect([...instancesOf(single, 'BUG+n')]).toEqual([]);
  expect([...instancesOf(positionWith({}), 'BUG+n')]).toEqual([]);
});
