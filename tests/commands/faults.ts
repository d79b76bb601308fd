/**
 * What is common to the tests of faults: a scene that takes minutes to render, a render of it in a session of its own,
 * and what of that session is still running. Processes are read from /proc (Linux, proc(5)).
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

export const root = fileURLToPath(new URL('../..', import.meta.url));
/** Of a process on its way out, and of one that waits for its parent to ask how it ended. */
const gone = new Set(['Z', 'X']);

/** A scratch folder with the scenes `long.yaml` and `short.yaml` in it. */
export function faultsFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-faults-'));
  const at = (name: string): string => join(folder, name);
  writeFileSync(at('long.yaml'), sceneOf(150, 310, 'board'));
  writeFileSync(at('short.yaml'), sceneOf(1, 3, 'board'));
  writeFileSync(at('clear.yaml'), sceneOf(150, 310, 'overlay'));
  return {
    folder,
    at,
    remove: () => rmSync(folder, { recursive: true, force: true }),
    /** Words of a call of `render`, from the root of the project. */
    words: (out: string, scene = 'long.yaml'): string[] => [
      ...['--import', 'tsx', 'src/cli.ts', 'render', at(scene), '-o', at(out), '--no-cache', '--quiet'],
    ],
    /** An older file or folder of that name, which must be there unchanged afterwards. */
    older(out: string): { readonly expectWhole: () => void } {
      const file = out.endsWith('/') ? `${out}000000.png` : out;
      if (out.endsWith('/')) mkdirSync(at(out), { recursive: true });
      writeFileSync(at(file), 'an older one');
      return {
        expectWhole: () => {
          expect(readFileSync(at(file), 'utf8')).toBe('an older one');
          if (out.endsWith('/')) expect(readdirSync(at(out))).toEqual(['000000.png']);
        },
      };
    },
    /** Hidden names are those of files that are not whole yet. */
    expectNoPartFiles: (): void => expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]),
  };
}

function sceneOf(steps: number, seconds: number, draw: 'board' | 'overlay'): string {
  const step = (_: unknown, index: number): string => {
    const marks = `{outline: b${(index % 4) + 1}}, {fill: b${((index + 1) % 4) + 1}}`;
    return `  - {id: s${index}, at: ${2 * index + 1}, show: [${marks}]}`;
  };
  return `proofreel: 1
puzzle: {boxes: 2x2, givens: 1... ..1. .1.4 ..2.}
video: {size: 320x180, rate: 60, length: ${seconds}, draw: ${draw}}
steps:
  - {id: first, at: 0, from: 2r3, so: r3c1=2}
${Array.from({ length: steps }, step).join('\n')}
`;
}

export interface Ended {
  readonly status: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly said: string;
}

export interface Running {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
}

/** Starts node in a session of its own, so that its children can be told from all others. */
export function start(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Running {
  const child = spawn(process.execPath, words, {
    ...{ cwd: root, detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
    env: { ...process.env, ...environment },
  });
  let said = '';
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (status, signal) => resolve({ status, signal, said }));
  });
  return { child, ended };
}

/** Waits until an encoder of that session is at work on frames that it is handed. */
export async function encodersAtWork(session: number, running?: Promise<Ended>): Promise<readonly number[]> {
  const encoders = (): readonly number[] =>
    processesOf(session)
      .filter(({ pid, name }) => name === 'ffmpeg' && callOf(pid).includes('pipe:0'))
      .map(({ pid }) => pid);
  let found: readonly number[] = [];
  const isThere = (): boolean => {
    found = encoders();
    return found.length > 0;
  };
  await until('an encoder', isThere, running);
  return found;
}

/** Waits for half a minute at most, and no longer than what is `running`. */
export async function until(what: string, isThere: () => boolean, running?: Promise<Ended>): Promise<void> {
  let over: Ended | undefined;
  void running?.then((ended) => {
    over = ended;
  });
  for (const start = performance.now(); !isThere(); await pause(20)) {
    if (over !== undefined) throw new Error(`the render was over before there was ${what}: ${over.said}`);
    if (performance.now() - start > 30_000) throw new Error(`there was not ${what} within half a minute`);
  }
}

/** A second is given to what has been told to end. */
export async function expectNoProcesses(session: number): Promise<void> {
  for (let tries = 0; tries < 50 && processesOf(session).length > 0; tries++) await pause(20);
  expect(processesOf(session), 'processes still running').toEqual([]);
}

export function processesOf(session: number): readonly { readonly pid: number; readonly name: string }[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      const [, name, state, , , of] = /\((.*)\) (\S) (\d+) (\d+) (\d+)/.exec(read(`/proc/${pid}/stat`)) ?? [];
      if (name === undefined || state === undefined || gone.has(state) || Number(of) !== session) return [];
      return [{ pid: Number(pid), name }];
    });
}

const callOf = (pid: number): string => read(`/proc/${pid}/cmdline`);

/** Nothing where the process has ended in the meantime. */
function read(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}

export function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
}

/** What the last line says, which is what a user reads: one sentence, and no trace of a stack above it. */
export function sentenceOf(said: string): string {
  expect(said).not.toMatch(/^\s+at .*[:(]\d+/m);
  const lines = said.split('\n').filter((line) => line.startsWith('proofreel: '));
  expect(lines, said).toHaveLength(1);
  return lines[0]!;
}

/** Whether this user may mount file systems: to have a disk that is full or can only be read. */
export function canMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-mount-'));
  try {
    if (!mount(folder, 'size=16k')) return false;
    spawnSync('umount', [folder]);
    return true;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function mount(folder: string, options: string): boolean {
  mkdirSync(folder, { recursive: true });
  return spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0;
}

export function unmount(folder: string): void {
  spawnSync('umount', [folder]);
}
