import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Bug } from '../../src/grid/bug.ts';
import { add, fraction, fractionFromDecimal, fractionOf, multiply } from '../../src/scene/fraction.ts';
import { frameAt } from '../../src/timeline/film.ts';
import {
  frameAtTime,
  framesLasting,
  nearestFrame,
  printFrame,
  printSeconds,
  timeOfFrame,
  wholeFrames,
} from '../../src/timeline/seconds.ts';

const ntsc = fraction(30_000, 1001);
const rates = [
  fraction(24),
  fraction(25),
  ntsc,
  fraction(50),
  fraction(60),
  fraction(60_000, 1001),
  fraction(120),
  fraction(1000),
];

describe('a time is the nearest frame, halves up', () => {
  const rows = [
    ['1.02', fraction(25), 26],
    ['1.0199', fraction(25), 25],
    ['1', ntsc, 30],
    ['60', ntsc, 1798],
    ['190', ntsc, 5694],
    ['0.02083', fraction(24), 0],
    ['0.02084', fraction(24), 1],
    ['0', fraction(60), 0],
    // Exactly half a frame, which 0.1 * 3 in floating point would miss: 0.3 * 5 / 3 is a half.
    ['0.3', fraction(5, 3), 1],
  ] as const;
  it.each(rows)('%s s at %o is frame %i', (text, rate, frame) => {
    expect(frameAtTime(rate, fractionFromDecimal(text)!)).toBe(frame);
  });
});

describe('seconds of a look are rounded as the decimal that was written', () => {
  it.each([
    // 0.58 * 25 is 14.499999999999998 in floating point, and 14.5 on paper.
    [0.58, fraction(25), 15],
    [1.1, fraction(25), 28],
    [0.3, fraction(25), 8],
    [0.35, fraction(30), 11],
    [0.35, ntsc, 10],
    [1e-7, fraction(240), 1],
    [0, fraction(25), 1],
  ] as const)('%d s at %o are %i frames', (seconds, rate, frames) => {
    expect(framesLasting(rate, seconds)).toBe(frames);
  });

  it.each([
    [0.1, fraction(1, 10)],
    [12, fraction(12)],
    [-0.25, fraction(-1, 4)],
    [1e-7, fraction(1n, 10_000_000n)],
    [1e21, fraction(10n ** 21n)],
  ] as const)('%d is the fraction %o', (number, exact) => {
    expect(fractionOf(number)).toEqual(exact);
  });
});

describe('a frame is never clamped or rounded on the way', () => {
  it.each([-1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('%d is no frame', (number) => {
    expect(() => frameAt(number)).toThrow(Bug);
  });

  it('and a time before the first frame has none', () => {
    expect(frameAtTime(fraction(25), fraction(-1, 50))).toBe(0);
    expect(() => frameAtTime(fraction(25), fraction(-3, 100))).toThrow(Bug);
    expect(() => nearestFrame(fraction(-1))).toThrow(Bug);
  });
});

describe('frames of a length are exact', () => {
  it.each([
    [fraction(24), 86_400],
    [fraction(25), 90_000],
    [ntsc, 107_892],
    [fraction(60), 216_000],
  ] as const)('an hour at %o has %i', (rate, frames) => {
    expect(wholeFrames(rate, fraction(3600))).toBe(frames);
  });
});

describe('printed times', () => {
  it.each([
    [fraction(0), '0:00.00'],
    [fraction(125, 2), '1:02.50'],
    [fraction(59_995, 1000), '1:00.00'],
    [fraction(3602), '1:00:02.00'],
  ] as const)('%o s is %s', (seconds, text) => {
    expect(printSeconds(seconds)).toBe(text);
  });

  it('frame 1800 at 30000/1001', () => expect(printFrame(ntsc, 1800)).toBe('1:00.06'));

  it('read again they give the same frame', () => {
    fc.assert(
      fc.property(fc.constantFrom(...rates), fc.nat(5_000_000), (rate, frame) => {
        const parts = printFrame(rate, frame).split(':');
        const seconds = parts.reduce(
          (sum, part) => add(multiply(sum, fraction(60)), fractionFromDecimal(part)!),
          fraction(0),
        );
        expect(frameAtTime(rate, seconds)).toBe(frame);
        expect(frameAtTime(rate, timeOfFrame(rate, frame))).toBe(frame);
      }),
    );
  });
});
