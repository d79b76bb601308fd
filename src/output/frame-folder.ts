/**
 * A folder of PNG frames: `000000.png`, `000001.png`, ... one for each frame, six digits or as many as the last needs.
 */
import { copyFile, link, readdir, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { frameCanvas } from './canvas.ts';
import { type FrameSource, frameSource } from './frame-source.ts';
import { asMachineFailure, systemCode } from './machine-failure.ts';
import type { Painter } from './painter.ts';
import type { ProgressMeter } from './progress.ts';
import { writeWholeFolder } from './whole-file.ts';

/** Fills `folder` (an absolute path) with the film's frames, in place of the frames that were there. */
export async function writeFrameFolder(
  painter: Painter,
  folder: string,
  options: {
    readonly key: string | undefined;
    readonly meter: ProgressMeter;
    readonly signal: AbortSignal | undefined;
  },
): Promise<void> {
  const frames = frameSource(painter, frameCanvas(painter.width, painter.height, options.key), 'png');
  await writeWholeFolder(folder, async (part) => {
    let standing: string | undefined;
    for (let frame = 0; frame < painter.frameCount; frame++) {
      options.signal?.throwIfAborted();
      const file = join(part, frameName(frame, painter.frameCount));
      standing = await writeFrame(frames, frame, file, standing);
      options.meter.count(frames.drawnCount);
    }
    options.signal?.throwIfAborted();
  });
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
  const other = names.find((name) => !/^\d{6,}\.png$/.test(name));
  if (other === undefined) return undefined;
  return `the folder '${basename(folder)}' holds '${other}', which is no frame; frames replace a folder as a whole, so give a new or an empty one`;
}

/** `000012.png` for frame 12 of up to a million. */
export function frameName(frame: number, frameCount: number): string {
  const digitCount = Math.max(6, String(frameCount - 1).length);
  return `${String(frame).padStart(digitCount, '0')}.png`;
}

/** Writes one frame, and returns the file that the next ones may be copied from while nothing moves. */
async function writeFrame(frames: FrameSource, frame: number, file: string, standing: string | undefined) {
  if (standing === undefined || !frames.isRepeat(frame)) {
    await writeFile(file, frames.bytesAt(frame), { flag: 'wx' });
    return file;
  }
  try {
    await link(standing, file); // A second name costs no room; a minute that stands still is 1800 frames.
    return standing;
  } catch (error) {
    if (!linkRefusals.has(systemCode(error) ?? '')) throw error;
    await copyFile(standing, file);
    return file;
  }
}

/** The disk knows no second names, or this file has as many as it can have. */
const linkRefusals: ReadonlySet<string> = new Set(['EPERM', 'EMLINK', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EXDEV']);
