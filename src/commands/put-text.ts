/**
 * The text output of a verb: to the requested file, atomically, or else to standard output.
 */
import { existsSync, statSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { writeAtomically } from '../output/machine/atomic-write.ts';
import { pathFault } from '../output/machine/output-path.ts';
import { UsageError } from '../verbs/usage-error.ts';
import type { Terminal } from './terminal.ts';

/** `what` describes the file once it is written. */
export async function putText(file: string | undefined, text: string, what: string, terminal: Terminal): Promise<void> {
  if (file === undefined) {
    terminal.out(text);
    return;
  }
  await writeAtomically(resolve(file), (part) => writeFile(part, text));
  terminal.err(`${file}: ${what}\n`);
}

/**
 * Refuses a file that cannot be written, or that is one of its own sources: `sources` are their paths by kind (`scene`,
 * `narration`).
 * @throws UsageError
 */
export function refuseTarget(file: string, sources: Readonly<Record<string, string | undefined>>): void {
  const fault = pathFault(resolve(file));
  if (fault !== undefined) throw new UsageError(fault);
  const there = statSync(file, { throwIfNoEntry: false });
  if (there === undefined) return;
  if (there.isDirectory()) throw new UsageError(`${file} is a folder; name a file`);
  for (const [what, path] of Object.entries(sources)) {
    const source = path === undefined || !existsSync(path) ? undefined : statSync(path);
    if (source === undefined || source.ino !== there.ino || source.dev !== there.dev) continue;
    throw new UsageError(`'${basename(file)}' is the ${what} itself, which would be overwritten; give another name`);
  }
}
