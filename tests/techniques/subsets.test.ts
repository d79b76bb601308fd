import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { printConclusion } from '../../src/grid/notation/print.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { conclusionsIn, positionWith, printInstance } from './written-argument.ts';

const lamps = { pencil: '48r4c7 45r5c7 58r5c8 458r5c9', from: 'r4c7 r5c789' } as const;

const rows: readonly Row[] = [
  {
    about: 'four cells with four digits between them, each holding two or more (common practice)',
    name: 'naked quad',
    is: 'fits',
    pencil: '12r1c1 23r1c2 34r1c3 41r1c4',
    from: 'r1c1234',
    so: 'r1c56789<>1234',
    not: ['hidden quad', 'naked triple', 'naked pair'],
  },
  {
    about: 'three digits in four cells is impossible, and three in three of them is a triple',
    name: 'naked triple',
    is: 'fits',
    ...lamps,
    from: 'r5c789',
    so: 'r5c1<>458',
  },
  { about: 'a triple called a quad', name: 'naked quad', is: 'warns', ...lamps, from: 'r5c789', so: 'r5c1<>458' },
  {
    about: 'a quad called a pair',
    name: 'naked pair',
    is: 'warns',
    pencil: '12r1c1 23r1c2 34r1c3 41r1c4',
    from: 'r1c1234',
    so: 'r1c5<>1',
  },
  {
    about: 'a naked pair called hidden',
    name: 'hidden pair',
    is: 'misnamed',
    pencil: '12r1c1 12r1c9',
    from: 'r1c19',
    so: 'r1c5<>1',
    fits: ['naked pair'],
    not: ['locked pair'],
  },
  {
    about: 'two digits with the same two places in a house remove all others from those cells (common practice)',
    name: 'hidden pair',
    is: 'fits',
    only: '12r1 in r1c19',
    from: '12r1',
    so: 'r1c19<>3456789',
    not: ['naked pair', 'X-wing'],
  },
  {
    about: 'a hidden pair called naked',
    name: 'naked pair',
    is: 'misnamed',
    only: '12r1 in r1c19',
    from: '12r1',
    so: 'r1c1<>3',
    fits: ['hidden pair'],
  },
  {
    about: 'a hidden pair called an X-wing',
    name: 'X-wing',
    is: 'misnamed',
    only: '12r1 in r1c19',
    from: '12r1',
    so: 'r1c1<>3',
  },
  {
    about: 'a hidden triple called a pair',
    name: 'hidden pair',
    is: 'warns',
    only: '1r1 in r1c15, 2r1 in r1c59, 3r1 in r1c19',
    from: '123r1',
    so: 'r1c159<>456789',
  },
  {
    about: 'a hidden pair in a box and a row removes candidates from the row as well',
    name: 'hidden pair',
    is: 'fits',
    only: '12b1 in r1c12',
    from: '12b1',
    so: 'r1c1<>3 r1c9<>1',
  },
  {
    about: 'each of its digits on its own, in the row',
    name: 'hidden pair',
    is: 'fits',
    only: '12b1 in r1c12',
    from: '12b1',
    so: 'r1c9<>1',
    fits: ['pointing pair', 'hidden pair'],
  },
  {
    about: 'digits of two houses',
    name: 'hidden pair',
    is: 'misnamed',
    only: '1r1 in r1c12, 2b1 in r1c12',
    from: '1r1 2b1',
    so: 'r1c1<>3',
  },
  {
    about: 'a naked pair in a row and a box',
    name: 'locked pair',
    is: 'fits',
    pencil: '12r1c12',
    from: 'r1c12',
    so: 'r1c9<>1 r2c3<>2',
    fits: ['locked pair', 'naked pair'],
  },
  {
    about: 'a naked triple in a row and a box',
    name: 'locked triple',
    is: 'fits',
    pencil: '12r1c1 23r1c2 13r1c3',
    from: 'r1c123',
    so: 'r1c9<>1 r2c3<>2',
    fits: ['locked triple', 'naked triple'],
  },
  {
    about: 'a naked pair of only a row',
    name: 'locked pair',
    is: 'misnamed',
    pencil: '12r1c1 12r1c9',
    from: 'r1c19',
    so: 'r1c5<>1',
  },
  {
    about: 'its digits by their places',
    name: 'locked pair',
    is: 'warns',
    only: '12b1 in r1c12',
    from: '12b1',
    so: 'r1c1<>3 r1c9<>1',
  },
  {
    about: 'a cell with one digit cannot be in a triple',
    name: 'naked triple',
    is: 'misnamed',
    pencil: '12r1c1 23r1c2 3r1c3',
    from: 'r1c123',
    so: 'r1c9<>1',
  },
  {
    about: 'three cells that do not all see one another',
    name: 'naked triple',
    is: 'misnamed',
    pencil: '123r1c1 13r1c9 23r3c2',
    from: 'r1c19 r3c2',
    so: 'r1c2<>3',
  },
  {
    about: 'a needless cell in addition to a pair',
    name: 'naked pair',
    is: 'fits',
    pencil: '12r1c1 12r1c9 345r1c4',
    from: 'r1c149',
    so: 'r1c5<>1',
  },
];

describe('subsets', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

/** One by one, as they are printed: cell by cell, then by digit. */
function removals(cells: string, digits: string): string {
  return conclusionsIn(gridOf('3x3'), `${cells}<>${digits}`)
    .map((each) => printConclusion(gridOf('3x3'), each))
    .join(' ');
}

describe('subsets found', () => {
  const naked = positionWith({ pencil: '12r1c1 12r1c2 34r5c1 345r5c5 45r5c9' });
  const hidden = positionWith({ only: '12r1 in r1c19, 3c5 in r15c5, 4c5 in r59c5, 5c5 in r19c5' });
  const found = (position: typeof naked, name: ArgumentName) =>
    [...instancesOf(position, name)].map((instance) => printInstance(position, instance));
  test('a pair that removes from a row and a box is one instance', () => {
    expect(found(naked, 'naked pair')).toEqual([
      `r1c1 r1c2 => ${removals('r1c3456789', '12')} ${removals('r23c123', '12')}`,
    ]);
    expect(found(naked, 'locked pair')).toEqual(found(naked, 'naked pair'));
  });
  test('a triple, and not a pair within it', () => {
    const [triple, ...others] = found(naked, 'naked triple');
    expect(triple).toMatch(/^r5c1 r5c5 r5c9 => r5c2<>3 r5c2<>4 r5c2<>5 /);
    expect(others).toEqual([]);
  });
  test('a hidden pair and a hidden triple', () => {
    expect(found(hidden, 'hidden pair')).toEqual([`1r1 2r1 => ${removals('r1c19', '3456789')}`]);
    const others = `${removals('r1c5', '6789')} ${removals('r5c5', '126789')} ${removals('r9c5', '126789')}`;
    expect(found(hidden, 'hidden triple')).toEqual([`3c5 4c5 5c5 => ${others}`]);
  });
});
