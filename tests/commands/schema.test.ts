/** `schema`: each option prints the schema that is published. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { run } from './run.ts';

it.each([
  [['schema'], 'scene'],
  [['schema', '--report'], 'report'],
  [['schema', '--look'], 'look'],
  [['schema', '--costs'], 'teaching-costs'],
  [['schema', '--plan'], 'plan'],
  [['schema', '--alternatives'], 'ways'],
  [['schema', '--phrases'], 'phrases'],
  [['schema', '--locate'], 'locate'],
])('%j prints assets/schemas/%s.json', async (call, name) => {
  const published = readFileSync(`assets/schemas/${name}.json`, 'utf8');
  expect(await run(...call)).toEqual({ status: 0, out: published, err: '' });
});

it('prints one at a time', async () => {
  const { status, err } = await run('schema', '--report', '--plan');
  expect([status, err]).toEqual([2, 'proofreel: --report and --plan are two schemas; ask for one at a time\n']);
});
