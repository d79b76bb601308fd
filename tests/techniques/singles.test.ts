import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { positionWith, printInstance } from './written-argument.ts';

const almostFullRow = { grid: gridOf('2x2'), placed: 'r1c1=1 r1c2=2 r1c3=3' } as const;

const rows: readonly Row[] = [
  {
    about: 'a cell with one digit left',
    name: 'naked single',
    is: 'fits',
    pencil: '4r3c3',
    from: 'r3c3',
    so: 'r3c3=4',
    not: ['hidden single', 'full house'],
  },
  {
    about: 'a cell, called hidden',
    name: 'hidden single',
    is: 'misnamed',
    pencil: '4r3c3',
    from: 'r3c3',
    so: 'r3c3=4',
    fits: ['naked single'],
  },
  {
    about: 'one place in a house',
    name: 'hidden single',
    is: 'fits',
    only: '4r3 in r3c3',
    from: '4r3',
    so: 'r3c3=4',
    not: ['naked single'],
  },
  {
    about: 'one place, called naked',
    name: 'naked single',
    is: 'misnamed',
    only: '4r3 in r3c3',
    from: '4r3',
    so: 'r3c3=4',
    fits: ['hidden single'],
  },
  {
    about: 'what the single sees',
    name: 'hidden single',
    is: 'fits',
    only: '4r3 in r3c3',
    from: '4r3',
    so: 'r5c3<>4 r3c3<>5',
  },
  {
    about: 'two singles at once',
    name: 'naked single',
    is: 'fits',
    pencil: '4r3c3 5r4c4',
    from: 'r3c3 r4c4',
    so: 'r3c3=4 r4c4=5',
  },
  {
    about: 'one of two sets is not a single of this kind',
    name: 'naked single',
    is: 'misnamed',
    pencil: '4r3c3',
    only: '5r4 in r4c4',
    from: 'r3c3 5r4',
    so: 'r3c3=4 r4c4=5',
  },
  {
    about: 'the last cell of a row, by its digits',
    name: 'full house',
    is: 'fits',
    ...almostFullRow,
    from: 'r1c4',
    so: 'r1c4=4',
    fits: ['full house', 'naked single'],
  },
  {
    about: 'the last cell of a row, by its place',
    name: 'full house',
    is: 'fits',
    ...almostFullRow,
    from: '4r1',
    so: 'r1c4=4',
    fits: ['full house', 'hidden single'],
  },
  {
    about: 'a house with two open cells',
    name: 'full house',
    is: 'misnamed',
    grid: gridOf('2x2'),
    placed: 'r1c1=1 r1c2=2',
    only: '4r1 in r1c4',
    from: '4r1',
    so: 'r1c4=4',
    fits: ['hidden single'],
  },
];

describe('singles', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('singles found', () => {
  const position = positionWith({
    grid: gridOf('2x2'),
    placed: 'r1c1=1 r1c2=2 r1c3=3',
    pencil: '4r3c1',
    only: '1c3 in r4c3',
  });
  const found = (name: ArgumentName) =>
    [...instancesOf(position, name)].map((instance) => printInstance(position, instance));
  test('full house', () => expect(found('full house')).toEqual(['r1c4 => r1c4=4']));
  test('naked single', () => expect(found('naked single')).toEqual(['r1c4 => r1c4=4', 'r3c1 => r3c1=4']));
  test('hidden single, boxes first', () => {
    expect(found('hidden single')).toEqual(['1b2 => r2c4=1', '2b3 => r4c1=2', '4r1 => r1c4=4', '1c3 => r4c3=1']);
  });
});
