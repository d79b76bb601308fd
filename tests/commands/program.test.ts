/**
 * The program as a process: what only a process has, its streams, its exit status and a reader that goes away. What the
 * command line says and does is tested in this process, by `run.ts`.
 */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const call = ['--import', 'tsx', 'src/cli.ts'];

it('prints data to standard output, all else to standard error, and exits with the status of the call', () => {
  const sound = spawnSync(process.execPath, [...call, 'check', 'scenes/two-towers.yaml'], {
    cwd: root,
    encoding: 'utf8',
  });
  expect(sound).toMatchObject({ status: 0, stdout: expect.stringMatching(/^sound {2}/), stderr: '' });
  const absent = spawnSync(process.execPath, [...call, 'check', 'nowhere.yaml'], { cwd: root, encoding: 'utf8' });
  expect(absent).toMatchObject({ status: 2, stdout: '', stderr: 'proofreel: there is no scene file nowhere.yaml\n' });
});

it('is quiet where its reader stops reading', async () => {
  const child = spawn(process.execPath, [...call, 'schema'], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
  // Nothing is printed before the pipe has no reader any more: the program first has to be loaded.
  child.stdout.destroy();
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const [status] = await once(child, 'close');
  expect({ status, said }).toEqual({ status: 0, said: '' });
});
