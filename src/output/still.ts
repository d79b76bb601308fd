/**
 * One frame as a PNG file.
 */
import { writeFile } from 'node:fs/promises';
import { basename, extname, resolve } from 'node:path';
import { Bug } from '../grid/bug.ts';
import { writeAtomically } from './machine/atomic-write.ts';
import { pathFault, type Refusal } from './machine/output-path.ts';
import type { Painter } from './painters/painter.ts';
import { frameCanvas } from './pixels/canvas.ts';
import { keyFault } from './target.ts';

export interface StillOptions {
  /** `#rrggbb`, put under the frame. */
  readonly key?: string | undefined;
}

/** Writes frame `frame` to `file`, which must end in .png; an existing file is replaced. Throws a `MachineFailure`. */
export async function writeStill(
  painter: Painter,
  frame: number,
  file: string,
  options: StillOptions = {},
): Promise<{ readonly kind: 'written'; readonly path: string } | Refusal> {
  if (extname(file).toLowerCase() !== '.png') {
    return { kind: 'refused', message: `a still is a PNG: name it with .png, not '${basename(file)}'` };
  }
  const path = resolve(file);
  const message = keyFault(options.key) ?? pathFault(path);
  if (message !== undefined) return { kind: 'refused', message };
  if (frame < 0 || frame >= painter.frameCount) throw new Bug('a still is a frame of its film');
  const canvas = frameCanvas(painter.width, painter.height, options.key);
  canvas.draw(painter, frame);
  await writeAtomically(path, (temp) => writeFile(temp, canvas.png()));
  return { kind: 'written', path };
}
