/**
 * Plans of many puzzles, made again by the kernel alone: each that reaches the goal ends in the solution of an independent
 * solver (a general exact cover library), and each that does not keeps everything that is true. `PLANS=50` for fewer.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isWithin, setOf } from '../../src/grid/candidates.ts';
import { isSame } from '../../src/grid/counting.ts';
import { digit } from '../../src/grid/geometry.ts';
import { candidateAt, gridOf } from '../../src/grid/grid.ts';
import { planFor } from '../../src/plan/plan.ts';
import { begin, type Position } from '../../src/proof/kernel.ts';
import { exactCoverOn } from '../grid/solution-oracles.ts';
import { chanceFrom } from '../random.ts';
import { generatedPuzzle } from '../techniques/generated-positions.ts';
import { costs } from './costs.ts';
import { replayed } from './replayed.ts';
import { times } from './times.ts';

const grid = gridOf('3x3');
const count = Number(process.env.PLANS ?? 1000);

function* puzzles(): Generator<readonly [name: string, start: Position]> {
  const lines = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8')
    .trim()
    .split('\n');
  for (let index = 0; index < count / 2; index++) {
    const line = lines[index % lines.length]!;
    const givens = grid.cells.flatMap((cell) =>
      line[cell] === '0' ? [] : [candidateAt(grid, cell, digit(grid, Number(line[cell])))],
    );
    yield [`line ${index + 1}`, begin(grid, givens, { oneSolution: true })];
    yield [`seed ${index + 1}`, generatedPuzzle(grid, chanceFrom(index + 1)).position];
  }
}

describe(`${count} plans`, () => {
  it('end in the solution, or short of it with nothing true removed', { timeout: 3_600_000 }, () => {
    const solve = exactCoverOn(grid);
    let reached = 0;
    for (const [name, start] of puzzles()) {
      const [solution, ...others] = solve(start.possible, 2).map((each) => setOf(grid, each));
      expect([name, others.length]).toEqual([name, 0]);
      const plan = planFor(start, { costs, keepGoing: times(250) });
      const end = replayed(plan);
      expect([name, isWithin(solution!, end.possible)]).toEqual([name, true]);
      if (plan.outcome !== 'least' && plan.outcome !== 'found') continue;
      reached++;
      expect([name, isSame(end.placed, solution!)]).toEqual([name, true]);
      expect(plan.atLeast).toBeLessThanOrEqual(plan.cost);
    }
    expect(reached).toBeGreaterThan(count / 2);
  });
});
