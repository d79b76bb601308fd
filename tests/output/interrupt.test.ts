/**
 * A render that is interrupted from outside, in a process of its own: Control-C, a polite kill, a closed terminal (POSIX SIGINT,
 * SIGTERM, SIGHUP) leave neither a part file nor a running encoder.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { encodersOf, hasProcesses, noProcesses, until } from '../processes.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const script = fileURLToPath(new URL('interrupted-render.ts', import.meta.url));

it.skipIf(hasProcesses).each(noProcesses)('skipped: an interrupt, for $why', () => undefined);

it.skipIf(!hasProcesses).each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('%s', async (name) => {
  const render = spawn(process.execPath, ['--import', 'tsx', script, scratch.at('long.mp4')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(render, 'exit');
  await once(render.stdout, 'data');
  const found = (): readonly number[] => encodersOf(render.pid!);
  // Between two of its pieces there is none.
  const encoders = await until('an encoder', () => (found().length > 0 ? found() : undefined));
  expect(scratch.list().length).toBeGreaterThan(0);
  expect(scratch.list().filter((file) => !file.startsWith('.'))).toEqual([]);
  render.kill(name);
  expect(await ended).toEqual([130, null]);
  expect(scratch.list()).toEqual([]);
  for (const pid of encoders) expect(() => process.kill(pid, 0)).toThrow('ESRCH');
});
