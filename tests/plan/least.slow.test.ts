/**
 * The same as in `least.test.ts`, on a 9x9 board, where a search takes seconds.
 */
import { describe, expect, it } from 'vitest';
import { gridOf } from '../../src/grid/grid.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from '../techniques/generated-positions.ts';
import { argumentsOf, foundElsewhere, planned } from './elsewhere.ts';

describe('one of several plans of least cost', () => {
  const { position } = generatedPuzzle(gridOf('3x3'), chanceFrom(4));
  const alone = planned(position, () => undefined);

  // With seed 2, another path of the same cost is found elsewhere, and first.
  it.each([1, 2, 3])('is the same whatever was found elsewhere, and when (9x9, seed %i)', (seed) => {
    const better = foundElsewhere(position, { seed, tries: 400 });
    const plan = planned(position, () => better.pop());
    expect([alone.outcome, plan.outcome]).toEqual(['least', 'least']);
    expect(argumentsOf(plan)).toEqual(argumentsOf(alone));
  });
});
