import { describe, expect, it } from 'vitest';
import { isNearerTo } from '../../../src/output/segments/coarse-picture.ts';

const coarse = (...levels: number[]): Float32Array => Float32Array.from(levels);

describe('a picture is told from the one beside it', () => {
  const own = coarse(100, 100, 20);
  const grown = coarse(100, 130, 20);

  it.each([
    ['the very picture', own, true],
    ['a little lost', coarse(101, 103, 19), true],
    ['the other picture', grown, false],
    ['the other, a little lost', coarse(101, 127, 19), false],
  ])('by a stroke that has grown: %s', (_, picture, isOwn) => {
    expect(isNearerTo(picture, own, grown)).toBe(isOwn);
  });

  it('by nothing where a fade ends, since an encoder loses as much', () => {
    // As measured: the last picture of a fade, the one before it, and what H.264 made of the last.
    const [last, before, decoded] = [
      coarse(196.75, 201, 195.45),
      coarse(198.5, 203, 196.59),
      coarse(198.11, 201.97, 195.94),
    ];
    expect(isNearerTo(decoded, last, before)).toBe(true);
  });
});
