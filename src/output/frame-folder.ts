/**
 * A folder of PNG frames: `000000.png`, `000001.png`, ... one for each frame, six digits or as many as the last needs. A
 * picture that stands, or returns, is one file with many names. Or, with holds, each picture once and a list of when it
 * is seen.
 */
import { copyFile, link, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { codecOf } from './codecs/codecs.ts';
import { type Hold, holdsFile, holdsText } from './holds.ts';
import { asMachineFailure, systemCode } from './machine-failure.ts';
import type { Painter } from './painters/painter.ts';
import type { ProgressMeter } from './progress.ts';
import { renderSegments } from './segments/render-segments.ts';
import { PacketReader } from './segments/segment-file.ts';
import { folderStore } from './segments/segment-store.ts';
import { filmSegments } from './segments/segment-video.ts';
import { stretchesOf } from './segments/stretches.ts';
import { writeWholeFolder } from './whole-file.ts';

export interface FolderOptions {
  /** `#rrggbb`, laid under every frame. */
  readonly key: string | undefined;
  /** Each picture once, and a list. */
  readonly holds: boolean;
  readonly meter: ProgressMeter;
  readonly signal: AbortSignal | undefined;
}

/** Fills `folder` (an absolute path) with the film's frames, in place of the frames that were there. */
export async function writeFrameFolder(painter: Painter, folder: string, options: FolderOptions): Promise<void> {
  await writeWholeFolder(folder, async (part) => {
    const scratch = `${part}-segments`;
    try {
      await mkdir(scratch);
      await fill(painter, part, scratch, options);
      options.signal?.throwIfAborted();
    } finally {
      await rm(scratch, { recursive: true, force: true });
    }
  });
}

async function fill(painter: Painter, folder: string, scratch: string, options: FolderOptions): Promise<void> {
  const { key, holds, meter, signal } = options;
  const kind = { codec: 'png', opaque: false, compatible: false } as const;
  const codec = codecOf('png', painter, kind);
  const store = folderStore(scratch);
  const segments = filmSegments(painter, codec, key);
  const setting = { ...kind, key, folder: scratch };
  const indices = await renderSegments(segments, { painter, codec, setting, store, meter, signal });
  const files = new Map<string, string>();
  const list: Hold[] = [];
  const reader = new PacketReader();
  const pictures = picturesByFrame(segments.map(({ moving, still }) => [...moving, ...(still ? [still.frame] : [])]));
  try {
    for (const { from, count, digest } of stretchesOf(painter)) {
      signal?.throwIfAborted();
      const name = files.get(digest) ?? frameName(from, painter.frameCount);
      list.push({ file: name, in: from, out: from + count });
      const isNew = !files.has(digest);
      files.set(digest, name);
      if (isNew) {
        const [segment, place] = pictures.get(from)!;
        const { bytes } = reader.read(store.fileOf(segments[segment]!), indices[segment]!.packets[place]!);
        await writeFile(join(folder, name), bytes, { flag: 'wx' });
      }
      if (holds) continue;
      let standing = join(folder, name);
      for (let frame = isNew ? from + 1 : from; frame < from + count; frame++) {
        standing = await again(standing, join(folder, frameName(frame, painter.frameCount)));
      }
    }
  } finally {
    reader.close();
  }
  if (holds) await writeFile(join(folder, holdsFile), holdsText(painter, list));
}

/** By the frame that a picture was drawn for: its segment, and its place there. */
function picturesByFrame(segments: readonly (readonly number[])[]): ReadonlyMap<number, readonly [number, number]> {
  const places = new Map<number, readonly [number, number]>();
  segments.forEach((frames, segment) => {
    frames.forEach((frame, place) => {
      if (!places.has(frame)) places.set(frame, [segment, place]);
    });
  });
  return places;
}

/** Why `folder` may not be replaced: it holds something that is no frame of ours. Undefined where it may. */
export async function folderFault(folder: string): Promise<string | undefined> {
  let names: readonly string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    if (systemCode(error) === 'ENOTDIR') {
      return `'${basename(folder)}' is a file; give the name of a new folder, or one with .mp4, .mov or .webm`;
    }
    throw asMachineFailure(error, `cannot read the folder ${basename(folder)}`);
  }
  const other = names.find((name) => !/^\d{6,}\.png$/.test(name) && name !== holdsFile);
  if (other === undefined) return undefined;
  return `the folder '${basename(folder)}' holds '${other}', which is no frame; frames replace a folder as a whole, so give a new or an empty one`;
}

/** `000012.png` for frame 12 of up to a million. */
export function frameName(frame: number, frameCount: number): string {
  const digitCount = Math.max(6, String(frameCount - 1).length);
  return `${String(frame).padStart(digitCount, '0')}.png`;
}

/** A second name for a frame's file, and the file from which the next may be had. */
async function again(standing: string, file: string): Promise<string> {
  try {
    await link(standing, file); // It costs no room; a minute that stands still is 1800 frames.
    return standing;
  } catch (error) {
    if (!linkRefusals.has(systemCode(error) ?? '')) throw error;
    await copyFile(standing, file);
    return file;
  }
}

/** The disk knows no second names, or this file has as many as it can have. */
const linkRefusals: ReadonlySet<string> = new Set(['EPERM', 'EMLINK', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EXDEV']);
