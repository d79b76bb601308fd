import { describe, expect, it } from 'vitest';
import { chanceFrom } from '../../src/puzzles/chance.ts';

describe('chance from a seed', () => {
  it('gives the same for the same seed, and other things for seeds side by side', () => {
    const run = (seed: number) => {
      const chance = chanceFrom(seed);
      return Array.from({ length: 20 }, () => chance.below(1000));
    };
    expect(run(7)).toEqual(run(7));
    const starts = new Set(Array.from({ length: 500 }, (_, seed) => run(seed - 250).join()));
    expect(starts.size).toBe(500);
  });

  it('keeps to its range and comes to all of it about equally often', () => {
    const chance = chanceFrom(1);
    const counts = new Array<number>(9).fill(0);
    for (let draw = 0; draw < 9000; draw++) counts[chance.below(9)]!++;
    // 1000 each is expected; five standard deviations of a binomial are about 150.
    for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });

  it('shuffles without losing anything', () => {
    const all = Array.from({ length: 81 }, (_, index) => index);
    const mixed = chanceFrom(3).shuffled(all);
    expect(mixed).not.toEqual(all);
    expect(mixed.toSorted((a, b) => a - b)).toEqual(all);
  });

  it('branches without the branch moving it on', () => {
    const [a, b] = [chanceFrom(5), chanceFrom(5)];
    const branch = a.branch();
    branch.below(10);
    branch.below(10);
    b.branch();
    expect(a.below(1e6)).toBe(b.below(1e6));
  });
});
