import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { openPlaces, targetsOf } from '../../src/techniques/cover-search.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from './generated-positions.ts';
import { check, type Row } from './judge.ts';
import { positionWith, printInstance } from './written-argument.ts';

const xWing = { only: '7r1 in r1c15, 7r9 in r9c15', from: '7r19' } as const;
const swordfish = { only: '7r1 in r1c15, 7r5 in r5c59, 7r9 in r9c19', from: '7r159' } as const;
const finned = { only: '7r1 in r1c15, 7r9 in r9c156', from: '7r19' } as const;
/** The fin's row has two places in the columns, but none in the fin's box. */
const cornerless = { only: '7r1 in r1c19, 7r5 in r5c59, 7r9 in r9c158', from: '7r159' } as const;
const sashimi = { only: '7r1 in r1c15, 7r9 in r9c16', from: '7r19' } as const;

const rows: readonly Row[] = [
  {
    about: 'two rows, two columns',
    name: 'X-wing',
    is: 'fits',
    ...xWing,
    so: 'r4c15<>7',
    fits: ['X-wing', 'multi-colouring', 'X-chain'],
    not: ['swordfish', 'skyscraper', 'turbot fish', 'finned X-wing', 'sashimi X-wing', 'two-string kite'],
  },
  {
    about: 'two columns, two rows',
    name: 'X-wing',
    is: 'fits',
    only: '7c1 in r19c1, 7c5 in r19c5',
    from: '7c15',
    so: 'r1c4<>7 r9c9<>7',
  },
  {
    about: 'written as a loop',
    name: 'X-wing',
    is: 'fits',
    only: '7r1 in r1c15, 7r9 in r9c15',
    chain: '(7)r1c1=r1c5-r9c5=r9c1-r1c1',
    so: 'r4c15<>7',
  },
  { about: 'its corners as either/or', name: 'X-wing', is: 'fits', ...xWing, so: 'either 7r1c1 7r9c1' },
  {
    about: 'an X-wing called finned',
    name: 'finned X-wing',
    is: 'misnamed',
    ...xWing,
    so: 'r4c15<>7',
    fits: ['X-wing'],
  },
  {
    about: 'three rows, three columns, two places in each',
    name: 'swordfish',
    is: 'fits',
    ...swordfish,
    so: 'r4c159<>7',
    fits: ['swordfish'],
    not: ['X-wing', 'jellyfish', 'skyscraper', 'turbot fish', 'finned swordfish'],
  },
  {
    about: 'a swordfish called an X-wing',
    name: 'X-wing',
    is: 'misnamed',
    ...swordfish,
    so: 'r4c1<>7',
    fits: ['swordfish'],
  },
  {
    about: 'four rows, four columns',
    name: 'jellyfish',
    is: 'fits',
    only: '7r1 in r1c15, 7r4 in r4c159, 7r5 in r5c39, 7r9 in r9c139',
    from: '7r1459',
    so: 'r7c1359<>7',
    not: ['swordfish', 'X-wing'],
  },
  {
    about: 'a superfluous third row',
    name: 'X-wing',
    is: 'fits',
    only: '7r1 in r1c15, 7r9 in r9c15',
    from: '7r159',
    so: 'r4c15<>7',
  },
  { about: 'only one of four conclusions', name: 'swordfish', is: 'fits', ...swordfish, so: 'r4c9<>7' },
  {
    about: 'a corner with a fin next to it',
    name: 'finned X-wing',
    is: 'fits',
    ...finned,
    so: 'r78c5<>7',
    fits: ['finned X-wing', 'grouped X-chain'],
    not: ['X-wing', 'sashimi X-wing', 'skyscraper', 'X-chain'],
  },
  { about: 'finned, called sashimi', name: 'sashimi X-wing', is: 'misnamed', ...finned, so: 'r7c5<>7' },
  { about: 'finned, called a plain X-wing', name: 'X-wing', is: 'misnamed', ...finned, so: 'r7c5<>7' },
  {
    about: 'the corner next to the fin is missing',
    name: 'sashimi X-wing',
    is: 'fits',
    ...sashimi,
    so: 'r78c5<>7',
    fits: ['skyscraper', 'sashimi X-wing'],
  },
  { about: 'sashimi called finned', name: 'finned X-wing', is: 'warns', ...sashimi, so: 'r78c5<>7' },
  {
    about: 'a base without its corner that keeps two places: sashimi by one usage',
    name: 'sashimi swordfish',
    is: 'fits',
    ...cornerless,
    so: 'r78c9<>7',
    fits: ['sashimi swordfish', 'finned swordfish'],
  },
  { about: 'the same, finned by the other usage', name: 'finned swordfish', is: 'fits', ...cornerless, so: 'r78c9<>7' },
  {
    about: 'a finned swordfish',
    name: 'finned swordfish',
    is: 'fits',
    only: '7r1 in r1c15, 7r5 in r5c59, 7r9 in r9c189',
    from: '7r159',
    so: 'r78c9<>7',
    not: ['sashimi swordfish', 'swordfish', 'finned X-wing'],
  },
  {
    about: 'a fin that the removed place does not see',
    name: 'finned X-wing',
    is: 'misnamed',
    only: '7r1 in r1c15, 7r9 in r9c156, 7b8 in r9c56',
    from: '7r1 7b8',
    so: 'r9c1<>7',
  },
  {
    about: 'two rows and a box',
    name: 'franken swordfish',
    is: 'fits',
    only: '7r1 in r1c47, 7r2 in r2c57, 7b8 in r7c4|r8c5',
    from: '7r12 7b8',
    so: 'r5c457<>7',
    not: ['swordfish', 'mutant swordfish', 'finned franken swordfish'],
  },
  {
    about: 'a row and a column: mutant, of two strings',
    name: 'finned mutant X-wing',
    is: 'fits',
    only: '7r7 in r7c14, 7c3 in r49c3',
    from: '7r7 7c3',
    so: 'r4c4<>7',
    fits: ['two-string kite', 'finned mutant X-wing'],
  },
  {
    about: 'two digits',
    name: 'X-wing',
    is: 'misnamed',
    only: '7r1 in r1c15, 8c1 in r19c1',
    from: '7r1 8c1',
    so: 'either 7r1c5 8r9c1',
  },
];

