/**
 * What is added to a video whose pictures are ready: sound, chapters, a timecode track. The pictures are copied as
 * they are.
 */

import { divide, type Fraction, fraction, nearest, zero } from '../scene/fraction.ts';
import type { Chapter } from '../timeline/chapters.ts';
import { chaptersInput } from './chapters.ts';
import { run } from './ffmpeg.ts';
import { type Footage, seekBefore, soundFilters } from './footage.ts';
import type { Painter } from './painter.ts';
import { sounds } from './sound.ts';
import type { Container } from './target.ts';

export interface Tracks {
  readonly sound: Footage | undefined;
  /** In order of `from`. */
  readonly chapters: readonly Chapter[];
  /** Of the first frame, as SMPTE writes it (`01:00:00:00`, `;` before the frames for drop-frame); for a .mov alone. */
  readonly timecode: string | undefined;
}

export function isFinished({ sound, chapters, timecode }: Tracks): boolean {
  return sound === undefined && chapters.length === 0 && timecode === undefined;
}

/** Writes the pictures of `picture` with those tracks, cut at their end, into `file`. */
export async function finishVideo(
  picture: string,
  { sound, chapters, timecode }: Tracks,
  container: Container,
  painter: Pick<Painter, 'rate' | 'frameCount'>,
  file: string,
  signal: AbortSignal | undefined,
): Promise<void> {
  const files: { file: string; options: readonly string[] }[] = [{ file: picture, options: [] }];
  const soundOptions: string[] = [];
  let filter: string | undefined;
  if (sound !== undefined) {
    const seek = seekBefore(sound.start);
    const { encoder, options } = sounds[container];
    filter = `[1:a:0]${soundFilters(seek.lead, secondsOf(painter))}[sound]`;
    files.push({ file: sound.file, options: seek.options });
    soundOptions.push('-map', '[sound]', '-c:a', encoder, ...options);
  }
  if (chapters.length > 0) files.push(chaptersInput(chapters, painter.rate));
  await run(
    {
      files,
      filter,
      outputOptions: [
        ...['-map', '0:v', '-c:v', 'copy', ...soundOptions, ...mappedChapters(chapters, files.length - 1)],
        // Nothing but the chapters is taken over: neither what a recording says of itself, nor its own chapters.
        ...['-map_metadata:s', '-1', '-map_metadata:s:v', '0:s:v', '-fflags', '+bitexact', '-f', container],
        ...(timecode === undefined ? [] : ['-timecode', timecode]),
        ...(container === 'webm' ? [] : ['-video_track_timescale', String(painter.rate.numerator)]),
        ...(container === 'mp4' ? ['-movflags', '+faststart'] : []),
      ],
      output: file,
    },
    signal,
  );
}

/** The options that take the chapters from the input with that number, or none from anywhere. */
export function mappedChapters(chapters: readonly Chapter[], input: number): readonly string[] {
  return ['-map_chapters', chapters.length === 0 ? '-1' : String(input)];
}

/** Whether a timecode track can count at that rate: libavutil/timecode.c of every ffmpeg from 4 to 7. */
export function hasTimecode(rate: Fraction): boolean {
  return [24n, 25n, 30n, 48n, 50n, 60n].includes(nearest(rate));
}

export function secondsOf({ rate, frameCount }: Pick<Painter, 'rate' | 'frameCount'>): Fraction {
  return frameCount === 0 ? zero : divide(fraction(frameCount), rate);
}
