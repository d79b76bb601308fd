/**
 * Positions of generated puzzles with one solution: at their start, and after what easy arguments give.
 */

import { type Candidate, intersection, membersOf, setOf } from '../../src/grid/candidates.ts';
import { cellOf, type Digit, digitOf, type Grid } from '../../src/grid/grid.ts';
import { countSolutions, possibleFrom } from '../../src/grid/solutions.ts';
import { after, begin, type Position, prove } from '../../src/proof/kernel.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import { instancesOf } from '../../src/techniques/find-argument.ts';
import { randomSolution } from '../proof/positions.ts';
import type { Chance } from '../random.ts';

export interface Generated {
  readonly solution: readonly Candidate[];
  readonly position: Position;
}

const easy: readonly ArgumentName[] = [
  'naked single',
  'hidden single',
  'locked candidates',
  'naked pair',
  'hidden pair',
];

/** A puzzle from which no given can be removed. */
export function generatedPuzzle(grid: Grid, chance: Chance): Generated {
  const solution = randomSolution(grid, chance);
  const givens: (Digit | undefined)[] = grid.cells.map((cell) => digitOf(grid, solution[cell]!));
  for (const cell of chance.shuffled(grid.cells)) {
    const given = givens[cell];
    givens[cell] = undefined;
    if (countSolutions(grid, possibleFrom(grid, givens), 2) !== 1) givens[cell] = given;
  }
  const given = solution.filter((candidate) => givens[cellOf(grid, candidate)] !== undefined);
  return { solution, position: begin(grid, given, { oneSolution: true }) };
}

/** The position that is reached when easy arguments give nothing more, or after so many rounds of them. */
export function advanced(position: Position, rounds = 200): Position {
  let reached = position;
  for (let round = 0; round < rounds; round++) {
    const next = oneRound(reached);
    if (next === undefined) return reached;
    reached = next;
  }
  return reached;
}

function oneRound(position: Position): Position | undefined {
  for (const name of easy) {
    for (const { sets, conclusions } of instancesOf(position, name)) {
      const proofs = conclusions.flatMap((conclusion) => {
        const outcome = prove(position, sets, conclusion);
        return outcome.kind === 'proved' ? [outcome.proof] : [];
      });
      return after(position, proofs);
    }
  }
  return undefined;
}

/** Whether everything that is true is still possible. */
export function keepsSolution({ position, solution }: Generated): boolean {
  return membersOf(intersection(position.possible, setOf(position.grid, solution))).length === solution.length;
}
