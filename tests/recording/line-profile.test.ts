import { describe, expect, it } from 'vitest';
import { lineMiddle } from '../../src/recording/line-profile.ts';

/** Levels at every half pixel from -8 to 8 across a line of that thickness at `at`, each the mean over a pixel around it. */
function profile(line: { at: number; thick: number; level: number }, left: number, right: number): Float64Array {
  return Float64Array.from({ length: 33 }, (_, index) => {
    let sum = 0;
    for (let part = 0; part < 50; part++) {
      const x = -8 + index / 2 + (part + 0.5) / 50 - 0.5;
      const isLine = Math.abs(x - line.at) < line.thick / 2;
      sum += isLine ? line.level : x < line.at ? left : right;
    }
    return sum / 50;
  });
}

describe('the middle of a line', () => {
  const rows: readonly (readonly [string, Parameters<typeof profile>, 'dark' | 'light' | 'step'])[] = [
    ['thin and dark', [{ at: 0.3, thick: 1, level: 0 }, 255, 255], 'dark'],
    ['thin and faint', [{ at: -1.2, thick: 1, level: 240 }, 255, 255], 'dark'],
    ['thick and light', [{ at: 1.4, thick: 5, level: 220 }, 30, 30], 'light'],
    ['with a tint on one side', [{ at: 0.6, thick: 2, level: 20 }, 250, 200], 'dark'],
    ['a gap between tiles of two colours', [{ at: -0.4, thick: 3, level: 20 }, 60, 90], 'dark'],
    ['no line, but two colours', [{ at: 0.7, thick: 0, level: 0 }, 60, 120], 'step'],
  ];
  it.each(rows)('%s', (_, [line, left, right], kind) => {
    const found = lineMiddle(profile(line, left, right));
    expect(found?.kind).toBe(kind);
    expect((found?.at ?? 0) / 2 - 8).toBeCloseTo(line.at, 1);
  });

  it('nothing where all is alike', () => {
    expect(lineMiddle(profile({ at: 0, thick: 1, level: 101 }, 100, 100))).toBeUndefined();
  });

  it('nothing where the level only rises and falls', () => {
    expect(lineMiddle(Float64Array.from({ length: 33 }, (_, index) => index))).not.toMatchObject({ kind: 'dark' });
  });
});
