/**
 * What a step's `suppose` starts from, and how each of its suppositions plays out.
 */
import { type Candidate, type Candidates, has, membersOf } from '../grid/candidates.ts';
import { candidateAt, candidatesInCell, type Grid } from '../grid/grid.ts';
import { printSet } from '../grid/notation/print.ts';
import type { SetName } from '../grid/terms.ts';
import type { Supposed } from '../scene/scene.ts';
import { type PlayOut, playOut, type Supposition } from './play-out.ts';
import type { CheckedStep } from './verdict.ts';

/** The parts of a step that its play-outs depend on. */
export type PlayedStep = Pick<CheckedStep, 'argument' | 'conclusions' | 'possibleBefore'>;

/**
 * The candidate, or each member of the set, that is still possible when the step begins; empty if there is nothing to
 * suppose.
 */
export function suppositionsOf(grid: Grid, step: PlayedStep, supposed: Supposed): Supposition[] {
  const isTrue = supposed.kind !== 'not';
  const candidates = supposed.kind === 'each' ? membersNamed(grid, step, supposed.set) : [supposed.candidate];
  return candidates
    .filter((candidate) => has(step.possibleBefore, candidate))
    .map((candidate) => ({ candidate, isTrue }));
}

/** The step's argument played out from the supposition, towards what its `so` concludes. */
export function playStep(grid: Grid, { argument, conclusions }: PlayedStep, supposition: Supposition): PlayOut {
  const drawn = conclusions.filter(({ origin, verdict }) => origin === 'so' && verdict !== 'redundant');
  return playOut(
    grid,
    argument,
    drawn.map(({ conclusion }) => conclusion),
    supposition,
  );
}

/** An either/or is known here only if the argument uses it. */
function membersNamed(grid: Grid, { argument }: PlayedStep, set: SetName): readonly Candidate[] {
  switch (set.kind) {
    case 'cell':
      return candidatesInCell(grid, set.cell);
    case 'places':
      return set.house.cells.map((cell) => candidateAt(grid, cell, set.digit));
    case 'step': {
      const members: Candidates | undefined = argument.sets.find(({ name }) => name === printSet(grid, set))?.members;
      return members === undefined ? [] : membersOf(members);
    }
    default:
      return set satisfies never;
  }
}
