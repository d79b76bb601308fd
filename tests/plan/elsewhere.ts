/**
 * A plan while another search runs beside it and hands over paths that it has found.
 */

import { improve } from '../../src/plan/improve.ts';
import { isSolved, type Move } from '../../src/plan/move.ts';
import { type Plan, planFor } from '../../src/plan/plan.ts';
import type { Position } from '../../src/proof/kernel.ts';
import { chanceFrom } from '../random.ts';
import { costs } from './costs.ts';
import { times } from './times.ts';

/** The paths that a search of so many tries finds, each of less cost than the one before. */
export function foundElsewhere(position: Position, { seed, tries }: { seed: number; tries: number }): Move[][] {
  const better: Move[][] = [];
  const chance = chanceFrom(seed);
  improve(position, {
    costs,
    isReached: isSolved,
    keepGoing: times(tries),
    below: () => Number.POSITIVE_INFINITY,
    chance: () => chance.below(1000) / 1000,
    onBetter: (moves) => void better.push([...moves]),
  });
  return better;
}

/** The plan for the whole board, which asks for paths found elsewhere as it goes. */
export function planned(position: Position, elsewhere: () => readonly Move[] | undefined): Plan {
  return planFor(position, { costs, keepGoing: times(1_500), foundElsewhere: elsewhere });
}

/** What the plan says, step by step. */
export function argumentsOf({ steps }: Plan) {
  return steps.map(({ name, instance }) => [name, instance.conclusions]);
}
