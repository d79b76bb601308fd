/**
 * Seconds of processor time of this process and its children together: reliable on a machine that others use too, where
 * wall-clock time is not.
 */
import { readFileSync } from 'node:fs';

export interface CpuUse {
  readonly wallSeconds: number;
  readonly cpuSeconds: number;
}

/** Runs `work`, and says what it took. Children count once they have ended (Linux, proc(5): `cutime`, `cstime`). */
export async function measured(work: () => Promise<unknown>): Promise<CpuUse> {
  const [wall, cpu] = [performance.now(), cpuSeconds()];
  await work();
  return { wallSeconds: (performance.now() - wall) / 1000, cpuSeconds: cpuSeconds() - cpu };
}

function cpuSeconds(): number {
  const own = process.cpuUsage();
  return (own.user + own.system) / 1e6 + childSeconds();
}

function childSeconds(): number {
  try {
    const fields = readFileSync('/proc/self/stat', 'utf8')
      .replace(/^.*\) /, '')
      .split(' ');
    return (Number(fields[13]) + Number(fields[14])) / 100; // USER_HZ is 100 on every Linux of today.
  } catch {
    return Number.NaN; // No Linux.
  }
}
