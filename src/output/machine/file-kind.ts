/**
 * What a path leads to: a file, or something that must not be read as one. A device may have no end, and a pipe nobody
 * who writes into it.
 */
import { type Stats, statSync } from 'node:fs';

/** What the path leads to in place of a file, in words: "a folder"; undefined where it is a file. It must be there. */
export function otherThanFile(path: string): string | undefined {
  return kindOf(statSync(path));
}

function kindOf(found: Stats): string | undefined {
  if (found.isFile()) return undefined;
  if (found.isDirectory()) return 'a folder';
  if (found.isFIFO()) return 'a pipe';
  return found.isSocket() ? 'a socket' : 'a device';
}
