/**
 * Plans, replayed by the kernel alone to the solution of the project's search for solutions, which the benchmark `counting`
 * holds against two general libraries.
 */
import { describe, expect, it } from 'vitest';
import { isSame, setOf } from '../../src/grid/candidates.ts';
import { gridOf } from '../../src/grid/grid.ts';
import { planFor } from '../../src/plan/plan.ts';
import { after, prove } from '../../src/proof/kernel.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from '../techniques/generated-positions.ts';
import { costs } from './costs.ts';

const seeds = [3, 4, 5, 6, 14];

/** A search that ends after a number of questions is the same on every machine. */
function times(count: number): () => boolean {
  let left = count;
  return () => --left > 0;
}

describe('a plan', () => {
  it.each(seeds)('leads by proofs alone to the solution (seed %i)', (seed) => {
    const { position, solution } = generatedPuzzle(gridOf('3x3'), chanceFrom(seed));
    const plan = planFor(position, { costs, keepGoing: times(400) });
    let reached = position;
    for (const step of plan.steps) {
      expect(isSame(step.position.possible, reached.possible)).toBe(true);
      const proofs = step.instance.conclusions.map((conclusion) => {
        const outcome = prove(step.position, step.instance.sets, conclusion);
        if (outcome.kind !== 'proved') throw new Error(`${step.name} is ${outcome.kind}`);
        return outcome.proof;
      });
      reached = after(step.position, proofs);
    }
    expect(isSame(reached.placed, setOf(position.grid, solution))).toBe(true);
  });
});
