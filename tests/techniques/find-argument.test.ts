import { describe, expect, test } from 'vitest';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { findArgument, instancesOf } from '../../src/techniques/find-argument.ts';
import { judgeName } from '../../src/techniques/judge-name.ts';
import { conclusionsIn, positionWith, printInstance, printSource, shapeOf, type Written } from './written-argument.ts';

interface Row extends Written {
  readonly about: string;
  readonly name: ArgumentName;
  /** The sets of what is found and how many others there are; undefined where nothing is found. */
  readonly finds: readonly [sets: string, others: number] | undefined;
}

const rows: readonly Row[] = [
  {
    about: 'the only one',
    name: 'skyscraper',
    only: '7c5 in r19c5, 7c8 in r29c8',
    so: 'r1c7<>7',
    finds: ['7c5 7c8', 0],
  },
  {
    about: 'the first of two',
    name: 'skyscraper',
    only: '7c5 in r19c5, 7c8 in r29c8, 7c1 in r16c1, 7c9 in r26c9',
    so: 'r1c7<>7',
    finds: ['7c1 7c9', 1],
  },
  {
    about: 'one for all that is asked for for',
    name: 'naked pair',
    pencil: '12r1c19',
    so: 'r1c5<>12 r1c6<>1',
    finds: ['r1c1 r1c9', 0],
  },
  {
    about: 'no single one proves both',
    name: 'naked pair',
    pencil: '12r1c19 34r5c19',
    so: 'r1c5<>1 r5c5<>3',
    finds: undefined,
  },
  {
    about: 'what is redundant is not asked for',
    name: 'naked pair',
    pencil: '12r1c19 34r5c5',
    so: 'r1c5<>1 r5c5<>9',
    finds: ['r1c1 r1c9', 0],
  },
  { about: 'nothing new at all', name: 'naked pair', pencil: '12r1c19 34r5c5', so: 'r5c5<>9', finds: undefined },
  { about: 'another name', name: 'hidden pair', pencil: '12r1c19', so: 'r1c5<>1', finds: undefined },
  {
    about: 'an either/or',
    name: 'skyscraper',
    only: '7c5 in r19c5, 7c8 in r29c8',
    so: 'either 7r1c5 7r2c8',
    finds: ['7c5 7c8', 0],
  },
  {
    about: 'an either/or of a chain that removes nothing',
    name: 'skyscraper',
    only: '7c5 in r19c5, 7c8 in r29c8, 7r1 in r1c58, 7r2 in r2c58, 7b2 in r1c5, 7b3 in r2c8',
    so: 'either 7r1c5 7r2c8',
    finds: ['7c5 7c8', 0],
  },
  { about: 'a single', name: 'hidden single', only: '4r3 in r3c3', so: 'r3c3=4', finds: ['4r3', 0] },
  { about: 'not proved by any', name: 'X-chain', only: '7c5 in r19c5, 7c8 in r29c8', so: 'r3c5<>7', finds: undefined },
];

describe('an argument of a name', () => {
  test.each(rows.map((row) => [row.about, row] as const))('%s', (_, row) => {
    const position = positionWith(row);
    const found = findArgument(position, row.name, conclusionsIn(position.grid, row.so));
    const sets = found?.instance.sets.map((set) => printSource(position.grid, set)).join(' ');
    expect(found === undefined ? undefined : [sets, found.others]).toEqual(row.finds);
  });
});

describe('an argument with a set that nothing needs', () => {
  const claimed = { only: '7c5 in r79c5, 7c7 in r89c7', from: '7c57', so: 'r7c8<>7' };
  const { position, conclusions } = shapeOf(claimed);
  test.each(['skyscraper', 'turbot fish', 'X-chain'] as const)('bears the name %s, and is found by it', (name) => {
    expect(judgeName(shapeOf(claimed), name).judged).toBe('fits');
    expect(findArgument(position, name, conclusions, 'kept')).not.toBe(undefined);
  });
  test('is the one that was meant', () => {
    const found = findArgument(position, 'skyscraper', conclusions, 'kept');
    expect(found?.instance.sets.map((set) => printSource(position.grid, set)).sort()).toEqual(['7c5', '7c7']);
  });
  test('is not looked for elsewhere', () => {
    expect(findArgument(position, 'skyscraper', conclusions)).toBe(undefined);
  });
});

describe('instances', () => {
  test('come one at a time, so that the first does not wait for the last', () => {
    const position = positionWith({ only: '7c5 in r19c5, 7c8 in r29c8, 7c1 in r16c1, 7c9 in r26c9' });
    const instances = instancesOf(position, 'grouped X-chain');
    const first = instances.next();
    expect(first.done === false && printInstance(position, first.value)).toMatch(/^7c/);
  });
  test('a board with everything possible does not stall any finder', () => {
    const position = positionWith({});
    for (const name of [
      'X-chain',
      'grouped X-chain',
      'finned jellyfish',
      'mutant jellyfish',
      'multi-colouring',
      'hidden quad',
    ] as const) {
      expect([name, [...instancesOf(position, name)].length]).toEqual([name, 0]);
    }
  });
});
