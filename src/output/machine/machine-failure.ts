/**
 * A broken machine, not a broken scene: no ffmpeg, a full disk, an encoder that died. Thrown in this folder, caught
 * once, at the command line (exit status 3).
 */

/** Its message is one plain sentence for the user: what failed, and what would put it right where that is known. */
export class MachineFailure extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'MachineFailure';
  }
}

/**
 * What to throw on for an error of the file system: a `MachineFailure` that begins with what was being done ("cannot
 * write lesson.mp4"), or the error itself where it is none of the machine's.
 */
export function asMachineFailure(error: unknown, cannot: string): unknown {
  const code = systemCode(error);
  return code === undefined ? error : new MachineFailure(`${cannot}: ${causes.get(code) ?? String(error)}`);
}

/** The system's name of the error (`ENOSPC`); undefined where the error is none of the system's. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined;
  return /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
}

/** Said of a full disk, whoever notices it: the file system, or the encoder in its last words. */
export const diskIsFull = 'the disk is full; make room, or write to another disk';

/** By the names of POSIX errno.h. */
const causes: ReadonlyMap<string, string> = new Map([
  ['ENOSPC', diskIsFull],
  ['EDQUOT', 'the disk quota is used up; make room, or write to another disk'],
  ['EROFS', 'the disk can only be read; write to another folder'],
  ['EACCES', 'writing there is not permitted; write to another folder'],
  ['EPERM', 'writing there is not permitted; write to another folder'],
  ['EIO', 'the disk reports an error'],
  ['EFBIG', 'the file would be larger than this disk can hold'],
  ['EMFILE', 'too many files are open'],
  ['ENFILE', 'too many files are open'],
  ['ENAMETOOLONG', 'the name is too long for this disk'],
  ['ENOTDIR', 'a part of its path is a file, not a folder'],
  ['ENOENT', 'a folder on its path has gone'],
]);
