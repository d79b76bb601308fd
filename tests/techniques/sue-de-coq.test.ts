import { describe, test } from 'vitest';
import { check, type Row } from './judge.ts';

const rows: readonly Row[] = [
  {
    about: 'two cells of the crossing, one of the line, one of the box',
    name: 'Sue de Coq',
    is: 'fits',
    pencil: '1234r1c12 12r1c5 34r2c2',
    from: 'r1c125 r2c2',
    so: 'r1c9<>12 r3c3<>34',
    not: ['naked quad', 'death blossom'],
  },
  {
    about: 'three cells of the crossing',
    name: 'Sue de Coq',
    is: 'fits',
    pencil: '12345r1c123 12r1c5 345r2c2 345r3c3',
    from: 'r1c1235 r2c2 r3c3',
    so: 'r1c9<>12 r3c1<>345',
  },
  {
    about: 'a digit in both line and box',
    name: 'Sue de Coq',
    is: 'fits',
    pencil: '1234r1c12 125r1c5 15r1c6 345r2c2 45r3c3',
    from: 'r1c1256 r2c2 r3c3',
    so: 'r1c9<>12',
  },
  {
    about: 'a naked quad',
    name: 'Sue de Coq',
    is: 'misnamed',
    pencil: '1234r1c12 12r1c3 34r1c4',
    from: 'r1c1234',
    so: 'r1c9<>12',
    fits: ['naked quad'],
  },
  {
    about: 'an XYZ-wing',
    name: 'Sue de Coq',
    is: 'misnamed',
    pencil: '123r1c1 13r1c5 23r2c2',
    from: 'r1c1 r1c5 r2c2',
    so: 'r1c23<>3',
  },
];

describe('Sue de Coq', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});
