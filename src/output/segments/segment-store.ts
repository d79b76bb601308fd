/**
 * Where encoded segments are kept, by their digest.
 */
import { randomBytes } from 'node:crypto';
import { rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Encoded } from '../codecs/codec.ts';
import { readSegment, type SegmentIndex, writeSegment } from './segment-file.ts';
import { picturesOf, type Segment } from './segments.ts';

export interface SegmentStore {
  readonly folder: string;
  /** The file of a segment, whether or not it exists. */
  fileOf(segment: Pick<Segment, 'digest'>): string;
  /** The segment, if it is kept and complete. */
  find(segment: Segment): Promise<SegmentIndex | undefined>;
  /** Keeps it, completely or not at all. */
  keep(segment: Segment, encoded: Encoded): Promise<SegmentIndex>;
  /** A unique name for a scratch file. */
  scratch(): string;
}

/** A store in an existing folder. */
export function folderStore(folder: string): SegmentStore {
  const fileOf = (segment: Pick<Segment, 'digest'>): string => join(folder, `${segment.digest}.segment`);
  const scratch = (): string => join(folder, `scratch-${process.pid}-${randomBytes(4).toString('hex')}`);
  const find = (segment: Segment) => readSegment(fileOf(segment), picturesOf(segment).length);
  return {
    folder,
    fileOf,
    find,
    async keep(segment, encoded) {
      const temp = scratch();
      try {
        await writeSegment(temp, encoded);
        await rename(temp, fileOf(segment));
      } finally {
        await rm(temp, { force: true });
      }
      const index = await find(segment);
      if (index === undefined) throw new Error('a segment that was just written cannot be read');
      return index;
    },
    scratch,
  };
}
