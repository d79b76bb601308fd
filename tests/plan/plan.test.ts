/**
 * Plans, replayed by the kernel alone to the solution of the project's search for solutions, which the benchmark `counting`
 * holds against two general libraries.
 */
import { describe, expect, it } from 'vitest';
import { setOf } from '../../src/grid/candidates.ts';
import { isSame } from '../../src/grid/counting.ts';
import { gridOf } from '../../src/grid/grid.ts';
import { isSolved, moveOf } from '../../src/plan/move.ts';
import { type Plan, planFor } from '../../src/plan/plan.ts';
import { replay } from '../../src/plan/replay.ts';
import { restricted } from '../../src/plan/teaching.ts';
import { techniqueNamed } from '../../src/techniques/all-techniques.ts';
import { recogniseIn } from '../../src/techniques/judge-name.ts';
import { chanceFrom } from '../random.ts';
import { type Generated, generatedPuzzle } from '../techniques/generated-positions.ts';
import { costs } from './costs.ts';
import { replayed } from './replayed.ts';
import { times } from './times.ts';

/** Puzzles that singles alone do not carry. */
const planned = [3, 4, 5, 6, 9].map((seed): Generated & { readonly seed: number; readonly plan: Plan } => {
  const puzzle = generatedPuzzle(gridOf('3x3'), chanceFrom(seed));
  return { ...puzzle, seed, plan: planFor(puzzle.position, { costs, keepGoing: times(600) }) };
});

const hardMoves = ({ steps }: Plan) =>
  steps.flatMap(({ name, cost, instance }) => (cost > 0 ? (moveOf(name, cost, instance) ?? []) : []));

describe.each(planned)('the plan of seed $seed', ({ position, solution, plan }) => {
  it('leads by proofs alone to the solution', () => {
    expect(isSame(replayed(plan).placed, setOf(position.grid, solution))).toBe(true);
  });

  it('bears its names', () => {
    for (const { name, instance, position: at } of plan.steps) {
      const technique = techniqueNamed(name);
      const chains = instance.chain === undefined ? [] : [instance.chain];
      expect([name, recogniseIn(technique, { ...instance, position: at, chains })?.kind]).toEqual([name, 'fits']);
    }
  });

  it('needs each of its arguments and each of their conclusions', () => {
    const moves = hardMoves(plan);
    const leadsThere = (some: typeof moves) =>
      isSolved(replay(position, some, { free: costs.free, keepFree: false }).end);
    expect(leadsThere(moves)).toBe(true);
    for (const [index, move] of moves.entries()) {
      expect(leadsThere(moves.toSpliced(index, 1))).toBe(false);
      if (move.conclusions.length === 1) continue;
      for (const one of move.conclusions) {
        const conclusions = move.conclusions.filter((each) => each !== one);
        const leaner = replay(position, moves.with(index, { ...move, conclusions }), {
          free: costs.free,
          keepFree: false,
        });
        expect(isSolved(leaner.end) && leaner.made.length === moves.length).toBe(false);
      }
    }
  });

  it('says what rests on what', () => {
    for (const [index, { restsOn, opens }] of plan.steps.entries()) {
      expect(restsOn.every((other) => other < index && plan.steps[other]!.opens.includes(index))).toBe(true);
      expect(opens.every((other) => plan.steps[other]!.restsOn.includes(index))).toBe(true);
    }
    const hard = plan.steps.filter(({ cost }) => cost > 0);
    expect(hard.every(({ opens, instance }) => opens.length > 0 || instance.conclusions[0]?.kind === 'one-of')).toBe(
      true,
    );
  });
});

describe('a puzzle that the arguments do not carry', () => {
  it('ends in a position in which none of them says anything new', () => {
    const { position } = generatedPuzzle(gridOf('3x3'), chanceFrom(5));
    const few = restricted(costs, (name) => costs.free.includes(name) || name === 'X-wing');
    const plan = planFor(position, { costs: few, keepGoing: times(1000) });
    expect(plan.outcome).toBe('stuck');
    for (const name of [...costs.free, 'X-wing'] as const) {
      const found = [...techniqueNamed(name).find(plan.end)];
      expect(found.filter(({ conclusions }) => conclusions.length > 0)).toEqual([]);
    }
  });
});

describe('a goal short of the whole board', () => {
  it('takes no more than leads there', () => {
    const { position, solution } = generatedPuzzle(gridOf('3x3'), chanceFrom(5));
    const whole = planFor(position, { costs, keepGoing: times(600) });
    const first = whole.steps[2]!.instance.conclusions[0]!;
    const until = solution.filter(
      (each) => first.kind === 'one-of' && isSame(setOf(position.grid, [each]), first.candidates),
    );
    const plan = planFor(position, { costs, keepGoing: times(600), until });
    expect(plan.outcome).toBe('least');
    expect(plan.cost).toBe(0);
    expect(plan.steps.length).toBeLessThanOrEqual(3);
  });
});
