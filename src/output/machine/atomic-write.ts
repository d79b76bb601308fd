/**
 * A file or folder appears under its name only when it is complete. Until then it has a temp name next to it, so that
 * it is on the same disk and two renders to one name cannot write into each other; the temp file is always removed in
 * the end. If the process itself is killed or loses power, the next one to write there cleans up.
 */
import { mkdir, open, rename, rm, rmdir, stat, statfs, writeFile } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { asMachineFailure, systemCode } from './machine-failure.ts';
import { asideName, removeStaleTemps, tempFile } from './temp-files.ts';

/** The system calls that a complete file depends on. */
export interface FileOperations {
  /** Ensures that everything written to the file is on the disk itself. */
  flush(file: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
}

const system: FileOperations = { flush, rename };

/** `write` fills the empty file that it is given. `target` is an absolute path; what existed there is replaced. */
export async function writeAtomically<T>(
  target: string,
  write: (temp: string) => Promise<T>,
  files: FileOperations = system,
): Promise<T> {
  return viaTemp(target, async (temp) => {
    // Created here, so that an unwritable place is noticed before anything is drawn, with the system's error.
    await writeFile(temp, '', { flag: 'wx' });
    const result = await write(temp);
    await files.flush(temp);
    await files.rename(temp, target);
    return result;
  });
}

/** `write` fills the empty folder that it is given. A folder that existed at `target` is replaced as a whole. */
export async function writeFolderAtomically<T>(
  target: string,
  write: (temp: string) => Promise<T>,
  files: Pick<FileOperations, 'rename'> = system,
): Promise<T> {
  return viaTemp(target, async (temp) => {
    await mkdir(temp);
    const result = await write(temp);
    await replaceFolder(temp, target, files);
    return result;
  });
}

async function viaTemp<T>(target: string, work: (temp: string) => Promise<T>): Promise<T> {
  const temp = tempFile(target);
  const cannot = `cannot write ${basename(target)}`;
  let madeFolder: string | undefined;
  let isWhole = false;
  try {
    madeFolder = await makeFolders(dirname(target));
    if (madeFolder === undefined) await removeStaleTemps(dirname(target));
    const result = await work(temp);
    isWhole = true;
    return result;
  } catch (error) {
    throw asMachineFailure(error, cannot);
  } finally {
    await rm(temp, { recursive: true, force: true });
    if (!isWhole && madeFolder !== undefined) await removeEmptyFolders(dirname(target), madeFolder);
  }
}

/** Without this, a file could have its final name and, after a power cut, no content. */
async function flush(file: string): Promise<void> {
  const handle = await open(file, 'r+');
  try {
    await handle.datasync();
  } finally {
    await handle.close();
  }
}

/** A folder cannot be renamed onto a non-empty one, so the old one is moved aside for a moment. */
async function replaceFolder(temp: string, target: string, { rename }: Pick<FileOperations, 'rename'>): Promise<void> {
  if (!(await exists(target))) return rename(temp, target);
  const old = asideName(target);
  await rename(target, old);
  try {
    await rename(temp, target);
  } catch (error) {
    await rename(old, target);
    throw error;
  }
  await rm(old, { recursive: true, force: true });
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** Whether the disk of that file is practically full: it has less room than any frame takes. */
export async function isDiskFull(file: string): Promise<boolean> {
  const { bavail, bsize } = await statfs(dirname(file));
  return bavail * bsize < 16 * 1024;
}

/**
 * Makes `folder` and those above it, and returns the first that had to be made. Step by step: on a read-only disk,
 * recursive `mkdir` reports that something is missing.
 */
async function makeFolders(folder: string): Promise<string | undefined> {
  if (await exists(folder)) return undefined;
  const first = dirname(folder) === folder ? undefined : await makeFolders(dirname(folder));
  try {
    await mkdir(folder);
  } catch (error) {
    if (systemCode(error) !== 'EEXIST') throw error; // Another render was faster.
    return undefined;
  }
  return first ?? folder;
}

/** From `folder` up to `last`, both included, as long as they are empty. */
async function removeEmptyFolders(folder: string, last: string): Promise<void> {
  for (let at = folder; at.length >= last.length; at = dirname(at)) {
    try {
      await rmdir(at);
    } catch {
      return; // Another process has put something there, or removed it: it is no longer ours.
    }
  }
}
