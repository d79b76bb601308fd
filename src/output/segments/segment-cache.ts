/**
 * Encoded segments from one render to the next, in the user's cache folder: what did not change is not drawn again.
 *
 * A segment's name covers everything that determines its bytes, so an entry is never out of date, only unused. Any
 * problem with the cache - it cannot be written, an entry is damaged, another process has just evicted it - costs only
 * time.
 */
import { createHash, randomBytes } from 'node:crypto';
import { copyFile, link, mkdir, readdir, rename, rm, stat, utimes } from 'node:fs/promises';
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';
import { isUntouched } from './segment-file.ts';

export interface SegmentCache {
  /** Puts the segment's file at `file`, if it is kept here and undamaged. */
  fetch(digest: string, file: string): Promise<boolean>;
  /** Keeps a file that a render has made, completely or not at all. */
  keep(digest: string, file: string): Promise<void>;
  /** Evicts the least recently used entries until the rest is small enough. */
  trim(): Promise<void>;
}

/** The maximum size of the cache, in bytes: a hundred lessons in H.264, or one in ProRes. */
export const mostCached = 2_000_000_000;

/**
 * `XDG_CACHE_HOME` of the XDG Base Directory Specification, which defaults to `~/.cache` and ignores paths that are not
 * absolute; on Windows, the user's `LOCALAPPDATA`.
 */
export function cacheFolder(env: NodeJS.ProcessEnv = process.env): string {
  const base = [env.XDG_CACHE_HOME, process.platform === 'win32' ? env.LOCALAPPDATA : undefined].find(
    (path) => path !== undefined && isAbsolute(path),
  );
  return join(base ?? join(homedir(), '.cache'), 'proofreel');
}

/** `toolchain`: what determines the bytes of a segment in addition to its digest: programs and their versions. */
export function segmentCache(folder: string, toolchain: string, most = mostCached): SegmentCache {
  const entries = join(folder, 'segments');
  const entryOf = (digest: string): string => {
    const name = createHash('sha256')
      .update(JSON.stringify([toolchain, digest]))
      .digest('hex');
    return join(entries, `${name}.segment`);
  };
  return {
    async fetch(digest, file) {
      const entry = entryOf(digest);
      try {
        await takeOver(entry, file);
        if (await isUntouched(file)) {
          const now = new Date();
          await utimes(entry, now, now).catch(() => undefined);
          return true;
        }
        await rm(entry, { force: true });
      } catch {
        // It does not exist, or cannot be read.
      }
      await rm(file, { force: true });
      return false;
    },
    async keep(digest, file) {
      const temp = join(entries, `temp-${process.pid}-${randomBytes(4).toString('hex')}`);
      try {
        if ((await stat(file)).size > most / 4) return;
        if (await isThere(entryOf(digest))) return;
        await mkdir(entries, { recursive: true });
        await takeOver(file, temp);
        await rename(temp, entryOf(digest));
      } catch {
        await rm(temp, { force: true }).catch(() => undefined);
      }
    },
    trim: () => trim(entries, most),
  };
}

async function isThere(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** A hard link if the disk allows it, otherwise a copy: what is evicted here still exists for whoever has taken it. */
async function takeOver(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch {
    await copyFile(from, to);
  }
}

/** Temp files that a killed render left behind are deleted after a day. */
const staleAfter = 24 * 60 * 60 * 1000;

async function trim(entries: string, most: number): Promise<void> {
  const names = await readdir(entries).catch((): string[] => []);
  const files: { readonly path: string; readonly size: number; readonly used: number }[] = [];
  for (const name of names) {
    const path = join(entries, name);
    const found = await stat(path).catch(() => undefined);
    if (found === undefined) continue;
    if (name.startsWith('temp-') && Date.now() - found.mtimeMs > staleAfter) await rm(path, { force: true });
    else files.push({ path, size: found.size, used: found.mtimeMs });
  }
  let bytes = files.reduce((sum, { size }) => sum + size, 0);
  if (bytes <= most) return;
  files.sort((a, b) => a.used - b.used);
  for (const { path, size } of files) {
    if (bytes <= 0.9 * most) return;
    await rm(path, { force: true }).catch(() => undefined);
    bytes -= size;
  }
}
