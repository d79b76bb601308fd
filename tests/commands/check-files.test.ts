/** What `check` writes in addition to its report: the fixed scene, the scene written out, certificates. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { afterAll, expect, it } from 'vitest';
import { scratchFolder } from '../output/outside.ts';
import { run } from './run.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const towers = readFileSync('scenes/two-towers.yaml', 'utf8');
const written = (name: string, text: string): string => {
  writeFileSync(scratch.at(name), text);
  return scratch.at(name);
};

it('--fix writes a copy that is sound, and leaves the scene as it is', async () => {
  const bad = written('bad.yaml', towers.replace('r6c46<>3', 'r6c46<>3 r1c1<>3'));
  const before = readFileSync(bad, 'utf8');
  const { status, err } = await run('check', bad, '--fix', scratch.at('fixed.yaml'));
  expect(status).toBe(1);
  expect(err).toMatch(/fixed\.yaml: 1 (fixed|taken out), and is sound\n {2}towers: /);
  expect((await run('check', scratch.at('fixed.yaml'))).status).toBe(0);
  expect(readFileSync(bad, 'utf8')).toBe(before);
  expect(readFileSync(scratch.at('fixed.yaml'), 'utf8')).toContain('#');
});

it('--spell-out writes each `so: all` as its list', async () => {
  const all = written('all.yaml', towers.replace('so: r5c1<>3 r6c46<>3', 'so: all'));
  const { status, err } = await run('check', all, '--spell-out', scratch.at('spelled.yaml'));
  expect([status, err]).toEqual([0, `${scratch.at('spelled.yaml')}: written with every \`so: all\` written out\n`]);
  const text = readFileSync(scratch.at('spelled.yaml'), 'utf8');
  expect(text).not.toContain('so: all');
  expect(text).toMatch(/so: .*r5c1<>3/);
  expect((await run('check', scratch.at('spelled.yaml'))).status).toBe(0);
});

it('--cnf writes a certificate of each conclusion', async () => {
  const { status, err } = await run('check', 'scenes/two-towers.yaml', '--cnf', scratch.at('cnf'));
  const names = readdirSync(scratch.at('cnf'));
  expect([status, err]).toEqual([0, `${scratch.at('cnf')}: ${names.length} certificates\n`]);
  expect(names.length).toBeGreaterThan(1);
  for (const name of names) expect(readFileSync(scratch.at(`cnf/${name}`), 'utf8')).toMatch(/^p cnf \d+ \d+$/m);
});
