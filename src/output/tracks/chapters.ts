/**
 * Chapters as ffmpeg reads them (FFMETADATA1), passed in the call itself, so that no file is needed.
 */

import { divide, type Fraction, fraction, multiply, nearest } from '../../scene/fraction.ts';
import type { Chapter } from '../../timeline/chapters.ts';
import type { Input } from '../ffmpeg/ffmpeg.ts';

/**
 * The input that carries the chapters. Times are whole milliseconds, the finest that all containers keep: the first at
 * or after the frame's own time, so that a player that seeks there shows that frame.
 */
export function chaptersInput(chapters: readonly Chapter[], rate: Fraction): Input {
  const lines = [';FFMETADATA1'];
  for (const { name, from, until } of chapters) {
    lines.push('[CHAPTER]', 'TIMEBASE=1/1000', `START=${milliseconds(from, rate)}`, `END=${milliseconds(until, rate)}`);
    lines.push(`title=${escaped(name)}`);
  }
  return { kind: 'text', text: `${lines.join('\n')}\n`, format: 'ffmetadata' };
}

/** After a trailing backslash, even an escaped one, ffmpeg would take the next line as a part of the title. */
function escaped(title: string): string {
  return title.replace(/[=;#\\\n]/g, '\\$&').replace(/\\$/, '$& ');
}

/** Rounded up. */
function milliseconds(frame: number, rate: Fraction): bigint {
  const exact = multiply(divide(fraction(frame), rate), fraction(1000n));
  const near = nearest(exact);
  return near * exact.denominator < exact.numerator ? near + 1n : near;
}
