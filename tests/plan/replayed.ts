/** A plan made again by the kernel alone, step after step: no finder, no search. */
import { isSame } from '../../src/grid/counting.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { after, type Position, prove } from '../../src/proof/kernel.ts';

/** The position that the plan's proofs lead to. @throws Error where a step is not proved, or begins elsewhere than the last ended */
export function replayed({ start, steps }: Plan): Position {
  let reached = start;
  for (const { name, position, instance } of steps) {
    if (!isSame(position.possible, reached.possible) || !isSame(position.placed, reached.placed))
      throw new Error(`${name} begins in another position than the step before it left`);
    const proofs = instance.conclusions.map((conclusion) => {
      const outcome = prove(position, instance.sets, conclusion);
      if (outcome.kind !== 'proved') throw new Error(`${name} is ${outcome.kind}`);
      return outcome.proof;
    });
    reached = after(position, proofs);
  }
  return reached;
}
