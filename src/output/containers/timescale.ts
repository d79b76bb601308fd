/**
 * The timescale of a .mp4 or .mov: in which fractions of a second it gives its times.
 */
import type { Fraction } from '../../scene/fraction.ts';

export interface Timescale {
  /** Units per second. */
  readonly scale: number;
  /** The exact duration of a frame, in units. */
  readonly each: number;
}

/**
 * At least ten thousand units per second (as in ffmpeg: libavformat/movenc.c). A player rounds the time that it seeks
 * to such units; if they are as long as a frame, Chromium was seen to go to the next frame if that is a keyframe.
 */
export function timescaleOf({ numerator, denominator }: Fraction): Timescale {
  let [scale, each] = [Number(numerator), Number(denominator)];
  while (scale < 10_000) {
    scale *= 2;
    each *= 2;
  }
  return { scale, each };
}
