import { describe, expect, it } from 'vitest';
import {
  boardToPicture,
  type Corners,
  cornersUnder,
  furthestApart,
  uprightCorners,
} from '../../src/recording/corners.ts';
import { type Homography, homographyOf, inverted, mapped, product } from '../../src/recording/homography.ts';
import { chanceFrom } from '../random.ts';

const tilted: Corners = [
  [412, 103],
  [1320, 140],
  [1388, 1010],
  [350, 960],
];

describe('a homography', () => {
  it('of four pairs meets them exactly', () => {
    const map = boardToPicture(tilted, 9);
    expect(furthestApart(cornersUnder(map, 9), tilted)).toBeLessThan(1e-9);
  });

  it('of an upright square only moves and scales', () => {
    const map = boardToPicture(uprightCorners(100, 50, 900, 900), 9);
    const expected = [100, 0, 100, 0, 100, 50, 0, 0, 1];
    for (const [index, value] of map.entries()) expect(value).toBeCloseTo(expected[index]!, 9);
  });

  it('and back is where one was', () => {
    const map = boardToPicture(tilted, 9);
    const [x, y] = mapped(inverted(map), mapped(map, [2.25, 7.5]));
    expect(x).toBeCloseTo(2.25, 9);
    expect(y).toBeCloseTo(7.5, 9);
    const same = product(inverted(map), map);
    expect(same[0] / same[8]).toBeCloseTo(1, 9);
    expect(same[1] / same[8]).toBeCloseTo(0, 9);
  });

  it('of many pairs that are a little off lies nearer than each of them', () => {
    const truth = boardToPicture(tilted, 9);
    const chance = chanceFrom(4);
    const off = () => (chance.below(2001) - 1000) / 1000;
    const pairs = Array.from({ length: 100 }, (_, index) => {
      const from = [index % 10, Math.floor(index / 10)] as const;
      const [x, y] = mapped(truth, from);
      return { from, to: [x + off(), y + off()] as const };
    });
    const found: Homography = homographyOf(pairs);
    expect(furthestApart(cornersUnder(found, 9), tilted)).toBeLessThan(0.6);
    expect(squares(found, pairs)).toBeLessThan(squares(truth, pairs));
  });

  it('counts a pair by its weight', () => {
    const corners = uprightCorners(0, 0, 9, 9);
    const good = corners.map((from, index) => ({ from, to: tilted[index]!, weight: 1000 }));
    const bad = { from: [4, 4] as const, to: [0, 0] as const, weight: 0.001 };
    expect(furthestApart(cornersUnder(homographyOf([...good, bad]), 9), tilted)).toBeLessThan(0.01);
  });
});

function squares(map: Homography, pairs: Parameters<typeof homographyOf>[0]): number {
  return pairs.reduce((sum, { from, to }) => {
    const [x, y] = mapped(map, from);
    return sum + (x - to[0]) ** 2 + (y - to[1]) ** 2;
  }, 0);
}
