/**
 * The workflow of README.md, read as the syntax of GitHub Actions has it: its parts are all of the parts, and the last
 * job finds each of them. That its lines do what they should is in `recipes.slow.test.ts`.
 */
import { expect, it } from 'vitest';
import { matrixPart, recipe, workflow } from './recipes.ts';

const { part, join } = workflow().jobs;
const linesOf = ({ steps }: typeof part): readonly string[] => steps.flatMap((step) => ('run' in step ? step.run : []));
const withOf = ({ steps }: typeof part, action: string) =>
  steps.flatMap((step) => ('uses' in step && step.uses.startsWith(action) ? [step.with ?? {}] : []));

it('makes each part once, on as many machines', () => {
  const parts = part.strategy?.matrix.part ?? [];
  const [line] = linesOf(part).filter((line) => line.includes('--part'));
  const of = Number(/--part \$\{\{ matrix\.part \}\}\/(\d+)$/.exec(line ?? '')?.[1]);
  expect(parts).toEqual(Array.from({ length: of }, (_, index) => index + 1));
  expect(join.needs).toBe('part');
});

it('has the same machines, Node and programs everywhere, for parts of different ones are refused', () => {
  expect(part['runs-on']).toBe(join['runs-on']);
  const [one, other] = [part, join].map((job) => withOf(job, 'actions/setup-node@')[0]);
  expect(one).toEqual(other);
  expect(one?.['node-version']).toMatch(/^\d+\.\d+\.\d+$/);
  const installs = [part, join].map((job) => linesOf(job).filter((line) => /apt-get|npm ci/.test(line)));
  expect(installs[0]).toEqual(installs[1]);
});

it('hands on what the parts are called', () => {
  const [up] = withOf(part, 'actions/upload-artifact@');
  const [down] = withOf(join, 'actions/download-artifact@');
  // An artifact of that name may be there once: each part has its own.
  expect(up?.name).toMatch(matrixPart);
  expect(down).toEqual({ pattern: String(up?.name).replace(matrixPart, '*'), 'merge-multiple': true });
  expect(linesOf(join).at(-1)).toContain(` ${up?.path} `);
});

it('speaks of the same lesson as the lines for GNU parallel', () => {
  const [last] = linesOf(join).slice(-1);
  expect(recipe('sh').trim().split('\n').at(-1)).toBe(last?.replace('-of-4', '-of-8'));
});
