import { describe, test } from 'vitest';
import { check, type Row } from './judge.ts';

const rows: readonly Row[] = [
  {
    about: 'pairs excluded by cells of two digits',
    name: 'aligned pair exclusion',
    is: 'fits',
    pencil: '123r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c2<>3',
  },
  {
    about: 'a pair excluded by an almost locked set',
    name: 'aligned pair exclusion',
    is: 'fits',
    pencil: '12r1c1 13r1c5 245r2c2 45r3c3 23r1c6 34r2c1',
    from: 'r1c1 r1c5 r2c2 r3c3 r2c1',
    so: 'r1c2<>3',
  },
  {
    about: 'a house among the cells',
    name: 'aligned pair exclusion',
    is: 'misnamed',
    pencil: '12r1c1 12r5c5',
    only: '2r9 in r9c15',
    from: 'r1c1 r5c5 2r9',
    so: 'r1c5<>1',
  },
  {
    about: 'a naked triple',
    name: 'aligned pair exclusion',
    is: 'misnamed',
    pencil: '123r1c123',
    from: 'r1c123',
    so: 'r1c9<>1',
    fits: ['naked triple'],
  },
];

describe('aligned pair exclusion', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});
