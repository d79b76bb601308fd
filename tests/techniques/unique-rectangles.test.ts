import { describe, expect, test } from 'vitest';
import { checkFound, checkNames, type DeadlyRow, deadlyShape } from './deadly-argument.ts';

const any = 'unique rectangle';
const type = (number: 1 | 2 | 3 | 4 | 5 | 6) => `${any} type ${number}` as const;

/** The rectangle r12c14 of 1 and 2, with these digits in its corners. */
const corners = (a: string, b: string, c: string, d: string) => ({
  deadly: '12r12c14',
  pencil: `${a}r1c1 ${b}r1c4 ${c}r2c1 ${d}r2c4`,
});

const rows: readonly DeadlyRow[] = [
  {
    about: 'type 1: both digits are removed from the fourth corner',
    ...corners('12', '12', '12', '1256'),
    so: 'r2c4<>12',
    fits: [type(1), any],
  },
  {
    about: 'type 1 with one other digit: it is placed',
    ...corners('12', '12', '12', '125'),
    so: 'r2c4=5',
    fits: [type(1), any],
  },
  {
    about: 'type 1 stays type 1 if superfluous corners are named',
    ...corners('12', '12', '12', '1256'),
    from: 'r1c1 r1c4 r2c1',
    so: 'r2c4<>12',
    fits: [type(1), any],
  },
  {
    about: 'type 2: one other digit in two corners of one column',
    ...corners('12', '125', '12', '125'),
    so: 'r3c4<>5',
    fits: [type(2), any],
  },
  { about: 'type 2 across two boxes', ...corners('12', '12', '125', '125'), so: 'r2c9<>5', fits: [type(2), any] },
  {
    about: 'type 3: the others of two corners and a cell of two digits',
    ...corners('12', '12', '125', '126'),
    pencil: `${corners('12', '12', '125', '126').pencil} 56r2c8`,
    from: 'r2c8',
    so: 'r2c9<>56',
    fits: [type(3), any],
  },
  {
    about: 'type 3 with a triple',
    ...corners('12', '12', '125', '126'),
    pencil: `${corners('12', '12', '125', '126').pencil} 567r2c8 57r2c9`,
    from: 'r2c8 r2c9',
    so: 'r2c7<>567',
    fits: [type(3), any],
  },
  {
    about: 'type 3 with a hidden subset: the corners hold at most one of 1 and 2, so r2c8 holds the other',
    ...corners('12', '12', '1257', '1268'),
    only: '12r2 in r2c148',
    from: '12r2',
    so: 'r2c8<>5',
    fits: [type(3), any],
  },
  {
    about: 'type 4: no other place for 1, so 2 is removed from both corners',
    ...corners('12', '12', '1256', '1278'),
    only: '1r2 in r2c14',
    from: '1r2',
    so: 'r2c14<>2',
    fits: [type(4), any],
  },
  {
    about: 'type 4 by a box',
    ...corners('12', '1256', '12', '1278'),
    only: '1b2 in r12c4',
    from: '1b2',
    so: 'r12c4<>2',
    fits: [type(4), any],
  },
  {
    about: 'type 5: diagonally opposite',
    ...corners('125', '12', '12', '125'),
    so: 'r1c56<>5 r2c23<>5',
    fits: [type(5), any],
  },
  { about: 'type 5: three corners', ...corners('12', '125', '125', '125'), so: 'r2c56<>5', fits: [type(5), any] },
  {
    about: 'type 6: an X-wing of 1 in the rows',
    ...corners('1256', '12', '12', '1278'),
    only: '1r1 in r1c14, 1r2 in r2c14',
    from: '1r1 1r2',
    so: 'r1c1<>1 r2c4<>1',
    fits: [type(6), any],
  },
  {
    about: 'type 6 of columns, concluded as placements',
    ...corners('1256', '12', '12', '1278'),
    only: '1c1 in r12c1, 1c4 in r12c4',
    from: '1c1 1c4',
    so: 'r1c4=1 r2c1=1',
    fits: [type(6), any],
  },
  {
    about: 'type 6, one conclusion by one of the links, while the other exists too',
    ...corners('1256', '12', '12', '1278'),
    only: '1r1 in r1c14, 1r2 in r2c14',
    from: '1r2',
    so: 'r1c1<>1',
    fits: [type(6), any],
  },
  {
    about: 'a single link is half of a type 6',
    ...corners('1256', '12', '12', '1278'),
    only: '1r2 in r2c14',
    from: '1r2',
    so: 'r1c1<>1',
    fits: [any],
    warns: [type(6)],
    notFound: [any],
  },
  {
    about: 'hidden: one clean corner, and links along both sides of the opposite corner',
    ...corners('12', '1256', '127', '12389'),
    only: '1r2 in r2c14, 1c4 in r12c4',
    from: '1r2 1c4',
    so: 'r2c4<>2',
    fits: ['hidden rectangle', any],
  },
  {
    about: 'hidden over a clean side: a link from a clean corner to the roof',
    ...corners('12', '12', '1256', '1278'),
    only: '1c1 in r12c1',
    from: '1c1 r1c4',
    so: 'r2c4<>2',
    fits: ['hidden rectangle', any],
  },
  {
    about: 'a rectangle without a type: other sets continue from the guardians',
    ...corners('12', '12', '12', '1256'),
    pencil: `${corners('12', '12', '12', '1256').pencil} 57r2c5 67r3c6`,
    from: 'r2c5 r3c6',
    so: 'r3c5<>7',
    fits: [any],
    notFound: [any],
  },
  {
    about: 'a rectangle that has lost one of its digits',
    ...corners('12', '12', '1', '1256'),
    so: 'r2c4<>2',
    fits: [type(1), any],
    notFound: [type(1), any],
  },
  {
    about: 'a corner that is already placed makes it an avoidable one',
    ...corners('12', '12', '1234', '12567'),
    placed: 'r1c1=1 r1c4=2 r2c1=2',
    so: 'r2c4<>1',
    fits: ['avoidable rectangle'],
    warns: [any],
  },
];

/** Four open cells are the smallest loop, though nobody calls it one. */
const asLoop = (row: DeadlyRow): DeadlyRow => ({
  ...row,
  warns: [...(row.warns ?? []), ...(row.placed === undefined ? (['unique loop'] as const) : [])],
});

describe('unique rectangles fit the names of their types and no others', () => {
  test.each(rows.map(asLoop))('$about', checkNames);
});

describe('unique rectangles are found by the names that fit them', () => {
  test.each(rows)('$about', checkFound);
});

test('a rectangle in four boxes is refused', () => {
  const inFourBoxes: DeadlyRow = {
    about: '',
    deadly: '12r14c14',
    pencil: '12r1c14 12r4c1 125r4c4',
    so: 'r4c4=5',
    fits: [],
  };
  expect(() => deadlyShape(inFourBoxes)).toThrow('cannot be exchanged');
});
