/**
 * Pictures through one of ffmpeg's encoders, to the bytes that it produces.
 */
import { readFile, rm } from 'node:fs/promises';
import { encode } from '../ffmpeg/ffmpeg.ts';
import { isDiskFull } from '../machine/atomic-write.ts';
import { diskIsFull, MachineFailure } from '../machine/machine-failure.ts';
import { canvasPixelFormat } from '../pixels/canvas.ts';
import type { PixelFormat } from '../pixels/frame-source.ts';
import type { CodecFilm, Work } from './codec.ts';
import { colourTags } from './colour.ts';

export type Pictures = Pick<CodecFilm, 'width' | 'height' | 'rate'> & { readonly format: PixelFormat };

/** `outputOptions` name the encoder and the file format; `filter` comes between the pictures and the encoder. */
export async function encodePictures(
  work: Work,
  { width, height, rate, format }: Pictures,
  outputOptions: readonly string[],
  filter: string = colourTags,
): Promise<Uint8Array> {
  const everyKey = work.keys.map((key) => `eq(n,${key})`).join('+');
  const encoding = {
    frameOptions: [
      ...['-f', 'rawvideo', '-pix_fmt', format === 'opaque' ? canvasPixelFormat : format],
      ...['-video_size', `${width}x${height}`, '-framerate', `${rate.numerator}/${rate.denominator}`],
    ],
    inputs: [],
    filter: `[0:v]${filter}[video]`,
    outputOptions: [
      ...['-map', '[video]', '-force_key_frames', `expr:${everyKey}`, '-frames:v', String(work.count)],
      ...['-map_metadata', '-1', '-fflags', '+bitexact', ...outputOptions],
    ],
    output: work.scratch,
  };
  try {
    await encode(encoding, work.pictures, work.signal);
    // An encoder on a full disk may exit as if it had succeeded.
    if (await isDiskFull(work.scratch)) throw new MachineFailure(`cannot write the video: ${diskIsFull}`);
    return await readFile(work.scratch);
  } finally {
    await rm(work.scratch, { force: true });
  }
}
