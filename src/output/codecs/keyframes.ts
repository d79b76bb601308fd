/**
 * How often a video has a keyframe.
 */
import { type Fraction, toNumber } from '../../scene/fraction.ts';

/** Two seconds of frames: seeking in an editor or player never takes long. */
export function keyframeEvery(rate: Fraction): number {
  return Math.max(1, Math.round(2 * toNumber(rate)));
}
