/**
 * How long the video is: `video.length`, else the footage's length from its `start` on, else the audio's. If there is
 * none of these, the last step's end decides.
 */

import type { Clock } from '../scene/anchor.ts';
import { compare, type Fraction, subtract, zero } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import { anywhere, momentOf, silentClock } from './clock.ts';
import { printSeconds, wholeFrames } from './seconds.ts';
import { orReport, timeError } from './time-faults.ts';
import { type Report, TimeNode } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

/** Lengths of the files that the scene names, in seconds, if they are known. */
export interface MediaLengths {
  readonly audioSeconds?: Fraction;
  readonly footageSeconds?: Fraction;
}

/** `none`: a length is given but is not possible, which has been reported. */
export type GivenLength = VideoLength | 'none' | undefined;

/** Undefined if only the steps can determine it. */
export function lengthNode(scene: TimedScene, clock: Clock, lengths: MediaLengths): TimeNode<GivenLength> {
  return new TimeNode(
    'given length',
    () => [],
    (_valueOf, report) => lengthOfVideo(scene, clock, lengths, report),
  );
}

function lengthOfVideo(scene: TimedScene, clock: Clock, lengths: MediaLengths, report: Report): GivenLength {
  const { length, footage } = scene.video;
  if (length !== undefined) {
    const found = momentOf(clock, length.value, anywhere);
    const moment = orReport(found, length.span, report);
    if (moment !== undefined) return lengthOf(clock, moment.seconds, 'length');
    return found.ok || found.fault !== undefined ? 'none' : undefined;
  }
  if (footage !== undefined && lengths.footageSeconds !== undefined) {
    const seconds = subtract(lengths.footageSeconds, footageStart(scene));
    if (compare(seconds, zero) > 0) return lengthOf(clock, seconds, 'footage');
    const message = `the footage lasts ${printSeconds(lengths.footageSeconds)}, and "start" is after its end; give an earlier one`;
    report(timeError('no-length', footage.start?.span ?? footage.file.span, message));
    return 'none';
  }
  return lengths.audioSeconds === undefined ? undefined : lengthOf(clock, lengths.audioSeconds, 'audio');
}

/**
 * The moment of the footage that coincides with the video's first frame, in seconds; zero without `start`. A timecode
 * there counts from 00:00:00:00: it is a position in the recording, not in the video.
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
