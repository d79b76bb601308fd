/**
 * The recipes of README.md followed to the letter, each machine in a folder of its own: the joined video is, to the
 * byte, that of a render in one go.
 *
 * What an artifact holds and where it is put comes from the descriptions of actions/upload-artifact and
 * actions/download-artifact, v4: of files found by a pattern the folder that they share is left out, and with
 * `merge-multiple` all are put into one folder.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { describeWith } from '../programs.ts';
import { type Job, machines, matrixPart, recipe, take, workflow } from './recipes.ts';

const { at, checkout, run, remove } = machines();
afterAll(remove);

let whole: Buffer;
beforeAll(() => {
  run(checkout('whole'), 'npx proofreel render lesson.yaml -o lesson.mp4 --no-cache');
  whole = readFileSync(at('whole/lesson.mp4'));
});

it('as a workflow', () => {
  const { part, join: last } = workflow().jobs;
  for (const number of part.strategy?.matrix.part ?? []) follow(part, checkout(`machine-${number}`), String(number));
  follow(last, checkout('last'), '');
  expect(readFileSync(at('artifacts/lesson/lesson.mp4')).equals(whole)).toBe(true);
});

/** Runs the steps of a job in a checkout; Node and what is installed are those of this machine. */
function follow(job: Job, folder: string, part: string): void {
  const filled = (text: unknown): string => String(text).replace(matrixPart, part);
  const done: string[] = [];
  for (const step of job.steps) {
    if ('run' in step) {
      if (!/^sudo apt-get /.test(step.run)) run(folder, filled(step.run));
      done.push('run');
      continue;
    }
    const { uses, with: given = {} } = step;
    const [action] = uses.split('@');
    done.push(action ?? '');
    if (action === 'actions/upload-artifact')
      expect(take(folder, filled(given.path), join(at('artifacts'), filled(given.name)))).not.toEqual([]);
    if (action === 'actions/download-artifact')
      for (const name of take(at('artifacts'), filled(given.pattern), at('found')))
        take(join(at('found'), name), '*', folder);
  }
  expect(done.slice(0, 3)).toEqual(['actions/checkout', 'actions/setup-node', 'run']);
}

describeWith(['parallel'], 'with GNU parallel', () => {
  it('on machines that are all this one', () => {
    const folder = checkout('parallel');
    // `:` is what GNU parallel calls the machine on which it runs.
    const lines = recipe('sh').replace('--sshlogin one,two', '--sshlogin :');
    expect(lines).toContain('--sshlogin :');
    run(folder, lines);
    expect(readFileSync(join(folder, 'lesson.mp4')).equals(whole)).toBe(true);
  });
});
