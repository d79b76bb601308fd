import { describe, expect, test } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { prove } from '../../src/proof/kernel.ts';
import { minimalPart, minimalParts, needsEverySet } from '../../src/techniques/minimal-argument.ts';
import { randomConclusion, randomPosition, randomSets, randomSolution } from '../proof/positions.ts';
import { chanceFrom } from '../random.ts';
import { printSource, shapeOf, type Written } from './written-argument.ts';

const cases: readonly (Written & { readonly about: string; readonly parts: readonly string[] })[] = [
  { about: 'all sets', only: '7c5 in r19c5, 7c8 in r29c8', from: '7c58', so: 'r1c7<>7', parts: ['7c5 7c8'] },
  { about: 'one of them', only: '6b5 in r4c46', from: '6b5 7b1', so: 'r4c1<>6', parts: ['6b5'] },
  {
    about: 'either of two',
    only: '6b5 in r4c46',
    pencil: '6r4c6',
    from: '6b5 r4c6',
    so: 'r4c1<>6',
    parts: ['6b5', 'r4c6'],
  },
  {
    about: 'two, or two others',
    only: '7c5 in r19c5, 7c8 in r29c8, 7c1 in r16c1, 7c9 in r26c9',
    from: '7c1589',
    so: 'r1c7<>7',
    parts: ['7c5 7c8', '7c1 7c9'],
  },
];

describe('the parts that a conclusion needs', () => {
  test.each(cases.map((each) => [each.about, each] as const))('%s', (_, written) => {
    const { position, sets, conclusions } = shapeOf(written);
    const parts = minimalParts(position, sets, conclusions[0]!);
    expect(parts.map((part) => part.map((set) => printSource(position.grid, set)).join(' '))).toEqual(written.parts);
  });

  test('each proves it, but not when any set is left out; the same parts whether there are few sets or many', () => {
    const chance = chanceFrom(31);
    let proved = 0;
    for (let round = 0; round < 300; round++) {
      const grid = gridOf('2x2');
      const position = randomPosition(grid, randomSolution(grid, chance), chance);
      const sets = randomSets(position, 3 + (round % 8), chance);
      if (sets.length === 0) continue;
      const conclusion = randomConclusion(position, sets, chance);
      const parts = minimalParts(position, sets, conclusion);
      if (prove(position, sets, conclusion).kind !== 'proved') {
        expect(parts).toEqual([]);
        continue;
      }
      proved++;
      expect(parts.length).toBeGreaterThan(0);
      expect(parts.map((part) => part.length)).toEqual(parts.map((part) => part.length).sort((a, b) => a - b));
      const one = minimalPart(position, sets, conclusion)!;
      for (const part of [...parts, one]) {
        expect(prove(position, part, conclusion).kind).toBe('proved');
        expect(needsEverySet(position, { sets: part, conclusions: [conclusion] })).toBe(true);
      }
    }
    expect(proved).toBeGreaterThan(30);
  });
});
