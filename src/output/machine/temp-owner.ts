/**
 * The owner of a temp file, as a word in the file's name, so that a later process can distinguish the temp file of a
 * running render from one left by a killed render.
 */
import { createHash } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { systemCode } from './machine-failure.ts';

/**
 * `0f3a99c1-4711-88123`: the machine, the process, and when that started (in ticks since the machine did; 0 if that is
 * not available).
 */
export function ownerWord(pid: number = process.pid): string {
  return `${machineWord()}-${pid}-${startOf(pid) ?? 0}`;
}

/** What `ownerWord` returns, as a piece of a regular expression without groups. */
export const ownerPattern = '[0-9a-f]{8}-\\d+-\\d+';

/** `unknown`: it is, or was, on another machine. A pid that has since been reused counts as gone. */
export function ownerState(word: string): 'running' | 'gone' | 'unknown' {
  const [machine, number, start] = word.split('-');
  if (machine !== machineWord()) return 'unknown';
  const pid = Number(number);
  if (!isAlive(pid)) return 'gone';
  const started = startOf(pid);
  return started === undefined || start === '0' || started === start ? 'running' : 'gone';
}

/** Pids are meaningful within one machine and, on Linux, within one namespace (pid_namespaces(7)). */
function machineWord(): string {
  const machine = [hostname(), textOf('/etc/machine-id'), namespaceOfProcesses()];
  return createHash('sha256').update(JSON.stringify(machine)).digest('hex').slice(0, 8);
}

function namespaceOfProcesses(): string {
  try {
    return readlinkSync('/proc/self/ns/pid');
  } catch {
    return '';
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (systemCode(error) === 'ESRCH') return false;
  }
  // A killed process that its parent has not waited for yet keeps its pid.
  return !/^[ZX]/.test(statOf(pid)[0] ?? '');
}

/** Linux, proc(5): field 22 of `stat`. Undefined if there is no such file. */
function startOf(pid: number): string | undefined {
  return statOf(pid)[19];
}

/** The fields from the third on; the second is the program's name, which may contain anything. */
function statOf(pid: number): readonly string[] {
  const stat = textOf(`/proc/${pid}/stat`);
  return stat === '' ? [] : stat.slice(stat.lastIndexOf(')') + 2).split(' ');
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return ''; // Another system, or a process that has ended.
  }
}
