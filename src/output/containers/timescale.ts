/**
 * In what parts of a second a .mp4 or .mov gives its times.
 */
import type { Fraction } from '../../scene/fraction.ts';

export interface Timescale {
  /** Parts of a second. */
  readonly scale: number;
  /** How many of them a frame lasts: exactly. */
  readonly each: number;
}

/**
 * At least ten thousand parts (as ffmpeg has it: libavformat/movenc.c). A player rounds the moment that it seeks to such
 * parts; where they are as long as a frame, Chromium was seen to go to the frame after it, if that is a keyframe.
 */
export function timescaleOf({ numerator, denominator }: Fraction): Timescale {
  let [scale, each] = [Number(numerator), Number(denominator)];
  while (scale < 10_000) {
    scale *= 2;
    each *= 2;
  }
  return { scale, each };
}
