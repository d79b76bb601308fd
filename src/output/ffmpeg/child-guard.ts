/**
 * No program outlives the render that started it, even one that is killed and hears nothing of it (SIGKILL).
 */
import { type ChildProcess, spawn } from 'node:child_process';

/**
 * For a program that reads files alone and would work on: a shell waits for our end of a pipe to close, which the
 * system does whatever becomes of us, and kills the program. One that is fed or read by us through a pipe ends by
 * itself. On Windows, which has no such shell, nothing is done.
 */
export function endWithUs(child: ChildProcess): void {
  if (child.pid === undefined || process.platform === 'win32') return;
  const script = 'trap "" INT HUP TERM; read -r _; kill -9 "$0" 2>/dev/null';
  const guard = spawn('/bin/sh', ['-c', script, String(child.pid)], { stdio: ['pipe', 'ignore', 'ignore'] });
  guard.on('error', () => undefined); // A machine without a shell does without.
  guard.stdin?.on('error', () => undefined); // Where there are too many open files there is none.
  guard.unref();
  // Called off before anyone else can have got the number.
  child.once('exit', () => guard.kill('SIGKILL'));
}
