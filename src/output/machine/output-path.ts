/**
 * Where a result may be written, checked before any work is done.
 */
import { type Stats, statSync } from 'node:fs';
import { basename, dirname } from 'node:path';

/** The call asks for something impossible; `message` says what, and what is possible instead. Exit status 2. */
export interface Refusal {
  readonly kind: 'refused';
  readonly message: string;
}

/** The fault of a path that leads through a file as if it were a folder; undefined if there is none. */
export function pathFault(path: string): string | undefined {
  for (let at = dirname(path); ; at = dirname(at)) {
    const there = statusOf(at);
    if (there?.isDirectory() === true || dirname(at) === at) return undefined;
    if (there !== undefined) return `'${basename(at)}' is a file, so nothing can be written into it`;
  }
}

/**
 * What is at a path, following links; undefined if there is nothing, or it cannot be accessed (writing will show
 * which).
 */
export function statusOf(path: string): Stats | undefined {
  try {
    return statSync(path);
  } catch {
    return undefined;
  }
}
