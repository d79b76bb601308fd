import { describe, expect, test } from 'vitest';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { findArgument } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { conclusionsIn, positionWith, printSource } from './written-argument.ts';

/** Three pairs in a row. */
const path = { only: '5c1 in r19c1, 5r9 in r9c15, 5c5 in r29c5' } as const;
const wrap = { only: '5r1 in r1c15, 5c5 in r18c5, 5r8 in r8c25, 5c2 in r28c2' } as const;
const rows: readonly Row[] = [
  {
    about: 'a trap: what sees both colours',
    name: 'simple colouring',
    is: 'fits',
    ...path,
    from: '5c15 5r9',
    so: 'r1c46<>5',
    fits: ['skyscraper', 'simple colouring', 'X-chain'],
    not: ['multi-colouring'],
  },
  {
    about: 'a wrap: one colour twice in a box',
    name: 'simple colouring',
    is: 'fits',
    ...wrap,
    from: '5r1 5c5 5r8 5c2',
    so: 'r1c1<>5',
  },
  {
    about: 'two clusters',
    name: 'multi-colouring',
    is: 'fits',
    only: '5c1 in r19c1, 5c5 in r29c5',
    from: '5c15',
    so: 'r1c46<>5 r2c23<>5',
    fits: ['skyscraper', 'multi-colouring', 'X-chain'],
    not: ['simple colouring'],
  },
  {
    about: 'two clusters called one',
    name: 'simple colouring',
    is: 'misnamed',
    only: '5c1 in r19c1, 5c5 in r29c5',
    from: '5c15',
    so: 'r1c46<>5',
  },
  {
    about: 'the pair between need not be named',
    name: 'simple colouring',
    is: 'fits',
    only: '5c1 in r19c1, 5c5 in r29c5, 5r9 in r9c15',
    from: '5c15',
    so: 'r1c46<>5',
    not: ['multi-colouring'],
  },
  {
    about: 'three places are not a pair',
    name: 'simple colouring',
    is: 'misnamed',
    only: '5c1 in r19c1, 5c5 in r239c5',
    from: '5c15',
    so: 'r1c46<>5',
  },
];

describe('colouring', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('colouring found', () => {
  const found = (only: string, name: ArgumentName, so: string) => {
    const position = positionWith({ only });
    const { instance } = findArgument(position, name, conclusionsIn(position.grid, so)) ?? {};
    return instance?.sets.map((set) => printSource(position.grid, set)).join(' ');
  };
  test.each([
    ['a trap', path.only, 'simple colouring', 'r1c46<>5', '5r9 5c1 5c5'],
    ['a wrap', wrap.only, 'simple colouring', 'r1c1<>5', '5r8 5c2 5c5'],
    ['two clusters', '5c1 in r19c1, 5c5 in r29c5', 'multi-colouring', 'r1c46<>5', '5c1 5c5'],
    ['no cluster does it', '5c1 in r19c1, 5c5 in r29c5', 'simple colouring', 'r1c4<>5', undefined],
  ] as const)('%s', (_, only, name, so, sets) => expect(found(only, name, so)).toBe(sets));
});
