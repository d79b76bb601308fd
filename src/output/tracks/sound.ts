/**
 * The sound of a video: which part of which file it is, and how it is compressed in each container.
 */
import { compare, type Fraction, floor, fraction, subtract, toNumber, zero } from '../../scene/fraction.ts';
import type { Container } from '../containers/track.ts';

/** A recording of sound or pictures: the time `start` (seconds, zero or more) of the file falls on the first frame. */
export interface Recording {
  readonly file: string;
  readonly start: Fraction;
}

export const sounds: Readonly<Record<Container, { readonly encoder: string; readonly options: readonly string[] }>> = {
  mp4: { encoder: 'aac', options: ['-b:a', '192k'] },
  mov: { encoder: 'pcm_s16le', options: [] },
  webm: { encoder: 'libopus', options: ['-b:a', '128k'] },
};

/** Where to begin reading, and how long after that the wanted moment is. */
export interface Seek {
  readonly options: readonly string[];
  readonly lead: Fraction;
}

/**
 * Reading a sound begins at a whole second before the wanted moment: ffmpeg takes times as microseconds, and a frame at
 * 1001/30000 s would fall on the wrong side of a rounded one. The rest is cut off with exact arithmetic in the graph.
 */
export function seekBefore(start: Fraction): Seek {
  const seconds = floor(start) - 1n;
  if (seconds <= 0n) return { options: [], lead: start };
  return { options: ['-ss', String(seconds)], lead: subtract(start, fraction(seconds)) };
}

/**
 * The filters between a sound and the video's: from `lead` on, with silence if it begins late, cut at `end` seconds.
 */
export function soundFilters(lead: Fraction, end: Fraction): string {
  const shift = compare(lead, zero) === 0 ? [] : [`asetpts=PTS-(${expression(lead)})/TB`];
  return [...shift, 'aresample=async=1:first_pts=0', `atrim=end=${toNumber(end).toFixed(6)}`].join(',');
}

/** A fraction in an ffmpeg expression. */
export function expression(value: Fraction): string {
  return `${value.numerator}/${value.denominator}`;
}
