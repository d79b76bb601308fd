import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';

it('an either/or with one member already placed says nothing new, and can be used anyway', () => {
  const { scene, diagnostics } = readScene(`proofreel: 1
puzzle:
  boxes: 2x2
  givens: 1... ..1. .1.4 ..2.
steps:
  - {id: fill, so: r3c1=2}
  - {id: pair, from: r3c1, so: either 2r3c1 2r3c3}
  - {id: on, from: step pair, so: r4c1<>2}
`);
  if (scene === undefined) throw new Error(diagnostics[0]?.message);
  const checked = checkScene(scene);
  expect(checked.steps.map((step) => [step.step.id, step.verdict, step.sound])).toEqual([
    ['fill', 'proved', true],
    ['pair', 'redundant', true],
    ['on', 'redundant', true],
  ]);
  expect(checked.steps[2]?.argument.sets.map((set) => set.name)).toEqual(['step pair']);
});
