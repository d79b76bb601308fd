/**
 * What a plan calls least, against the cost by all paths (`exhaustive.ts`), on small boards.
 */
import { describe, expect, it } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { leastHitting } from '../../src/plan/hitting-set.ts';
import type { Move } from '../../src/plan/move.ts';
import { planFor } from '../../src/plan/plan.ts';
import { restricted } from '../../src/plan/teaching.ts';
import type { TeachingCosts } from '../../src/techniques/teaching.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from '../techniques/generated-positions.ts';
import { costs } from './costs.ts';
import { argumentsOf, foundElsewhere, planned } from './elsewhere.ts';
import { leastByAllPaths } from './exhaustive.ts';
import { times } from './times.ts';

const taught = [
  'pointing pair',
  'pointing triple',
  'claiming',
  'naked pair',
  'hidden pair',
  'naked triple',
  'hidden triple',
  'X-wing',
  'skyscraper',
  'two-string kite',
  'turbot fish',
  'empty rectangle',
  'XY-wing',
  'XY-chain',
];
const taughtCosts = restricted(costs, (name) => taught.includes(name) || costs.free.includes(name));

/** Singles cost something too, so that a path on the smallest board has choices. */
const priced: TeachingCosts = {
  step: 1,
  free: ['full house'],
  names: [
    { name: 'hidden single', cost: 1, sets: 1, each: 0 },
    { name: 'naked single', cost: 2, sets: 1, each: 0 },
    { name: 'claiming', cost: 0.5, sets: 1, each: 0 },
    { name: 'naked pair', cost: 1, sets: 1, each: 0 },
    { name: 'hidden pair', cost: 1, sets: 1, each: 0 },
  ],
};

describe('the cost that a plan calls least', () => {
  // Seeds of puzzles that singles alone do not carry, of the first 140.
  it.each([4, 18, 23, 40, 92, 105, 106, 124])('is that of all paths on a 6x6 board (seed %i)', (seed) => {
    const { position } = generatedPuzzle(gridOf('2x3'), chanceFrom(seed));
    const plan = planFor(position, { costs: taughtCosts, keepGoing: times(20_000) });
    expect(plan.outcome).toBe('least');
    expect(plan.cost).toBe(leastByAllPaths(position, taughtCosts, 5_000));
  });

  it.each([1, 2, 3, 4, 5, 6])('is not claimed on a 4x4 board with singles that cost (seed %i)', (seed) => {
    const { position } = generatedPuzzle(gridOf('2x2'), chanceFrom(seed));
    const plan = planFor(position, { costs: priced, keepGoing: times(20_000) });
    const least = leastByAllPaths(position, priced, 20_000);
    expect(typeof least).toBe('number');
    expect([plan.outcome, plan.unproved]).toEqual(['found', 'singles have a price']);
    expect(plan.atLeast).toBeLessThanOrEqual(Number(least));
    expect(plan.cost).toBeGreaterThanOrEqual(Number(least));
  });
});

/** A 4x4 board on which what is met first is not found any longer once singles have been told, and they are the costlier. */
it('is not claimed where a less costly path of other arguments than singles is missed', () => {
  const { position } = generatedPuzzle(gridOf('2x2'), chanceFrom(10));
  const table: TeachingCosts = {
    step: 1,
    free: ['full house'],
    names: [
      { name: 'hidden single', cost: 2, sets: 1, each: 0 },
      { name: 'X-chain', cost: 0.5, sets: 2, each: 0 },
    ],
  };
  const plan = planFor(position, { costs: table, keepGoing: times(6000) });
  expect(leastByAllPaths(position, table, 20_000)).toBeLessThan(plan.cost);
  expect([plan.outcome, plan.unproved]).toEqual(['found', 'singles have a price']);
  expect(plan.atLeast).toBe(1.5);
});

describe('one of several plans of least cost', () => {
  const solved = (improved: readonly Move[]) => improved.map(({ name }) => name).join();

  // Seeds of 6x6 puzzles on which other paths of the same cost are found elsewhere.
  it.each([4, 40, 105, 106, 124])('is the same whatever was found elsewhere, and when (6x6, seed %i)', (seed) => {
    const { position } = generatedPuzzle(gridOf('2x3'), chanceFrom(seed));
    const alone = planned(position, () => undefined);
    const others = new Set<string>();
    for (let search = 1; search <= 6; search++) {
      const better = foundElsewhere(position, { seed: search, tries: 60 });
      others.add(solved(better.at(-1) ?? []));
      const plan = planned(position, () => better.pop());
      expect([alone.outcome, plan.outcome]).toEqual(['least', 'least']);
      expect(argumentsOf(plan)).toEqual(argumentsOf(alone));
    }
    expect(others.size).toBeGreaterThan(1);
  });
});

describe('the least costly choice that meets all landmarks', () => {
  it('is that of all choices', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const chance = chanceFrom(seed);
      const prices = Array.from({ length: 9 }, () => 1 + chance.below(6));
      const landmarks = Array.from({ length: 1 + chance.below(7) }, () =>
        prices.flatMap((_, thing) => (chance.below(3) === 0 ? [thing] : [])),
      );
      let least = Number.POSITIVE_INFINITY;
      for (let choice = 0; choice < 2 ** prices.length; choice++) {
        const has = (thing: number) => ((choice >> thing) & 1) === 1;
        if (!landmarks.every((things) => things.some(has))) continue;
        least = Math.min(
          least,
          prices.reduce((sum, price, thing) => sum + (has(thing) ? price : 0), 0),
        );
      }
      const found = leastHitting(landmarks, prices);
      expect(found?.cost).toBe(least);
      if (Number.isFinite(least))
        expect(landmarks.every((things) => things.some((thing) => found?.chosen.includes(thing)))).toBe(true);
    }
  });
});