describe('fish', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => check(row));
});

describe('fish found', () => {
  const found = (only: string, name: ArgumentName) => {
    const position = positionWith({ only });
    return [...instancesOf(position, name)].map((instance) => printInstance(position, instance));
  };
  test('an X-wing, and not a finned one or a swordfish', () => {
    expect(found(xWing.only, 'X-wing')).toEqual([
      `7r1 7r9 => ${[2, 3, 4, 5, 6, 7, 8].flatMap((row) => [`r${row}c1<>7`, `r${row}c5<>7`]).join(' ')}`,
    ]);
    expect(found(xWing.only, 'swordfish')).toEqual([]);
  });
  test('a swordfish', () => {
    expect(found(swordfish.only, 'swordfish')).toEqual([
      `7r1 7r5 7r9 => ${[2, 3, 4, 6, 7, 8].flatMap((row) => [1, 5, 9].map((column) => `r${row}c${column}<>7`)).join(' ')}`,
    ]);
  });
  test('a finned X-wing, and the sashimi one under both names', () => {
    expect(found(finned.only, 'finned X-wing')).toEqual(['7r1 7r9 => r7c5<>7 r8c5<>7']);
    expect(found(finned.only, 'sashimi X-wing')).toEqual([]);
    expect(found(sashimi.only, 'sashimi X-wing')).toContain('7r1 7r9 => r7c5<>7 r8c5<>7');
    expect(found(sashimi.only, 'finned X-wing')).toContain('7r1 7r9 => r7c5<>7 r8c5<>7');
  });
});

describe('the search among any houses', () => {
  test('finds everything that the search among lines finds', () => {
    let seen = 0;
    for (const seed of [3, 5, 6, 8]) {
      const { position } = generatedPuzzle(gridOf('2x3'), chanceFrom(seed));
      for (const name of ['X-wing', 'swordfish', 'finned X-wing', 'finned swordfish'] as const) {
        for (const { sets, conclusions } of instancesOf(position, name)) {
          const source = sets[0]!.source;
          if (source.kind !== 'places') throw new Error('the base of a fish is a house');
          const open = openPlaces(position, source.digit);
          const bases = open.houses.filter(({ house }) =>
            sets.some((set) => set.source.kind === 'places' && set.source.house === house),
          );
          const across = source.house.kind === 'row' ? 'column' : 'row';
          const targets = targetsOf(open, bases, [across], { left: 10_000 });
          for (const conclusion of conclusions) {
            seen++;
            if (conclusion.kind === 'impossible') expect(targets).toContain(conclusion.candidate);
          }
        }
      }
    }
    expect(seen).toBeGreaterThan(20);
  });
});
