import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignWords } from '../../src/timeline/word-alignment.ts';

const split = (text: string) => text.split(' ').filter((word) => word !== '');
const pairsOf = (before: string, after: string) => [...alignWords(split(before), split(after))];

/** The length of the longest common subsequence, by the plain table. */
function longestCommon(a: readonly string[], b: readonly string[]): number {
  let row = new Array<number>(b.length + 1).fill(0);
  for (const word of a) {
    const next = [0];
    for (const [index, other] of b.entries())
      next.push(word === other ? row[index]! + 1 : Math.max(row[index + 1]!, next[index]!));
    row = next;
  }
  return row.at(-1)!;
}

describe('which words are which', () => {
  const rows: readonly (readonly [why: string, before: string, after: string, pairs: readonly number[]])[] = [
    ['the same', 'a b c', 'a b c', [0, 1, 2]],
    ['words put in', 'a b c', 'a x b y z c', [0, 2, 5]],
    ['words left out', 'a x b y z c', 'a b c', [0, -1, 1, -1, -1, 2]],
    ['a word changed', 'a b c', 'a x c', [0, -1, 2]],
    ['nothing in common', 'a b', 'x y', [-1, -1]],
    ['nothing', '', 'x', []],
    ['a run stays together', 'this is this is not', 'x this is this is not', [1, 2, 3, 4, 5]],
    ['of two places that in which the run is longer', 'five is here', 'five no five is here', [2, 3, 4]],
    [
      'a word in the middle of a passage that was replaced is there by chance',
      'now a b c the d e f then',
      'now u v w the x y z then',
      [0, -1, -1, -1, -1, -1, -1, -1, 8],
    ],
  ];
  it.each(rows)('%s', (_, before, after, pairs) => {
    expect(pairsOf(before, after)).toEqual(pairs);
  });

  it('pairs are the same words, in order, and nearly as many as can be (against the plain table)', () => {
    const words = fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g'), { maxLength: 40 });
    fc.assert(
      fc.property(words, words, (before, after) => {
        const pairs = [...alignWords(before, after)];
        const kept = pairs.flatMap((b, a) => (b < 0 ? [] : [[a, b] as const]));
        for (const [index, [a, b]] of kept.entries()) {
          expect(before[a]).toBe(after[b]);
          if (index > 0) expect(b).toBeGreaterThan(kept[index - 1]![1]);
        }
        // Longer runs, and strays left out, may cost some.
        expect(kept.length).toBeLessThanOrEqual(longestCommon(before, after));
      }),
      { seed: 6 },
    );
  });

  it('an hour of speech, with passages put in and left out, in bounded time', () => {
    let state = 7;
    const next = (count: number) => {
      state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
      return Math.floor((state / 2_147_483_648) * count);
    };
    const before = Array.from({ length: 9000 }, () => `w${next(next(2) === 0 ? 30 : 1200)}`);
    const after = before.flatMap((word) => (next(40) === 0 ? [] : next(40) === 0 ? [word, `x${next(50)}`] : [word]));
    const begin = performance.now();
    const pairs = [...alignWords(before, after)];
    expect(performance.now() - begin).toBeLessThan(10_000);
    expect(pairs.filter((pair) => pair >= 0).length).toBeGreaterThan(0.95 * before.length);
  });

  it('texts without a phrase that stands once are cut in their middles', () => {
    const pairs = alignWords(new Array<string>(3000).fill('a'), ['b', ...new Array<string>(3000).fill('a'), 'b']);
    expect(pairs.filter((pair) => pair >= 0).length).toBeGreaterThan(2900);
  });
});
