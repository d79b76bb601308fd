/** Every code of what is wrong with a step as a whole is given by a small scene, and not by the same scene put right. */
import { expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import type { stepCodes } from '../../src/scene/codes.ts';
import { skyscraper, towers } from '../staging/stage.ts';

interface Row {
  readonly steps: string;
  /** What to write in place of a part of the steps, so that the code is not given. */
  readonly right: readonly [faulty: string, right: string];
  readonly text?: (steps: string) => string;
}

/** Of 81 cells one is a given. */
const open = (steps: string) => `proofreel: 1\npuzzle: {givens: '${'.'.repeat(80)}9'}\nsteps:\n${steps}\n`;
const tooLarge = 'from: r5c123456 r1c123456789, so: either 1r1c123456789 123r5c123456, fails: true';

const rows: Readonly<Record<keyof typeof stepCodes, Row>> = {
  'weak-after-weak': { steps: '{id: s, chain: (3)r6c3-r1c3-r1c5=r5c5}', right: ['r6c3-r1c3', 'r6c3=r1c3'] },
  'deadly-refused': { steps: '{id: s, deadly: 12r12c13, so: r1c1<>2}', right: ['deadly: 12r12c13', 'from: 3c3'] },
  'no-argument': { steps: '{id: s, because: skyscraper, from: 3c4, so: all}', right: ['3c4', '3c35'] },
  'either-unproved': {
    steps: '{id: e, from: 3c4, so: either 3r1c3 3r1c4}\n  - {id: s, from: step e, so: r1c1<>3}',
    right: ['3r1c4', '3r6c3 3r1c4 3r2c4 3r5c4 3r6c4'],
  },
  'says-false': {
    steps: "{id: s, from: 3c35, so: r6c46<>3, show: [{note: 'So r6c3≠3 as well'}]}",
    right: ['r6c3≠3', 'r6c6≠3'],
  },
  'false-step-holds': { steps: `{id: s, ${skyscraper}, fails: true}`, right: ['r1c3-r1c5=r5c5', 'r1c3-r1c4=r5c4'] },
  'false-step-given': { steps: '{id: s, from: 3c3, so: r6c1=5, fails: true}', right: ['r6c1=5', 'r6c4<>3'] },
  'false-step-redundant': {
    steps: `{id: first, ${skyscraper}}\n  - {id: s, from: 3c3, so: r6c4<>3, fails: true}`,
    right: [' r6c46<>3', ' r6c6<>3'],
  },
  'false-step-bare': { steps: '{id: s, because: X-wing, so: r6c4<>3, fails: true}', right: ['so:', 'from: 3c3, so:'] },
  'false-step-undecided': { steps: `{id: s, ${tooLarge}}`, right: [' 123r5c123456,', ' 1r5c1,'], text: open },
};

function codesOf(steps: string, text: (steps: string) => string): string[] {
  const { scene, diagnostics } = readScene(text(`  - ${steps}`));
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const { steps: checked } = checkScene(scene);
  for (const { faults, sound } of checked) expect(sound).toBe(sound && faults.length === 0);
  return checked.flatMap(({ faults }) => faults.map(({ code }) => code));
}

it.each(Object.entries(rows))('%s', (code, { steps, right, text = towers }) => {
  expect(codesOf(steps, text)).toContain(code);
  expect(steps).toContain(right[0]);
  expect(codesOf(steps.replace(...right), text)).not.toContain(code);
});
