import { describe, test } from 'vitest';
import { check, type Row } from './judge.ts';

const rows: readonly Row[] = [
  {
    about: 'a stem of three digits',
    name: 'death blossom',
    is: 'fits',
    pencil: '123r1c1 19r1c5 29r1c6 39r2c3',
    from: 'r1c156 r2c3',
    so: 'r1c23<>9 r2c4<>9',
  },
  {
    about: 'a petal of two cells',
    name: 'death blossom',
    is: 'fits',
    pencil: '123r1c1 19r1c5 27r1c6 79r1c4 39r2c3',
    from: 'r1c1456 r2c3',
    so: 'r1c2<>9',
  },
  {
    about: 'two petals',
    name: 'death blossom',
    is: 'warns',
    pencil: '12r1c1 134r1c5 34r1c6 23r2c2',
    from: 'r1c156 r2c2',
    so: 'r1c23<>3',
    fits: ['ALS-XY-wing'],
  },
  {
    about: 'a naked quad',
    name: 'death blossom',
    is: 'misnamed',
    pencil: '123r1c1 14r1c2 24r1c3 34r1c4',
    from: 'r1c1234',
    so: 'r1c9<>4',
    fits: ['naked quad'],
  },
  {
    about: 'an XY-wing',
    name: 'death blossom',
    is: 'misnamed',
    pencil: '12r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c2<>3',
  },
];

describe('death blossom', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});
