/**
 * How often a video begins anew.
 */
import { type Fraction, toNumber } from '../../scene/fraction.ts';

/** Two seconds of frames: an editor or a player that jumps never waits long. */
export function keyframeEvery(rate: Fraction): number {
  return Math.max(1, Math.round(2 * toNumber(rate)));
}
