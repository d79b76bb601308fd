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
  /** Where a segment lies, or would lie. */
  fileOf(segment: Pick<Segment, 'digest'>): string;
  /** The segment where it is kept and whole. */
  find(segment: Segment): Promise<SegmentIndex | undefined>;
  /** Keeps it, whole or not at all. */
  keep(segment: Segment, encoded: Encoded): Promise<SegmentIndex>;
  /** A name that nobody else uses, for a file that is thrown away. */
  scratch(): string;
}

/** A store in a folder that is there. */
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
