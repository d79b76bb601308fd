import { describe, test } from 'vitest';
import { check, type Row } from './judge.ts';

const rows: readonly Row[] = [
  {
    about: 'two sets linked by one digit',
    name: 'ALS-XZ',
    is: 'fits',
    pencil: '123r1c1 23r1c2 14r5c1 34r6c2',
    from: 'r1c12 r5c1 r6c2',
    so: 'r23c2<>3',
    fits: ['ALS-XZ', 'ALS-XY-wing', 'ALS chain', 'grouped AIC'],
    not: ['XY-chain', 'WXYZ-wing', 'naked quad'],
  },
  {
    about: 'in short notation',
    name: 'ALS-XZ',
    is: 'fits',
    pencil: '123r1c1 23r1c2 14r5c1 34r6c2',
    chain: '(3=1)r1c12-(1=3)r5c1|r6c2',
    so: 'r23c2<>3',
  },
  {
    about: 'in full notation',
    name: 'ALS-XZ',
    is: 'fits',
    pencil: '123r1c1 23r1c2 14r5c1 34r6c2',
    chain: '(3=12)r1c12-(1=34)r5c1|r6c2',
    so: 'r23c2<>3',
  },
  {
    about: 'linked by two digits',
    name: 'ALS-XZ',
    is: 'fits',
    pencil: '13r1c1 23r1c2 14r5c1 24r5c2',
    from: 'r15c12',
    so: 'r1c9<>3 r5c9<>4 r9c1<>1 r9c2<>2',
    fits: ['ALS-XZ', 'continuous loop'],
  },
  {
    about: 'a naked quad is not one',
    name: 'ALS-XZ',
    is: 'misnamed',
    pencil: '12r1c1 23r1c2 34r1c3 14r1c4',
    from: 'r1c1234',
    so: 'r1c9<>1',
    fits: ['naked quad'],
  },
  {
    about: 'a house among the cells',
    name: 'ALS-XZ',
    is: 'misnamed',
    pencil: '12r1c1 12r5c5',
    only: '2r9 in r9c15',
    from: 'r1c1 r5c5 2r9',
    so: 'r1c5<>1',
  },
  {
    about: 'a pivot and two sets',
    name: 'ALS-XY-wing',
    is: 'fits',
    pencil: '12r1c1 134r1c5 34r1c6 23r2c2',
    from: 'r1c156 r2c2',
    so: 'r1c23<>3',
    not: ['XY-wing', 'XY-chain'],
  },
  {
    about: 'an ALS-XY-wing called an XY-wing',
    name: 'XY-wing',
    is: 'misnamed',
    pencil: '12r1c1 134r1c5 34r1c6 23r2c2',
    from: 'r1c156 r2c2',
    so: 'r1c23<>3',
  },
  {
    about: 'four sets',
    name: 'ALS chain',
    is: 'fits',
    pencil: '156r1c1 56r1c2 12r5c1 23r5c5 35r8c5',
    from: 'r1c12 r5c15 r8c5',
    so: 'r1c5<>5',
    not: ['ALS-XZ', 'XY-chain'],
  },
];

describe('chains of almost locked sets', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});
