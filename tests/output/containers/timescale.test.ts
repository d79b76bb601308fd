/** Frames last whole parts of a second, and parts are shorter than what a player rounds to. */
import { expect, it } from 'vitest';
import { timescaleOf } from '../../../src/output/containers/timescale.ts';
import { fraction } from '../../../src/scene/fraction.ts';

it.each([
  [fraction(24n), 12_288, 512],
  [fraction(25n), 12_800, 512],
  [fraction(30_000n, 1001n), 30_000, 1001],
  [fraction(60n), 15_360, 256],
])('%o', (rate, scale, each) => {
  // The values that ffprobe shows for files of ffmpeg's own at these rates (time_base; 5.1.9).
  expect(timescaleOf(rate)).toEqual({ scale, each });
});
