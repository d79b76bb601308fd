import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { positionWith, printInstance } from './written-argument.ts';

const rows: readonly Row[] = [
  {
    about: 'three places of a digit in one box, all in one row, remove it from the rest of the row (common practice)',
    name: 'pointing triple',
    is: 'fits',
    only: '6b5 in r4c456',
    from: '6b5',
    so: 'r4c123789<>6',
    fits: ['pointing triple', 'locked candidates'],
    not: ['pointing pair', 'claiming', 'box-line reduction'],
  },
  {
    about: 'two places',
    name: 'pointing pair',
    is: 'fits',
    only: '6b5 in r4c46',
    from: '6b5',
    so: 'r4c1<>6',
    fits: ['pointing pair', 'locked candidates'],
  },
  {
    about: 'a pair called a triple',
    name: 'pointing triple',
    is: 'warns',
    only: '6b5 in r4c46',
    from: '6b5',
    so: 'r4c1<>6',
  },
  {
    about: 'a triple called a pair',
    name: 'pointing pair',
    is: 'warns',
    only: '6b5 in r4c456',
    from: '6b5',
    so: 'r4c1<>6',
  },
  {
    about: 'from a box, called claiming',
    name: 'claiming',
    is: 'misnamed',
    only: '6b5 in r4c46',
    from: '6b5',
    so: 'r4c1<>6',
    fits: ['pointing pair'],
  },
  {
    about: 'from a box, in the wide sense of some',
    name: 'box-line reduction',
    is: 'warns',
    only: '6b5 in r4c46',
    from: '6b5',
    so: 'r4c1<>6',
  },
  {
    about: 'from a line',
    name: 'claiming',
    is: 'fits',
    only: '6r4 in r4c46',
    from: '6r4',
    so: 'r5c456<>6 r6c4<>6',
    fits: ['claiming', 'box-line reduction', 'locked candidates'],
  },
  {
    about: 'from a line, called pointing',
    name: 'pointing pair',
    is: 'misnamed',
    only: '6r4 in r4c46',
    from: '6r4',
    so: 'r5c5<>6',
  },
  { about: 'from a column', name: 'box-line reduction', is: 'fits', only: '6c4 in r46c4', from: '6c4', so: 'r5c5<>6' },
  {
    about: 'four places in a wide box have no name except the general one',
    name: 'pointing triple',
    is: 'warns',
    grid: gridOf('2x4'),
    only: '6b1 in r1c1234',
    from: '6b1',
    so: 'r1c5<>6',
    fits: ['locked candidates'],
    not: ['pointing pair'],
  },
  {
    about: 'one place is a single',
    name: 'pointing pair',
    is: 'misnamed',
    only: '6b5 in r4c4',
    from: '6b5',
    so: 'r4c1<>6',
    fits: ['hidden single'],
  },
  {
    about: 'two boxes, each for its own',
    name: 'pointing pair',
    is: 'fits',
    only: '6b5 in r4c46, 7b1 in r12c1',
    from: '6b5 7b1',
    so: 'r4c1<>6 r9c1<>7',
  },
  {
    about: 'a needless set in addition',
    name: 'pointing pair',
    is: 'fits',
    only: '6b5 in r4c46',
    from: '6b5 7b1 r9c9',
    so: 'r4c1<>6',
  },
];

describe('locked candidates', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('locked candidates found', () => {
  const position = positionWith({ only: '6b5 in r4c46, 7b1 in r1c123, 8c9 in r79c9' });
  const found = (name: ArgumentName) =>
    [...instancesOf(position, name)].map((instance) => printInstance(position, instance));
  const six = '6b5 => r4c1<>6 r4c2<>6 r4c3<>6 r4c7<>6 r4c8<>6 r4c9<>6';
  const seven = '7b1 => r1c4<>7 r1c5<>7 r1c6<>7 r1c7<>7 r1c8<>7 r1c9<>7';
  const eight = '8c9 => r7c7<>8 r7c8<>8 r8c7<>8 r8c8<>8 r9c7<>8 r9c8<>8';
  test.each([
    ['pointing pair', [six]],
    ['pointing triple', [seven]],
    ['claiming', [eight]],
    ['box-line reduction', [eight]],
    ['locked candidates', [seven, six, eight]],
  ] as const)('%s', (name, instances) => expect(found(name)).toEqual(instances));
});
