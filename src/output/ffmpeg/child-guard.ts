/**
 * No program outlives the render that started it, even if the render is killed without notice (SIGKILL).
 */
import { type ChildProcess, spawn } from 'node:child_process';

/**
 * For a program that only reads files and would keep running: a shell waits for our end of a pipe to close, which the
 * system ensures however we end, and kills the program. A program that we feed or read through a pipe ends on its own.
 * On Windows, which has no such shell, nothing is done.
 */
export function endWithUs(child: ChildProcess): void {
  if (child.pid === undefined || process.platform === 'win32') return;
  const script = 'trap "" INT HUP TERM; read -r _; kill -9 "$0" 2>/dev/null';
  const guard = spawn('/bin/sh', ['-c', script, String(child.pid)], { stdio: ['pipe', 'ignore', 'ignore'] });
  guard.on('error', () => undefined); // A machine without a shell gets no guard.
  guard.stdin?.on('error', () => undefined); // With too many open files there is none.
  guard.unref();
  // Called off before another process can have got the pid.
  child.once('exit', () => guard.kill('SIGKILL'));
}
