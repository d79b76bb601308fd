/**
 * What is common to the tests of faults: a scene that takes minutes to render, a render of it in a session of its own,
 * and what of that session is still running.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { callOf, pause, processes, type RunningProcess, until } from '../processes.ts';

export const root = fileURLToPath(new URL('../..', import.meta.url));

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

/** A render in a session of its own. */
export interface Running {
  readonly session: number;
  readonly ended: Promise<Ended>;
  /** What it has said, once it has ended. */
  readonly over: () => string | undefined;
  readonly kill: (signal: NodeJS.Signals) => void;
}

/** Starts node in a session of its own, so that its children can be told from all others. */
export function start(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Running {
  const child = spawn(process.execPath, words, {
    ...{ cwd: root, detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
    env: { ...process.env, ...environment },
  });
  let said = '';
  let over: string | undefined;
  child.stderr?.setEncoding('utf8').on('data', (text: string) => {
    said += text;
  });
  const ended = new Promise<Ended>((resolve) => {
    child.on('close', (status, signal) => {
      over = `the render was over: ${said}`;
      resolve({ status, signal, said });
    });
  });
  return { session: child.pid!, ended, over: () => over, kill: (signal) => child.kill(signal) };
}

/** Encoders of that session that are at work on frames which they are handed. */
function encodersIn(session: number): readonly number[] {
  return inSession(session)
    .filter(({ pid, name }) => name === 'ffmpeg' && callOf(pid).includes('pipe:0'))
    .map(({ pid }) => pid);
}

export async function untilEncoding(session: number, isOver?: () => string | undefined): Promise<void> {
  await until('an encoder', () => (encodersIn(session).length > 0 ? true : undefined), isOver);
}

/** Stops it while it encodes, and holds against each other what it should leave and what it does. */
export async function expectStopped(running: Running, stop: () => void): Promise<void> {
  await untilEncoding(running.session, running.over);
  stop();
  await expectInterrupted(running);
}

export async function expectInterrupted({ session, ended }: Running): Promise<void> {
  const { status, said } = await ended;
  expect(sentenceOf(said)).toBe('proofreel: interrupted; nothing was written');
  expect(status).toBe(130);
  await expectNoProcesses(session);
}

/** Kills its encoders until it gives up: one that is met at its very end has nothing more to lose. */
export async function expectLosesEncoder({ session, ended, over }: Running): Promise<void> {
  while (over() === undefined) {
    for (const pid of encodersIn(session)) kill(pid);
    await pause(10);
  }
  const { status, said } = await ended;
  expect(sentenceOf(said)).toBe(
    'proofreel: the encoder was killed (SIGKILL) before it was done; memory may have run out',
  );
  expect(status).toBe(3);
  await expectNoProcesses(session);
}

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has ended by itself in the meantime.
  }
}

/** What ends because its pipe does, which may take a moment: the translator of our source, and the shell that watches. */
const endByThemselves = new Set(['esbuild', 'sh']);

/** After a render has ended nothing of it is at work any more. */
export async function expectNoProcesses(session: number): Promise<void> {
  expect(
    inSession(session).filter(({ name }) => !endByThemselves.has(name)),
    'processes still running',
  ).toEqual([]);
  await until('an end', () => (inSession(session).length === 0 ? true : undefined));
}

export function inSession(session: number): readonly RunningProcess[] {
  return processes().filter((one) => one.session === session);
}

/** What the last line says, which is what a user reads: one sentence, and no trace of a stack above it. */
export function sentenceOf(said: string): string {
  expect(said).not.toMatch(/^\s+at .*[:(]\d+/m);
  const lines = said.split('\n').filter((line) => line.startsWith('proofreel: '));
  expect(lines, said).toHaveLength(1);
  return lines[0]!;
}
