/**
 * The steps of the example scenes that give a name, each with the position it is in and the judgement it must get.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { buildArgument, givesAnArgument } from '../../src/check/argument.ts';
import type { CheckedStep } from '../../src/check/verdict.ts';
import { difference, membersOf } from '../../src/grid/candidates.ts';
import type { Grid } from '../../src/grid/grid.ts';
import type { Conclusion } from '../../src/grid/terms.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { begin, type Position, takeAsRead } from '../../src/proof/kernel.ts';
import type { ArgumentName } from '../../src/techniques/all-techniques.ts';
import type { Shape } from '../../src/techniques/technique.ts';

export interface NamedStep {
  /** The scene and the step. */
  readonly where: string;
  readonly name: ArgumentName;
  readonly position: Position;
  /** Undefined if the step gives no argument. */
  readonly shape: Shape | undefined;
  readonly conclusions: readonly Conclusion[];
  readonly misnamed: boolean | undefined;
  readonly found: boolean | undefined;
  readonly verdict: string | undefined;
}

/** All steps with `because` of the scenes of a folder, with the expectations next to them in `.expected.json`. */
export function namedSteps(folder: string): NamedStep[] {
  const scenes = readdirSync(folder).filter((file) => file.endsWith('.yaml') && !file.startsWith('unreadable'));
  return scenes.flatMap((file) => {
    const { scene } = readScene(readFileSync(`${folder}/${file}`, 'utf8'));
    const expected = JSON.parse(readFileSync(`${folder}/${file.replace('.yaml', '.expected.json')}`, 'utf8'));
    if (scene === undefined) return [];
    const checked = checkScene(scene);
    /** What earlier steps must prove by arguments that are searched for. */
    const foundBefore: Conclusion[] = [];
    return checked.steps.flatMap((step): NamedStep[] => {
      const name = step.step.because?.name;
      if (name === undefined) return [];
      const oneSolution = scene.puzzle.uniqueness === 'allowed' && checked.solutions === 1;
      const position = foundBefore.reduce(takeAsRead, positionOf(scene.puzzle.grid, step, oneSolution));
      const { so } = step.step;
      const conclusions = so?.kind === 'listed' ? so.conclusions.map((each) => each.value) : [];
      const wanted = expected.steps?.[step.step.id] ?? {};
      if (wanted.found === true && wanted.verdict === 'proved') foundBefore.push(...conclusions);
      return [
        {
          where: `${file.replace('.yaml', '')} ${step.step.id}`,
          name,
          position,
          shape: givesAnArgument(step.step) ? shapeOf(position, step, conclusions) : undefined,
          conclusions,
          misnamed: wanted.misnamed,
          found: wanted.found,
          verdict: wanted.verdict,
        },
      ];
    });
  });
}

/** The position before the step: what stood on the board, and what was possible. */
function positionOf(grid: Grid, step: CheckedStep, oneSolution: boolean): Position {
  const start = begin(grid, membersOf(step.placedBefore), { oneSolution });
  return membersOf(difference(start.possible, step.possibleBefore)).reduce(
    (position, candidate) => takeAsRead(position, { kind: 'impossible', candidate }),
    start,
  );
}

function shapeOf(position: Position, { step }: CheckedStep, conclusions: readonly Conclusion[]): Shape {
  const built = buildArgument(
    position,
    { ...step, from: step.from.filter((set) => set.value.kind !== 'step') },
    new Map(),
  );
  return {
    position,
    sets: built.sets.map((named) => named.set),
    chains: step.chains.map((chain) => chain.value),
    deadly: step.deadly?.value,
    conclusions,
  };
}
