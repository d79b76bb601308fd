import { describe, expect, test } from 'vitest';
import { membersOf } from '../../src/grid/candidates.ts';
import { parseCandidates } from '../../src/grid/notation/candidates.ts';
import { printChain } from '../../src/grid/notation/print.ts';
import { choose } from '../../src/proof/choice.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { findArgument, instancesOf } from '../../src/techniques/find-argument.ts';
import { check, type Row } from './judge.ts';
import { conclusionsIn, positionWith, printInstance, printSource, read, shapeOf } from './written-argument.ts';

const towers = { only: '7c5 in r19c5, 7c8 in r29c8' } as const;
const kite = { only: '5r7 in r7c14, 5c3 in r49c3' } as const;
const rectangle = { only: '6b9 in r8c78|r9c9, 6c2 in r18c2' } as const;

const rows: readonly Row[] = [
  {
    about: 'two columns joined along a row',
    name: 'skyscraper',
    is: 'fits',
    ...towers,
    from: '7c58',
    so: 'r1c79<>7 r2c46<>7',
    fits: ['skyscraper', 'turbot fish', 'X-chain'],
    not: ['X-wing', 'two-string kite', 'empty rectangle', 'grouped X-chain'],
  },
  {
    about: 'written as a chain',
    name: 'skyscraper',
    is: 'fits',
    ...towers,
    chain: '(7)r1c5=r9c5-r9c8=r2c8',
    so: 'r1c7<>7',
  },
  {
    about: 'one of the two roof ends is true (common practice)',
    name: 'skyscraper',
    is: 'fits',
    ...towers,
    from: '7c58',
    so: 'either 7r1c5 7r2c8',
  },
  {
    about: 'a skyscraper called a kite',
    name: 'two-string kite',
    is: 'misnamed',
    ...towers,
    from: '7c58',
    so: 'r1c7<>7',
    fits: ['skyscraper'],
  },
  {
    about: 'a skyscraper whose roof ends see one another in a box',
    name: 'turbot fish',
    is: 'fits',
    only: '8c6 in r79c6, 8c5 in r89c5',
    from: '8c56',
    so: 'r7c4<>8 r8c4<>8',
    fits: ['skyscraper', 'turbot fish', 'X-chain'],
    not: ['X-wing'],
  },
  {
    about: 'an X-wing called a turbot fish',
    name: 'turbot fish',
    is: 'misnamed',
    only: '8c5 in r79c5, 8c8 in r79c8',
    from: '8c58',
    so: 'r7c4<>8',
    fits: ['X-wing'],
  },
  { about: 'a skyscraper called an X-wing', name: 'X-wing', is: 'misnamed', ...towers, from: '7c58', so: 'r1c7<>7' },
  {
    about: 'a roof end that is a group',
    name: 'skyscraper',
    is: 'warns',
    only: '7c5 in r19c5, 7c8 in r239c8',
    from: '7c58',
    so: 'r1c79<>7',
    fits: ['skyscraper', 'grouped X-chain'],
    not: ['X-chain', 'turbot fish'],
  },
  {
    about: 'a row and a column joined in a box',
    name: 'two-string kite',
    is: 'fits',
    ...kite,
    from: '5r7 5c3',
    so: 'r4c4<>5',
    fits: ['two-string kite', 'turbot fish', 'X-chain'],
    not: ['skyscraper', 'empty rectangle'],
  },
  { about: 'a kite called a skyscraper', name: 'skyscraper', is: 'misnamed', ...kite, from: '5r7 5c3', so: 'r4c4<>5' },
  {
    about: 'a kite whose end in the box is a group',
    name: 'two-string kite',
    is: 'warns',
    only: '5r7 in r7c124, 5c3 in r49c3',
    from: '5r7 5c3',
    so: 'r4c4<>5',
  },
  {
    about: 'a box with two arms and a column',
    name: 'empty rectangle',
    is: 'fits',
    ...rectangle,
    from: '6b9 6c2',
    so: 'r1c9<>6',
    fits: ['empty rectangle', 'grouped X-chain'],
    not: ['X-chain', 'two-string kite', 'skyscraper'],
  },
  {
    about: 'written as a chain',
    name: 'empty rectangle',
    is: 'fits',
    ...rectangle,
    chain: '(6)r1c2=r8c2-r8c78=r9c9',
    so: 'r1c9<>6',
  },
  {
    about: 'with a place where the arms meet',
    name: 'empty rectangle',
    is: 'fits',
    only: '6b9 in r8c789|r9c9, 6c2 in r18c2',
    from: '6b9 6c2',
    so: 'r1c9<>6',
  },
  {
    about: 'a box of two places',
    name: 'empty rectangle',
    is: 'fits',
    only: '6b9 in r8c8|r9c9, 6c2 in r18c2',
    from: '6b9 6c2',
    so: 'r1c9<>6',
    fits: ['empty rectangle', 'turbot fish', 'X-chain'],
  },
  {
    about: 'a grouped pattern called a turbot fish',
    name: 'turbot fish',
    is: 'warns',
    ...rectangle,
    from: '6b9 6c2',
    so: 'r1c9<>6',
  },
  {
    about: 'three strong links',
    name: 'X-chain',
    is: 'fits',
    only: '5c5 in r46c5, 5c4 in r67c4, 5r7 in r7c14, 5c3 in r49c3, 5b7 in r7c1|r9c3',
    chain: '(5)r4c5=r6c5-r6c4=r7c4-r7c1=r9c3',
    so: 'either 5r4c5 5r9c3',
    not: ['turbot fish', 'skyscraper', 'two-string kite', 'grouped X-chain'],
  },
  {
    about: 'three strong links by their sets',
    name: 'X-chain',
    is: 'fits',
    only: '5c5 in r46c5, 5c4 in r67c4, 5r7 in r7c14, 5c3 in r49c3, 5b7 in r7c1|r9c3',
    from: '5b7 5c4 5c5',
    so: 'r4c3<>5',
  },
  {
    about: 'three strong links called a turbot fish',
    name: 'turbot fish',
    is: 'misnamed',
    only: '5c5 in r46c5, 5c4 in r67c4, 5r7 in r7c14, 5c3 in r49c3, 5b7 in r7c1|r9c3',
    from: '5b7 5c4 5c5',
    so: 'r4c3<>5',
  },
  { about: 'a missing "grouped"', name: 'X-chain', is: 'warns', ...rectangle, from: '6b9 6c2', so: 'r1c9<>6' },
  {
    about: '"grouped" for single places',
    name: 'grouped X-chain',
    is: 'warns',
    ...towers,
    from: '7c58',
    so: 'r1c7<>7',
  },
  {
    about: 'a chain that comes back to its start places it',
    name: 'X-chain',
    is: 'fits',
    only: '5r1 in r1c15, 5c5 in r18c5, 5r8 in r8c25, 5b1 in r1c1|r3c2',
    from: '5r1 5r8 5b1',
    so: 'r1c1=5',
  },
  {
    about: 'a removal that one link proves on its own',
    name: 'turbot fish',
    is: 'fits',
    only: '5c5 in r13c5, 5b3 in r3c8|r2c9',
    from: '5c5 5b3',
    so: 'r2c46<>5',
    fits: ['claiming', 'turbot fish', 'X-chain'],
  },
  {
    about: 'a superfluous link, and no chain',
    name: 'turbot fish',
    is: 'misnamed',
    only: '5c5 in r13c5, 5c1 in r19c1',
    from: '5c5 5c1',
    so: 'r2c46<>5',
    fits: ['claiming'],
  },
  {
    about: 'a chain without a conclusion',
    name: 'skyscraper',
    is: 'fits',
    ...towers,
    chain: '(7)r1c5=r9c5-r9c8=r2c8',
    so: '',
  },
  {
    about: 'a chain without a conclusion, misnamed',
    name: 'two-string kite',
    is: 'misnamed',
    ...towers,
    chain: '(7)r1c5=r9c5-r9c8=r2c8',
    so: '',
  },
  {
    about: 'two digits',
    name: 'X-chain',
    is: 'misnamed',
    only: '7c5 in r19c5',
    pencil: '78r9c8',
    from: '7c5 r9c8',
    so: 'either 7r1c5 8r9c8',
  },
];

