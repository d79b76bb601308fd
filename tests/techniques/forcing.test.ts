import { describe, expect, test } from 'vitest';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { shapeOf } from './written-argument.ts';

interface ForcingRow extends Row {
  /** Whether the name is also found, if the row says what is found. */
  readonly found?: boolean;
}

/** Three digits of r5c5, each with a chain to 9 in r1, c1 or b1. */
const fromACell = {
  pencil: '123r5c5 19r5c1 29r1c5 38r5c2 89r2c2',
  from: 'r5c5 r5c1 r1c5 r5c2 r2c2',
  so: 'r1c1<>9',
} as const;
/** Pairs of 1 and 2 from r1c1 round to r5c5, where they meet. */
const acrossDigits = {
  pencil: '12r1c1',
  only: '2r1 in r1c15, 2c5 in r15c5, 1c1 in r15c1, 1r5 in r5c15',
  from: 'r1c1 2r1 2c5 1c1 1r5',
  so: 'r5c5<>3456789',
} as const;
/** Two rows of 7 in two columns, except 7r1c9, from which two cells lead to r9c1. */
const finned = { only: '7r1 in r1c159, 7r5 in r5c15', pencil: '78r9c19', from: '7r15 r9c19', so: 'r8c1<>7' } as const;

const rows: readonly ForcingRow[] = [
  {
    about: 'the digits of a cell lead to one conclusion',
    name: 'forcing chain',
    is: 'fits',
    ...fromACell,
    fits: ['forcing chain', 'forcing net'],
    found: true,
  },
  { about: 'the same, called a net', name: 'forcing net', is: 'fits', ...fromACell, found: true },
  {
    about: 'the places of a digit lead to one conclusion',
    name: 'forcing chain',
    is: 'fits',
    only: '4c5 in r159c5',
    pencil: '49r1c2 49r5c1 49r9c1',
    from: '4c5 r1c2 r5c1 r9c1',
    so: 'r2c1<>9 r3c1<>9',
    found: true,
  },
  {
    about: 'one set is not a chain',
    name: 'forcing chain',
    is: 'misnamed',
    only: '7r1 in r1c1',
    from: '7r1',
    so: 'r1c1=7',
    not: ['forcing net'],
  },
  {
    about: 'four cells of four digits take cases within cases: a net',
    name: 'forcing chain',
    is: 'misnamed',
    pencil: '1234r1c1234',
    from: 'r1c1234',
    so: 'r1c5<>1',
    fits: ['naked quad', 'forcing net'],
  },
  {
    about: 'what conflicts with both colours of a cluster of two digits',
    name: 'three-dimensional Medusa',
    is: 'fits',
    ...acrossDigits,
    not: ['simple colouring', 'multi-colouring', 'X-chain', 'kraken fish'],
    found: true,
  },
  {
    about: 'a cluster of one digit is simple colouring',
    name: 'three-dimensional Medusa',
    is: 'warns',
    only: '7r1 in r1c15, 7c5 in r15c5, 7r5 in r5c25',
    from: '7r1 7c5 7r5',
    so: 'r2c2<>7 r4c1<>7',
    fits: ['simple colouring'],
  },
  {
    about: 'pairs of two clusters',
    name: 'three-dimensional Medusa',
    is: 'misnamed',
    pencil: '12r1c1 23r1c5 13r5c1',
    from: 'r1c1 r1c5 r5c1',
    so: 'r5c5<>3',
    fits: ['XY-wing'],
  },
  {
    about: 'a fin that leads to what is removed',
    name: 'kraken fish',
    is: 'fits',
    ...finned,
    not: ['finned X-wing', 'X-wing'],
    found: true,
  },
  {
    about: 'a fin that sees what is removed',
    name: 'kraken fish',
    is: 'misnamed',
    only: '7r1 in r1c156, 7r5 in r5c15',
    pencil: '78r9c9',
    from: '7r15 r9c9',
    so: 'r2c5<>7',
    fits: ['finned X-wing'],
  },
  {
    about: 'a swordfish, which could be read as an X-wing with a chain along its third base',
    name: 'kraken fish',
    is: 'misnamed',
    only: '1c1 in r258c1, 1c2 in r25c2, 1c8 in r28c8',
    from: '1c128',
    so: 'r2c7<>1 r5c7<>1',
    fits: ['swordfish'],
  },
  {
    about: 'a swordfish whose fins all see what goes',
    name: 'kraken fish',
    is: 'misnamed',
    only: '1c1 in r258c1, 1c2 in r25c2, 1c8 in r289c8',
    from: '1c128',
    so: 'r8c7<>1',
    fits: ['finned swordfish'],
  },
  { about: 'only cells are not a fish', name: 'kraken fish', is: 'misnamed', ...fromACell },
];

describe('forcing, Medusa and kraken', () => {
  test.each(rows)('$about', check);
});

describe('found by name', () => {
  test.each(rows.filter((row) => row.found === true))('$about', (row) => {
    const { position, conclusions, sets } = shapeOf(row);
    const found = findArgument(position, row.name, conclusions);
    expect(found?.instance.sets.length).toBeLessThanOrEqual(sets.length);
  });
});
