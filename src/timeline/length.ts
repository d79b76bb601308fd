/**
 * How long the video is: `video.length`, else the footage's length from its `start` on, else the audio's. Where there
 * is none of these the last step's end decides.
 */

import type { Clock } from '../scene/anchors/anchor.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { compare, type Fraction, subtract, zero } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import { anywhere, momentOf, silentClock } from './clock.ts';
import { printSeconds, wholeFrames } from './seconds.ts';
import { orReport, timeError } from './time-faults.ts';
import type { VideoLength } from './video-length.ts';

/** Lengths of the files that the scene names, in seconds, where they are known. */
export interface MediaLengths {
  readonly audioSeconds?: Fraction;
  readonly footageSeconds?: Fraction;
}

/** Undefined where only the steps can say it, and where the length given is none (then with an error). */
export function videoLength(
  scene: TimedScene,
  clock: Clock,
  lengths: MediaLengths,
): { readonly length: VideoLength | undefined; readonly diagnostics: readonly Diagnostic[] } {
  const { length, footage } = scene.video;
  if (length !== undefined) {
    const diagnostics: Diagnostic[] = [];
    const moment = orReport(momentOf(clock, length.value, anywhere), length.span, diagnostics);
    return { length: moment === undefined ? undefined : lengthOf(clock, moment.seconds, 'length'), diagnostics };
  }
  if (footage !== undefined && lengths.footageSeconds !== undefined) {
    const seconds = subtract(lengths.footageSeconds, footageStart(scene));
    if (compare(seconds, zero) > 0) return { length: lengthOf(clock, seconds, 'footage'), diagnostics: [] };
    const message = `the footage lasts ${printSeconds(lengths.footageSeconds)}, and "start" lies after its end; give an earlier one`;
    return {
      length: undefined,
      diagnostics: [timeError('no-length', footage.start?.span ?? footage.file.span, message)],
    };
  }
  if (lengths.audioSeconds === undefined) return { length: undefined, diagnostics: [] };
  return { length: lengthOf(clock, lengths.audioSeconds, 'audio'), diagnostics: [] };
}

/**
 * The moment of the footage that falls on the video's first frame, in seconds; zero without `start`. A timecode there
 * counts from 00:00:00:00: it tells a place in the recording, not in the video.
 */
export function footageStart(scene: TimedScene): Fraction {
  const start = scene.video.footage?.start;
  if (start === undefined) return zero;
  const found = momentOf(silentClock(scene.video.rate), start.value, anywhere);
  return found.ok ? found.moment.seconds : zero;
}

function lengthOf(clock: Clock, seconds: Fraction, source: VideoLength['source']): VideoLength {
  return { seconds, frameCount: wholeFrames(clock.rate, seconds), source };
}
