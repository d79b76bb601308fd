import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { checkFound, checkNames, type DeadlyRow } from './deadly-argument.ts';
import { positionWith } from './written-argument.ts';

/** Five of six cells of 1 and 2 connected in a ring: r1c1-r1c4-r2c4-r2c2-r5c2-r5c1. */
const ring = '12r1c14 12r2c4 12r5c12';
/** Six cells of 1, 2 and 3, two rows of a band crossed by a column of each stack. */
const block = '123r1c1 123r1c4 123r1c7 123r2c1 123r2c4';

const rows: readonly DeadlyRow[] = [
  {
    about: 'avoidable, three corners placed',
    deadly: '12r12c14',
    placed: 'r1c1=1 r1c4=2 r2c1=2',
    so: 'r2c4<>1',
    fits: ['avoidable rectangle'],
    warns: ['unique rectangle'],
  },
  {
    about: 'avoidable, two corners placed, the same other digit in both open ones',
    deadly: '12r12c14',
    placed: 'r1c1=1 r1c4=2',
    pencil: '25r2c1 15r2c4',
    so: 'r2c9<>5',
    fits: ['avoidable rectangle'],
    warns: ['unique rectangle'],
  },
  {
    about: 'avoidable, with a cell of the same two others',
    deadly: '12r12c14',
    placed: 'r1c1=1 r1c4=2',
    pencil: '25r2c1 16r2c4 56r2c8',
    from: 'r2c8',
    so: 'r2c9<>56',
    fits: ['avoidable rectangle'],
    warns: ['unique rectangle'],
  },
  {
    about: 'a loop of six cells, one of them with others',
    deadly: '12r1c14 12r2c24 12r5c12',
    pencil: `${ring} 1256r2c2`,
    so: 'r2c2<>12',
    fits: ['unique loop'],
  },
  {
    about: 'two rows crossed by three columns, three digits',
    deadly: '123r12c147',
    pencil: `${block} 12356r2c7`,
    so: 'r2c7<>123',
    fits: ['extended rectangle'],
  },
  {
    about: 'two rows of two bands, crossed within one box each',
    deadly: '123r14c123',
    pencil: '123r1c123 123r4c12 1235r4c3',
    so: 'r4c3=5',
    fits: ['extended rectangle'],
  },
  {
    about: 'each column with two of the three digits',
    deadly: '12r12c1 23r12c4 13r12c7',
    pencil: '12r12c1 23r12c4 13r1c7 135r2c7',
    so: 'r2c7=5',
    fits: ['extended rectangle'],
  },
];

describe('patterns fit their names and no others', () => {
  test.each(rows)('$about', checkNames);
});

describe('patterns are found by the names that fit them', () => {
  test.each(rows)('$about', checkFound);
});

test('two rows of two bands with columns of three stacks cannot be swapped', () => {
  const position = positionWith({ grid: gridOf('3x3'), pencil: '123r1c147 123r4c14 1235r4c7' });
  expect([...instancesOf(position, 'extended rectangle')]).toEqual([]);
});
