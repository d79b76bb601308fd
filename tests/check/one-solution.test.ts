/** Which steps assume that the puzzle has one solution by their own argument, and which rest on an earlier one that does. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';

const scene = readFileSync(new URL('../../scenes/names/unique-rectangle-type-2.yaml', import.meta.url), 'utf8');
const upToSteps = scene.slice(0, scene.indexOf('steps:\n'));

/** Each step's id with what it says of the assumption: `itself`, `inherited`, both or neither. */
function assumptions(steps: string): string[] {
  const read = readScene(`${upToSteps}steps:\n${steps}`);
  if (read.scene === undefined) throw new Error(read.diagnostics[0]?.message);
  return checkScene(read.scene).steps.map(({ step, verdict, assumesOneSolution, inheritsOneSolution }) =>
    [step.id, verdict, ...(assumesOneSolution ? ['itself'] : []), ...(inheritsOneSolution ? ['inherited'] : [])].join(
      ' ',
    ),
  );
}

it('a step with guardians assumes it itself', () => {
  expect(assumptions('  - {id: ur, deadly: 28r78c26, so: r5c2<>7}\n')).toEqual(['ur proved itself']);
});

it('a step that draws on an either/or of guardians assumes it itself, and inherits it too', () => {
  const steps = `  - {id: ur, deadly: 28r78c26, so: either 7r7c2 7r8c2}
  - {id: drawn, from: step ur, so: r5c2<>7}
  - {id: last, from: 9r5, so: all}
`;
  expect(assumptions(steps).slice(0, 2)).toEqual(['ur proved itself', 'drawn proved itself inherited']);
});

it('a step inherits it where its sets are what they are because of it alone', () => {
  const steps = `  - {id: ur, deadly: 28r78c26, so: r5c2<>7 r9c3<>7}
  - {id: inherits, from: 7r9, so: r7c5<>7}
  - {id: single, so: r9c3=2}
  - {id: further, from: 7b4, so: r5c3<>4}
`;
  expect(assumptions(steps)).toEqual([
    'ur proved itself',
    'inherits proved inherited',
    'single proved inherited',
    'further proved inherited',
  ]);
});

it('a step that holds all the same does not inherit it', () => {
  const steps = `  - {id: apart, deadly: 28r78c26, so: r5c2<>7}
  - {id: needs, from: 7r9, so: r7c5<>7}
  - {id: same, deadly: 28r78c26, so: r9c3<>7}
`;
  expect(assumptions(steps)).toEqual(['apart proved itself', 'needs unproved', 'same proved itself']);
});
