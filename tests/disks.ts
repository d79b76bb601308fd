/**
 * File systems of our own, a few hundred kilobytes large, to have a disk that is full or can only be read: only for a
 * user who may mount. Root may write to every folder, so a disk is what cannot be written to.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** For `it.skipIf(canMount()).each(…)`: why such a test is skipped elsewhere. */
export const noMount = [{ why: 'mounting a tmpfs takes root' }];

export function canMount(): boolean {
  const folder = mkdtempSync(join(tmpdir(), 'proofreel-mount-'));
  try {
    if (!mount(folder, 'size=16k')) return false;
    unmount(folder);
    return true;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** `options` as mount(8) takes them for a tmpfs. Whether it is there now. */
export function mount(folder: string, options: string): boolean {
  mkdirSync(folder, { recursive: true });
  return spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder]).status === 0;
}

export function unmount(folder: string): void {
  spawnSync('umount', [folder]);
}
