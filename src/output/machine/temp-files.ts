/**
 * The names of incomplete files and folders, and the cleanup of those that a killed render has left behind.
 */
import { randomBytes } from 'node:crypto';
import { readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { ownerPattern, ownerState, ownerWord } from './temp-owner.ts';

/** A unique name next to `target`, hidden from an ordinary listing. With `ending` appended, it is ours too. */
export function tempFile(target: string): string {
  return nameNextTo(target, 'temp');
}

/** Likewise, for a folder that is moved aside for the one that takes its name. */
export function asideName(target: string): string {
  return nameNextTo(target, 'old');
}

/** What may follow the name of a temp file, for the folder of intermediate files. */
const ending = '-segments';

/** Bytes of the target's name that are kept; with the rest, the name stays below the 255 that file systems allow. */
const mostNameBytes = 180;

function nameNextTo(target: string, kind: 'temp' | 'old'): string {
  const random = randomBytes(4).toString('hex');
  return join(dirname(target), `.${endOfName(basename(target))}.${kind}-${ownerWord()}-${random}`);
}

function endOfName(name: string): string {
  let letters = [...name];
  while (Buffer.byteLength(letters.join('')) > mostNameBytes) letters = letters.slice(1);
  return letters.join('');
}

const ours = new RegExp(`^\\.(.+)\\.(temp|old)-(${ownerPattern})-[0-9a-f]{8}(?:${ending})?$`, 's');

/**
 * A temp file of another machine, in a shared folder, counts as left by a killed render after a week without writes.
 */
const staleAfterMs = 7 * 24 * 60 * 60 * 1000;

/**
 * Removes from `folder` what killed renders (SIGKILL, a power cut) have left behind, and gives a folder that was moved
 * aside its name back if no other has taken it. Files of a running render stay, and so does everything that is not
 * named like ours. Anything that cannot be removed stays for the next time.
 */
export async function removeStaleTemps(folder: string): Promise<void> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isFile() || entry.isDirectory()).map(({ name }) => name);
  for (const name of names) {
    const [, target = '', kind, owner = ''] = ours.exec(name) ?? [];
    if (kind === undefined) continue;
    const state = ownerState(owner);
    if (state === 'running') continue;
    if (
      state === 'unknown' &&
      !(await isOld(
        folder,
        names.filter((other) => isOfOne(name, other)),
      ))
    )
      continue;
    await remove(join(folder, name), kind === 'old' ? target : undefined).catch(() => undefined);
  }
}

/** `target`: the name of the folder that was moved aside. */
async function remove(path: string, target: string | undefined): Promise<void> {
  if (target !== undefined) {
    // For a longer name this may be only its end: then its place is unknown.
    if (Buffer.byteLength(target) > mostNameBytes - 4) return;
    const place = join(dirname(path), target);
    const isTaken = await stat(place).then(
      () => true,
      () => false,
    );
    if (!isTaken) return rename(path, place);
  }
  await rm(path, { recursive: true, force: true });
}

/** Whether both names belong to one temp file: the files of a render are written in turn. */
function isOfOne(name: string, other: string): boolean {
  const stem = (one: string): string => one.replace(new RegExp(`${ending}$`), '');
  return stem(name) === stem(other);
}

async function isOld(folder: string, names: readonly string[]): Promise<boolean> {
  for (const name of names) {
    const found = await stat(join(folder, name)).catch(() => undefined);
    if (found !== undefined && Date.now() - found.mtimeMs < staleAfterMs) return false;
  }
  return true;
}
