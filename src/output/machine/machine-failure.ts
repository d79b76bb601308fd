/**
 * A broken machine, not a broken scene: no ffmpeg, a full disk, an encoder that died. Thrown in `src/output`, caught
 * once, at the command line (exit status 3).
 */

/** Its message is one plain sentence for the user: what failed, and what would fix it if that is known. */
export class MachineFailure extends Error {
  constructor(sentence: string) {
    super(sentence);
    this.name = 'MachineFailure';
  }
}

/**
 * What to rethrow for a file-system error: a `MachineFailure` that begins with what was being done ("cannot write
 * lesson.mp4"), or the error itself if it is not the machine's.
 */
export function asMachineFailure(error: unknown, cannot: string): unknown {
  const code = systemCode(error);
  return code === undefined ? error : new MachineFailure(`${cannot}: ${causes.get(code) ?? String(error)}`);
}

/** The system's name of the error (`ENOSPC`); undefined if it is not a system error. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return undefined;
  return /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
}

/** For a full disk, whether the file system or the encoder reports it. */
export const diskIsFull = 'the disk is full; make room, or write to another disk';

/** By the names of POSIX errno.h. */
const causes: ReadonlyMap<string, string> = new Map([
  ['ENOSPC', diskIsFull],
  ['EDQUOT', 'the disk quota is used up; make room, or write to another disk'],
  ['EROFS', 'the disk is read-only; write to another folder'],
  ['EACCES', 'writing there is not permitted; write to another folder'],
  ['EPERM', 'writing there is not permitted; write to another folder'],
  ['EIO', 'the disk reports an error'],
  ['EFBIG', 'the file would be too large for this disk'],
  ['EMFILE', 'too many files are open'],
  ['ENFILE', 'too many files are open'],
  ['ENAMETOOLONG', 'the name is too long for this disk'],
  ['ENOTDIR', 'a part of its path is a file, not a folder'],
  ['ENOENT', 'a folder on its path has been removed'],
]);
