import { describe, expect, test } from 'vitest';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { conclusionsIn, positionWith, printSource } from './written-argument.ts';

const rows: readonly Row[] = [
  {
    about: 'three cells of two digits',
    name: 'XY-wing',
    is: 'fits',
    pencil: '12r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c23<>3 r2c456<>3',
    fits: ['XY-wing', 'XY-chain', 'ALS-XZ', 'AIC'],
    not: ['XYZ-wing', 'remote pair', 'grouped AIC', 'continuous loop', 'naked triple'],
  },
  {
    about: 'an XY-wing written as a chain',
    name: 'XY-wing',
    is: 'fits',
    pencil: '12r1c1 13r1c5 23r2c2',
    chain: '(3=1)r1c5-(1=2)r1c1-(2=3)r2c2',
    so: 'r1c2<>3',
  },
  {
    about: 'one of the pincers is true',
    name: 'XY-wing',
    is: 'fits',
    pencil: '12r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'either 3r1c5 3r2c2',
  },
  {
    about: 'a pivot of three digits does not make an XY-wing',
    name: 'XY-wing',
    is: 'misnamed',
    pencil: '123r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c23<>3',
    fits: ['XYZ-wing', 'ALS-XZ', 'aligned pair exclusion'],
    not: ['XY-chain'],
  },
  {
    about: 'a pivot of three digits',
    name: 'XYZ-wing',
    is: 'fits',
    pencil: '123r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c23<>3',
  },
  {
    about: 'an XY-wing is not an XYZ-wing',
    name: 'XYZ-wing',
    is: 'misnamed',
    pencil: '12r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c2<>3',
  },
  {
    about: 'a naked triple is not an XY-wing',
    name: 'XY-wing',
    is: 'misnamed',
    pencil: '12r1c1 13r1c2 23r1c3',
    from: 'r1c123',
    so: 'r1c5<>123',
    fits: ['naked triple'],
    not: ['ALS-XZ', 'aligned pair exclusion'],
  },
  {
    about: 'four cells around a pivot',
    name: 'WXYZ-wing',
    is: 'fits',
    pencil: '1234r1c1 14r1c5 24r1c6 34r2c2',
    from: 'r1c156 r2c2',
    so: 'r1c23<>4',
    fits: ['WXYZ-wing', 'ALS-XZ'],
    not: ['XYZ-wing', 'naked quad'],
  },
  {
    about: 'four cells in a line and a box, and no pivot',
    name: 'WXYZ-wing',
    is: 'fits',
    pencil: '123r1c1 23r1c4 14r2c2 34r3c3',
    from: 'r1c14 r2c2 r3c3',
    so: 'r1c2<>3',
  },
  {
    about: 'four cells of one house are a naked quad',
    name: 'WXYZ-wing',
    is: 'misnamed',
    pencil: '12r1c1 23r1c2 34r1c3 14r1c4',
    from: 'r1c1234',
    so: 'r1c9<>1',
    fits: ['naked quad'],
    not: ['ALS-XZ', 'ALS chain'],
  },
  {
    about: 'four cells strung along are an XY-chain',
    name: 'WXYZ-wing',
    is: 'misnamed',
    pencil: '12r1c1 23r1c5 34r5c5 14r5c2',
    from: 'r1c15 r5c25',
    so: 'r1c2<>1',
    fits: ['XY-chain'],
  },
  {
    about: 'five cells around a pivot',
    name: 'VWXYZ-wing',
    is: 'fits',
    pencil: '12345r1c1 15r1c5 25r1c6 35r2c2 45r3c3',
    from: 'r1c156 r2c2 r3c3',
    so: 'r1c23<>5',
    fits: ['VWXYZ-wing'],
    not: ['WXYZ-wing', 'XYZ-wing', 'ALS-XZ'],
  },
  {
    about: 'five cells strung along are an XY-chain',
    name: 'VWXYZ-wing',
    is: 'misnamed',
    pencil: '12r1c1 23r1c5 34r5c5 45r5c2 15r4c3',
    from: 'r1c15 r5c25 r4c3',
    so: 'r1c3<>1',
    fits: ['XY-chain'],
  },
];

describe('wings of cells', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('a VWXYZ-wing is found', () => {
  const found = (pencil: string) => {
    const position = positionWith({ pencil });
    const conclusions = conclusionsIn(position.grid, 'r1c23<>5');
    return findArgument(position, 'VWXYZ-wing', conclusions)?.instance.sets.map((set) =>
      printSource(position.grid, set),
    );
  };
  test('by its pivot', () => {
    expect(found('12345r1c1 15r1c5 25r1c6 35r2c2 45r3c3')).toEqual(['r1c1', 'r1c5', 'r1c6', 'r2c2', 'r3c3']);
  });
  test('but not with one candidate too many', () => {
    expect(found('12345r1c1 15r1c5 25r1c6 35r2c2 456r3c3')).toBeUndefined();
  });
});
