/**
 * A file or folder is there whole or not at all: what is flushed before it gets its name, and what is put back where it
 * cannot get it. The disk that refuses is one that the test makes up.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { open, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import {
  type FileOperations,
  writeAtomically,
  writeFolderAtomically,
} from '../../../src/output/machine/atomic-write.ts';
import { scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const fullDisk = Object.assign(new Error('no room'), { code: 'ENOSPC' });

it('a file is on the disk before it gets its name: a power cut between the two leaves no empty file', async () => {
  const done: string[] = [];
  const files: FileOperations = {
    async flush(file) {
      done.push(`flush ${readFileSync(file, 'utf8')}`);
    },
    async rename(from, to) {
      done.push('rename');
      await rename(from, to);
    },
  };
  await writeAtomically(scratch.at('a.txt'), (temp) => writeFile(temp, 'whole'), files);
  expect(done).toEqual(['flush whole', 'rename']);
});

it("the flush is the system's own", async () => {
  // Every handle is of one class; nothing else of `writeAtomically` asks one for its data to be written out.
  const handle = await open(scratch.at('probe'), 'w');
  const shape: { datasync(): Promise<void> } = Object.getPrototypeOf(handle);
  await handle.close();
  const { datasync } = shape;
  let count = 0;
  shape.datasync = function () {
    count += 1;
    return datasync.call(this);
  };
  try {
    await writeAtomically(scratch.at('b.txt'), (temp) => writeFile(temp, 'whole'));
  } finally {
    shape.datasync = datasync;
  }
  expect(count).toBe(1);
});

it('a file that cannot be flushed does not get its name, and the older one stays', async () => {
  writeFileSync(scratch.at('c.txt'), 'older');
  const flush = () => Promise.reject(fullDisk);
  await expect(
    writeAtomically(scratch.at('c.txt'), (temp) => writeFile(temp, 'new'), { flush, rename }),
  ).rejects.toThrow('cannot write c.txt: the disk is full; make room, or write to another disk');
  expect(readFileSync(scratch.at('c.txt'), 'utf8')).toBe('older');
  expect(scratch.list().filter((name) => name.startsWith('.'))).toEqual([]);
});

it.each([
  ['the new folder cannot take the name: the older one has it again', 2],
  ['the older folder cannot step aside: it keeps its name', 1],
])('%s', async (_, failing) => {
  const target = scratch.at(`frames-${failing}`);
  mkdirSync(target);
  writeFileSync(join(target, '000000.png'), 'older');
  let count = 0;
  const files = {
    async rename(from: string, to: string) {
      count += 1;
      if (count === failing) throw fullDisk;
      await rename(from, to);
    },
  };
  const writing = writeFolderAtomically(target, (temp) => writeFile(join(temp, '000000.png'), 'new'), files);
  await expect(writing).rejects.toThrow(`cannot write frames-${failing}: the disk is full`);
  expect(readFileSync(join(target, '000000.png'), 'utf8')).toBe('older');
  expect(scratch.list().filter((name) => name.startsWith('.'))).toEqual([]);
});
