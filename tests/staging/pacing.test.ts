import { describe, expect, test } from 'vitest';
import { defaultLook } from '../../src/picture/default-look.ts';
import { fraction, toNumber } from '../../src/scene/fraction.ts';
import { claimPhases } from '../../src/staging/pacing.ts';
import { frameAt } from '../../src/timeline/film.ts';

const pacing = { rate: fraction(25), motion: defaultLook.motion };
const phases = (seconds: number, strokes: number, explains = true) =>
  claimPhases(
    pacing,
    { from: frameAt(100), until: frameAt(100 + seconds * 25) },
    { hasGround: true, strokes, explains },
  );

describe('the time of a claim', () => {
  const rows: readonly (readonly [seconds: number, strokes: number, apart: number])[] = [
    [4, 2, 1.0],
    [6, 3, 1.0],
    [10, 6, 1.0],
    [16, 12, 1.0],
    [10, 3, 1.6667],
    [60, 3, 11.6667],
  ];
  test.each(rows)('of %d s with %d sets or links: %d s each', (seconds, strokes, apart) => {
    expect(toNumber(phases(seconds, strokes).apart) / 25).toBeCloseTo(apart, 1);
  });

  test('where there is too little, all of it in proportion', () => {
    const { argument, apart, says, reach, follows } = phases(2, 10);
    expect(toNumber(apart)).toBeGreaterThan(2);
    expect([argument, says, reach, follows].map((frame) => frame - 100)).toEqual([6, 35, 37, 41]);
  });

  test('what there is to say comes after the argument, then the lines, then what follows', () => {
    for (const seconds of [0.2, 1, 4, 30]) {
      for (const strokes of [0, 1, 5, 20]) {
        const { argument, apart, says, reach, follows } = phases(seconds, strokes);
        const order = [
          100,
          argument,
          Math.max(argument, argument + strokes * toNumber(apart) - 0.51),
          says,
          reach,
          follows,
          100 + seconds * 25,
        ];
        expect(order).toEqual([...order].sort((a, b) => a - b));
      }
    }
  });
});
