/**
 * A render that is interrupted from outside, in a process of its own: Control-C, a polite kill, a closed terminal (POSIX SIGINT,
 * SIGTERM, SIGHUP) leave neither a part file nor a running encoder.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);
const script = fileURLToPath(new URL('interrupted-render.ts', import.meta.url));

it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)('%s', async (name) => {
  const render = spawn(process.execPath, ['--import', 'tsx', script, scratch.at('long.mp4')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = once(render, 'exit');
  await once(render.stdout, 'data');
  const encoders = encodersOf(render.pid!);
  expect(encoders.length).toBeGreaterThan(0);
  expect(scratch.list().length).toBeGreaterThan(0);
  expect(scratch.list().filter((file) => !file.startsWith('.'))).toEqual([]);
  render.kill(name);
  expect(await ended).toEqual([130, null]);
  expect(scratch.list()).toEqual([]);
  for (const pid of encoders) expect(() => process.kill(pid, 0)).toThrow('ESRCH');
});

/** Process numbers by proc(5): the second field of `stat` is the name, the fourth the parent. */
function encodersOf(parent: number): readonly number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((pid) => {
      try {
        return new RegExp(`\\(ffmpeg\\) \\S ${parent} `).test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
      } catch {
        return false; // It has ended in the meantime.
      }
    })
    .map(Number);
}
