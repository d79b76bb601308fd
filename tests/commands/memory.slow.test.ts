/**
 * An hour in 4K, from the command line, below 600 MB: all processes of the render together, ffmpeg and the translation
 * from TypeScript included. What a process shares with others counts by its part (proportional set size: Linux, proc(5),
 * smaps_rollup). Measured 5 times a second.
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { scratchFolder } from '../output/outside.ts';
import { hasProcesses, noProcesses, pause, processes } from '../processes.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const root = fileURLToPath(new URL('../..', import.meta.url));
const most = 600;

/** Two marks that come one upon the other in each step, then nothing moves. */
function lesson(steps: number, secondsEach: number, size: string, rate: number): string {
  const puzzles = readFileSync(new URL('../data/minimum-17.txt', import.meta.url), 'utf8');
  const step = (_: unknown, index: number): string =>
    `  - {id: s${index}, at: ${secondsEach * index}, show: [{fill: r${1 + (index % 9)}c1}, {outline: b${1 + (index % 9)}, at: +0.1}]}`;
  return `proofreel: 1
puzzle: {givens: '${puzzles.split('\n')[0]?.trim()}'}
video: {size: ${size}, rate: ${rate}, length: ${steps * secondsEach}, draw: board}
steps:
${Array.from({ length: steps }, step).join('\n')}
`;
}

describe('an hour', () => {
  it.skipIf(hasProcesses).each(noProcesses)('is not measured here: $why', () => undefined);

  it.runIf(hasProcesses).each([
    { what: 'in 4K at 60 a second', steps: 5, size: '3840x2160', rate: 60 },
    { what: 'of 60 steps, on small frames', steps: 60, size: '320x180', rate: 30 },
  ])('$what', async ({ steps, size, rate }) => {
    writeFileSync(scratch.at('hour.yaml'), lesson(steps, 3600 / steps, size, rate));
    const peak = await peakOf([
      'render',
      scratch.at('hour.yaml'),
      '-o',
      scratch.at('hour.mp4'),
      '--no-cache',
      '--quiet',
    ]);
    expect(peak).toBeGreaterThan(50);
    expect(peak).toBeLessThan(most);
    expect(framesOf(scratch.at('hour.mp4'))).toBe(3600 * rate);
  });
});

/** As the file's tables say: to decode an hour takes longer than to make it. */
function framesOf(file: string): number {
  const words = ['-v', 'error', '-select_streams', 'v:0', '-show_entries', 'stream=nb_frames', '-of', 'csv=p=0', file];
  return Number(execFileSync('ffprobe', words, { encoding: 'utf8' }));
}

/** In MB, of the program and all that it starts. */
async function peakOf(words: readonly string[]): Promise<number> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli.ts', ...words], {
    ...{ cwd: root, stdio: 'ignore' },
  });
  const ended = once(child, 'exit');
  let isOver = false;
  void ended.finally(() => {
    isOver = true;
  });
  let peak = 0;
  while (!isOver) {
    peak = Math.max(
      peak,
      treeOf(child.pid!).reduce((sum, pid) => sum + megabytesOf(pid), 0),
    );
    await pause(200);
  }
  expect(await ended).toEqual([0, null]);
  return peak;
}

function treeOf(root: number): readonly number[] {
  const all = processes();
  const tree = [root];
  for (const parent of tree) tree.push(...all.filter((one) => one.parent === parent).map(({ pid }) => pid));
  return tree;
}

function megabytesOf(pid: number): number {
  try {
    const said = /^Pss:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, 'utf8'));
    return Number(said?.[1] ?? 0) / 1024;
  } catch {
    return 0; // It has ended in the meantime.
  }
}
