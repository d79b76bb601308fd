/** Where keyframes stand: in motion, and again in a picture that is held for long. */
import { expect, it } from 'vitest';
import { isKeyAgain, keysOf } from '../../../src/output/segments/samples.ts';
import type { Segment } from '../../../src/output/segments/segments.ts';

const segment = (moving: number, held: number): Segment => ({
  digest: '',
  from: 0,
  frameCount: moving + held,
  moving: Array.from({ length: moving }, (_, frame) => frame),
  hold: held === 0 ? undefined : { frame: moving, count: held },
  holdPictures: 1,
});

it.each([
  [0, 100, true],
  [1, 100, false],
  [60, 100, true],
  [60, 62, true],
  // Alone at the end it would be next to the keyframe that follows.
  [60, 61, false],
])('frame %d of %d that are held: %s', (frame, count, isKey) => {
  expect(isKeyAgain(frame, count, 60)).toBe(isKey);
});

it.each([
  [130, 0, [0, 60, 120]],
  [121, 0, [0, 60]],
  [121, 9, [0, 60, 121]],
  [1, 0, [0]],
  [0, 9, [0]],
])('%d in motion and %d that are held', (moving, held, keys) => {
  expect(keysOf(segment(moving, held), 60)).toEqual(keys);
});
