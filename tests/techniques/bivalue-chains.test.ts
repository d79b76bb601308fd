import { describe, test } from 'vitest';
import { check, type Row } from './judge.ts';

const rows: readonly Row[] = [
  {
    about: 'four cells, the same digit at both ends (common practice)',
    name: 'XY-chain',
    is: 'fits',
    pencil: '12r1c1 23r1c5 34r5c5 14r5c2',
    from: 'r1c15 r5c25',
    so: 'r1c2<>1 r5c1<>1',
    fits: ['XY-chain', 'AIC'],
    not: ['XY-wing', 'remote pair', 'grouped AIC'],
  },
  {
    about: 'sets named in any order',
    name: 'XY-chain',
    is: 'fits',
    pencil: '12r1c1 23r1c5 34r5c5 14r5c2',
    from: 'r5c5 r1c1 r5c2 r1c5',
    so: 'r1c2<>1',
  },
  {
    about: 'an XY-wing is an XY-chain',
    name: 'XY-chain',
    is: 'fits',
    pencil: '12r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c2<>3',
  },
  {
    about: 'a house among the cells',
    name: 'XY-chain',
    is: 'misnamed',
    pencil: '12r1c1 12r5c5',
    only: '2r9 in r9c15',
    from: 'r1c1 r5c5 2r9',
    so: 'r1c5<>1',
    fits: ['W-wing', 'AIC'],
  },
  {
    about: 'a cell of three digits',
    name: 'XY-chain',
    is: 'misnamed',
    pencil: '123r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c2<>3',
  },
  {
    about: 'a naked pair is too short',
    name: 'XY-chain',
    is: 'misnamed',
    pencil: '12r1c15',
    from: 'r1c15',
    so: 'r1c9<>1',
    fits: ['naked pair'],
  },
  {
    about: 'four cells of the same two digits',
    name: 'remote pair',
    is: 'fits',
    pencil: '12r1c1 12r4c1 12r5c2 12r5c8',
    from: 'r1c1 r4c1 r5c28',
    so: 'r1c8<>12',
    fits: ['remote pair', 'XY-chain', 'AIC'],
    not: ['naked pair', 'W-wing'],
  },
  {
    about: 'other digits along the way',
    name: 'remote pair',
    is: 'misnamed',
    pencil: '12r1c1 23r1c5 34r5c5 14r5c2',
    from: 'r1c15 r5c25',
    so: 'r1c2<>1',
  },
  {
    about: 'two cells are a naked pair',
    name: 'remote pair',
    is: 'misnamed',
    pencil: '12r1c15',
    from: 'r1c15',
    so: 'r1c9<>12',
    fits: ['naked pair'],
  },
];

describe('chains of cells of two digits', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});
