/**
 * The processes of this machine, read from /proc (Linux, proc(5)), for tests of what a render leaves running.
 */
import { readdirSync, readFileSync } from 'node:fs';

export const hasProcesses = process.platform === 'linux';

/** For `it.skipIf(hasProcesses).each(…)`: why such a test is skipped elsewhere. */
export const noProcesses = [{ why: 'processes are read from /proc' }];

export interface RunningProcess {
  readonly pid: number;
  /** Of its program, at most 15 letters. */
  readonly name: string;
  readonly parent: number;
  readonly session: number;
}

/** Of a process on its way out, and of one that waits for its parent to ask how it ended. */
const gone = new Set(['Z', 'X']);

/** All that are running, but for those that have ended. */
export function processes(): readonly RunningProcess[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .flatMap((pid) => {
      const stat = read(`/proc/${pid}/stat`);
      const [, name, state, parent, , session] = /\((.*)\) (\S) (\d+) (\d+) (\d+)/s.exec(stat) ?? [];
      if (name === undefined || state === undefined || gone.has(state)) return [];
      return [{ pid: Number(pid), name, parent: Number(parent), session: Number(session) }];
    });
}

/** The words that a process was called with, each ended by a NUL. */
export function callOf(pid: number): string {
  return read(`/proc/${pid}/cmdline`);
}

/** Those of ffmpeg that are children of that process. */
export function encodersOf(parent: number): readonly number[] {
  return processes()
    .filter((one) => one.name === 'ffmpeg' && one.parent === parent)
    .map(({ pid }) => pid);
}

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

/**
 * Waits until something is found, and hands it over. Two minutes at most: that is to end a test that waits for nothing,
 * and no bound on how fast a machine must be. `isOver` says why it can no longer come.
 */
export async function until<T>(
  what: string,
  find: () => T | undefined,
  isOver: () => string | undefined = () => undefined,
): Promise<T> {
  for (const start = performance.now(); ; await pause(20)) {
    const found = find();
    if (found !== undefined) return found;
    const over = isOver();
    if (over !== undefined) throw new Error(`before there was ${what}: ${over}`);
    if (performance.now() - start > 120_000) throw new Error(`there was not ${what} within two minutes`);
  }
}
