/**
 * What is added to a video whose pictures are ready: sound, chapters, a timecode track. The pictures are copied
 * unchanged.
 */

import { divide, type Fraction, fraction, nearest, zero } from '../../scene/fraction.ts';
import type { Chapter } from '../../timeline/chapters.ts';
import { timescaleOf } from '../containers/timescale.ts';
import type { Container } from '../containers/track.ts';
import { type Input, run } from '../ffmpeg/ffmpeg.ts';
import { chaptersInput } from './chapters.ts';
import { type Recording, seekBefore, soundFilters, sounds } from './sound.ts';

/** The length of a film. */
export type Length = { readonly rate: Fraction; readonly frameCount: number };

export interface Tracks {
  /** `encoded`: it is already cut and compressed, as by `writeSound`. */
  readonly sound: (Recording & { readonly encoded?: boolean }) | undefined;
  /** In order of `from`. */
  readonly chapters: readonly Chapter[];
  /** Of the first frame, in SMPTE notation (`01:00:00:00`, `;` before the frames for drop-frame); only for a .mov. */
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
  film: Length,
  file: string,
  signal: AbortSignal | undefined,
): Promise<void> {
  const inputs: Input[] = [{ kind: 'file', file: picture, options: [] }];
  const soundOptions: string[] = [];
  let filter: string | undefined;
  if (sound?.encoded === true) {
    inputs.push({ kind: 'file', file: sound.file, options: [] });
    soundOptions.push('-map', '1:a', '-c:a', 'copy');
  } else if (sound !== undefined) {
    const encoding = soundEncoding(sound, 1, container, film);
    filter = encoding.filter;
    inputs.push(encoding.input);
    soundOptions.push(...encoding.options);
  }
  if (chapters.length > 0) inputs.push(chaptersInput(chapters, film.rate));
  await run(
    {
      inputs,
      filter,
      outputOptions: [
        ...['-map', '0:v', '-c:v', 'copy', ...soundOptions, ...mappedChapters(chapters, inputs.length - 1)],
        // Only these chapters are written: neither a recording's metadata nor its own chapters are copied.
        ...['-map_metadata:s', '-1', '-map_metadata:s:v', '0:s:v', '-fflags', '+bitexact', '-f', container],
        ...(timecode === undefined ? [] : ['-timecode', timecode]),
        ...(container === 'webm' ? [] : ['-video_track_timescale', String(timescaleOf(film.rate).scale)]),
        ...(container === 'mp4' ? ['-movflags', '+faststart'] : []),
      ],
      output: file,
    },
    signal,
  );
}

/** Writes only the sound, cut at the film's end and compressed for that container. */
export async function writeSound(
  sound: Recording,
  container: Container,
  film: Length,
  file: string,
  signal: AbortSignal | undefined,
): Promise<void> {
  const { input, filter, options } = soundEncoding(sound, 0, container, film);
  const bare = ['-map_metadata', '-1', '-map_chapters', '-1', '-fflags', '+bitexact', '-f', container];
  await run({ inputs: [input], filter, outputOptions: [...options, ...bare], output: file }, signal);
}

function soundEncoding(sound: Recording, number: number, container: Container, film: Length) {
  const seek = seekBefore(sound.start);
  const { encoder, options } = sounds[container];
  const input: Input = { kind: 'file', file: sound.file, options: seek.options };
  return {
    input,
    filter: `[${number}:a:0]${soundFilters(seek.lead, secondsOf(film))}[sound]`,
    options: ['-map', '[sound]', '-c:a', encoder, ...options],
  };
}

/** The options that take the chapters from the input with that number, or no chapters at all. */
export function mappedChapters(chapters: readonly Chapter[], input: number): readonly string[] {
  return ['-map_chapters', chapters.length === 0 ? '-1' : String(input)];
}

/** Whether a timecode track can have that rate: libavutil/timecode.c of every ffmpeg from 4 to 7. */
export function hasTimecode(rate: Fraction): boolean {
  return [24n, 25n, 30n, 48n, 50n, 60n].includes(nearest(rate));
}

export function secondsOf({ rate, frameCount }: Length): Fraction {
  return frameCount === 0 ? zero : divide(fraction(frameCount), rate);
}
