/**
 * What is added to a video whose pictures are ready: its sound. The pictures are copied as they are.
 */
import { divide, type Fraction, fraction, zero } from '../scene/fraction.ts';
import { run } from './ffmpeg.ts';
import { type Footage, seekBefore, soundFilters } from './footage.ts';
import type { Painter } from './painter.ts';
import { sounds } from './sound.ts';
import type { Container } from './target.ts';

/** Writes the pictures of `picture` and that sound, cut at their end, into `file`. */
export async function addSound(
  picture: string,
  sound: Footage,
  container: Container,
  painter: Painter,
  file: string,
  signal: AbortSignal | undefined,
): Promise<void> {
  const seek = seekBefore(sound.start);
  const { encoder, options } = sounds[container];
  await run(
    {
      files: [
        { file: picture, options: [] },
        { file: sound.file, options: seek.options },
      ],
      filter: `[1:a:0]${soundFilters(seek.lead, secondsOf(painter))}[sound]`,
      outputOptions: [
        ...['-map', '0:v', '-c:v', 'copy', '-map', '[sound]', '-c:a', encoder, ...options],
        ...['-map_metadata', '-1', '-map_metadata:s:v', '0:s:v', '-fflags', '+bitexact', '-f', container],
        ...(container === 'webm' ? [] : ['-video_track_timescale', String(painter.rate.numerator)]),
        ...(container === 'mp4' ? ['-movflags', '+faststart'] : []),
      ],
      output: file,
    },
    signal,
  );
}

function secondsOf(painter: Painter): Fraction {
  return painter.frameCount === 0 ? zero : divide(fraction(painter.frameCount), painter.rate);
}