describe('patterns of one digit', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('patterns of one digit found', () => {
  const found = (only: string, name: ArgumentName) => {
    const position = positionWith({ only });
    return [...instancesOf(position, name)].map((instance) => [
      printInstance(position, instance),
      instance.chain === undefined ? '' : printChain(position.grid, instance.chain),
    ]);
  };
  test('a skyscraper, presented from the end that comes first', () => {
    expect(found(towers.only, 'skyscraper')).toEqual([
      ['7c5 7c8 => r1c7<>7 r1c9<>7 r2c4<>7 r2c6<>7', '(7)r1c5=r9c5-r9c8=r2c8'],
    ]);
  });
  test('a kite', () => {
    expect(found(kite.only, 'two-string kite')).toEqual([['5c3 5r7 => r4c4<>5', '(5)r4c3=r9c3-r7c1=r7c4']]);
  });
  test('an empty rectangle', () => {
    expect(found(rectangle.only, 'empty rectangle')).toEqual([['6c2 6b9 => r1c9<>6', '(6)r1c2=r8c2-r8c78=r9c9']]);
  });
  test('one removal from several patterns: a kite, an empty rectangle, a finned X-wing (common practice)', () => {
    const position = positionWith({ only: '4r1 in r1c19, 4c8 in r29c8, 4b1 in r1c1|r2c2, 4c2 in r289c2' });
    const sets = (name: ArgumentName) =>
      findArgument(position, name, conclusionsIn(position.grid, 'r9c1<>4'))
        ?.instance.sets.map((set) => printSource(position.grid, set))
        .join(' ');
    expect(sets('two-string kite')).toBe('4r1 4c8');
    expect(sets('empty rectangle')).toBe('4b1 4c8');
    expect(sets('finned X-wing')).toBe('4c2 4c8');
    expect(sets('skyscraper')).toBe(undefined);
  });
  test('both roof ends of a skyscraper may be true (common practice)', () => {
    const { position, sets } = shapeOf({ ...towers, from: '7c58', so: 'either 7r1c5 7r2c8' });
    const both = read(parseCandidates(position.grid, '7r1c5 7r2c8'));
    expect(
      choose(
        position.grid,
        sets.map((set) => membersOf(set.members)),
        both,
      ).kind,
    ).toBe('free');
  });
});
