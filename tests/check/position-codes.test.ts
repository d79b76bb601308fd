/** Every code that only the position reveals is given by a small scene, and not by the same scene corrected. */
import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import type { positionCodes } from '../../src/scene/codes.ts';
import { skyscraper, towers } from '../staging/stage.ts';

interface Row {
  readonly steps: string;
  /** What to write in place of a part of the steps, so that the code is not given. */
  readonly right: readonly [faulty: string, right: string];
}

const rows: Readonly<Record<keyof typeof positionCodes, Row>> = {
  'sight-without-digit': { steps: '{id: s, show: [{sight: 5r3c5}]}', right: ['5r3c5', '3r3c2'] },
  'circle-on-nothing': { steps: '{id: s, show: [{circle: 6r1c1 2r1c1}]}', right: [' 2r1c1', ''] },
  'sides-of-nothing': { steps: `{id: s, ${skyscraper}, show: [{sides: 3r6c4}]}`, right: ['3r6c4', '3r1c3'] },
  'suppose-nothing': { steps: `{id: s, ${skyscraper}, show: [{suppose: 2r1c1}]}`, right: ['2r1c1', '3r6c4'] },
  'suppose-not-forced': {
    steps: `{id: s, ${skyscraper}, show: [{suppose: no 3r1c4}]}`,
    right: ['no 3r1c4', 'no 3r6c3'],
  },
  'idle-cell': { steps: '{id: s, chain: (3)r6c3=r12c3}', right: ['r12c3', 'r1c3'] },
  'not-locked': { steps: '{id: s, chain: (3=6)r16c3}', right: ['(3=6)r16c3', '(3)r1c3=r6c3'] },
  spent: { steps: '{id: s, so: r1c1<>2}', right: ['so: r1c1<>2', skyscraper] },
  stale: { steps: '{id: s, pencil: 12346r1c1}', right: ['12346', '1346'] },
  'nothing-proved': { steps: '{id: s, from: 3c4, so: all}', right: ['3c4', '3c35'] },
  'says-unproved': { steps: "{id: s, title: 'Now r1c3≠3', from: 3c35, so: r6c46<>3}", right: ['r1c3≠3', 'r6c4≠3'] },
  'name-loosely': {
    steps: `{id: s, because: grouped AIC, ${skyscraper}}`,
    right: ['grouped AIC', 'AIC'],
  },
};

function codesOf(steps: string): string[] {
  const { scene, diagnostics } = readScene(towers(`  - ${steps}`));
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const checked = checkScene(scene);
  return [...checked.errors, ...checked.warnings].map(({ code }) => code);
}

it.each(Object.entries(rows))('%s', (code, { steps, right }) => {
  expect(codesOf(steps)).toContain(code);
  expect(steps).toContain(right[0]);
  expect(codesOf(steps.replace(...right))).not.toContain(code);
});
