/**
 * A folder of PNG frames: `000000.png`, `000001.png`, ... one for each frame, with six digits or as many as the last
 * needs. A picture that is held, or returns, is one file with several names. Or, with holds, each picture once and a
 * list of when it is shown.
 */
import { copyFile, link, readdir, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { writeFolderAtomically } from '../machine/atomic-write.ts';
import { asMachineFailure, systemCode } from '../machine/machine-failure.ts';
import { type Hold, holdsOf } from '../painters/holds.ts';
import type { Painter } from '../painters/painter.ts';
import { filmSegments, type SegmentedOptions, segmentsInto, withStore } from '../segments/film-segments.ts';
import { PacketReader, type SegmentIndex } from '../segments/segment-file.ts';
import type { SegmentStore } from '../segments/segment-store.ts';
import type { Segment } from '../segments/segments.ts';
import type { FramesPlan } from '../segments/video-plan.ts';
import { type HeldPicture, holdsFile, holdsText } from './holds-list.ts';

/** Fills the plan's folder with the film's frames, replacing any frames that were there. */
export async function writeFrameFolder(painter: Painter, plan: FramesPlan, options: SegmentedOptions): Promise<void> {
  const { signal } = options;
  const { segments } = filmSegments(painter, plan);
  await writeFolderAtomically(plan.file, (temp) =>
    withStore(`${temp}-segments`, async (store) => {
      const indices = await segmentsInto(store, segments, painter, plan, options);
      const { width, height, rate, frameCount } = painter;
      const film = { width, height, rate, frameCount, holds: holdsOf(painter), once: plan.holds };
      await fillFolder(temp, film, { segments, indices, store }, signal);
      signal?.throwIfAborted();
    }),
  );
}

/** What determines a folder of frames, apart from its pictures. */
export type FramesFilm = Pick<Painter, 'width' | 'height' | 'rate' | 'frameCount'> & {
  readonly holds: readonly Hold[];
  /** Whether each picture is written once, with a list of when it is shown. */
  readonly once: boolean;
};

export interface FramesMade {
  /** Of the whole film, in order. */
  readonly segments: readonly Pick<Segment, 'digest' | 'from' | 'frameCount' | 'moving'>[];
  readonly indices: readonly SegmentIndex[];
  readonly store: Pick<SegmentStore, 'fileOf'>;
}

/** Writes into an empty folder. */
export async function fillFolder(
  folder: string,
  film: FramesFilm,
  { segments, indices, store }: FramesMade,
  signal: AbortSignal | undefined,
): Promise<void> {
  const files = new Map<string, string>();
  const list: HeldPicture[] = [];
  const reader = new PacketReader();
  let at = 0;
  try {
    for (const { from, count, digest } of film.holds) {
      signal?.throwIfAborted();
      while (segments[at]!.from + segments[at]!.frameCount <= from) at += 1;
      const name = files.get(digest) ?? frameName(from, film.frameCount);
      list.push({ file: name, in: from, out: from + count });
      const isNew = !files.has(digest);
      files.set(digest, name);
      if (isNew) {
        const segment = segments[at]!;
        const place = indices[at]!.packets[Math.min(from - segment.from, segment.moving.length)]!;
        await writeFile(join(folder, name), reader.read(store.fileOf(segment), place).bytes, { flag: 'wx' });
      }
      if (film.once) continue;
      let named = join(folder, name);
      for (let frame = isNew ? from + 1 : from; frame < from + count; frame++) {
        named = await again(named, join(folder, frameName(frame, film.frameCount)));
      }
    }
  } finally {
    reader.close();
  }
  if (film.once) await writeFile(join(folder, holdsFile), holdsText(film, list));
}

/** Why `folder` may not be replaced: it contains something that is not one of our frames. Undefined if it may. */
export async function folderFault(folder: string): Promise<string | undefined> {
  let names: readonly string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    if (systemCode(error) === 'ENOTDIR') {
      return `'${basename(folder)}' is a file; give the name of a new folder, or a name that ends in .mp4, .mov or .webm`;
    }
    throw asMachineFailure(error, `cannot read the folder ${basename(folder)}`);
  }
  const other = names.find((name) => !/^\d{6,}\.png$/.test(name) && name !== holdsFile);
  if (other === undefined) return undefined;
  return `the folder '${basename(folder)}' contains '${other}', which is not a frame; frames replace a folder as a whole, so give a new or an empty one`;
}

/** `000012.png` for frame 12 of up to a million. */
export function frameName(frame: number, frameCount: number): string {
  const digitCount = Math.max(6, String(frameCount - 1).length);
  return `${String(frame).padStart(digitCount, '0')}.png`;
}

/** Adds a second name for a frame's file; returns the file to link the next name to. */
async function again(named: string, file: string): Promise<string> {
  try {
    await link(named, file); // It takes no space; a still minute is 1800 frames.
    return named;
  } catch (error) {
    if (!linkRefusals.has(systemCode(error) ?? '')) throw error;
    await copyFile(named, file);
    return file;
  }
}

/** The disk has no hard links, or this file has as many as it can have. */
const linkRefusals: ReadonlySet<string> = new Set(['EPERM', 'EMLINK', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EXDEV']);
