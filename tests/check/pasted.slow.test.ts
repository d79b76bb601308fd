/**
 * Many random scenes: every step offered for pasting is sound, its name fits, and it does what is promised.
 */
import { expect, it } from 'vitest';
import { inventTale } from '../judge/invent.ts';
import { pasteEach } from './pasted.ts';

const seeds = Array.from({ length: 200 }, (_, index) => 1000 + index);

it('in 200 scenes', { timeout: 600_000 }, () => {
  const all = seeds.flatMap((seed) => pasteEach(inventTale(seed, 8).text).map((pasted) => ({ seed, ...pasted })));
  expect(all.length).toBeGreaterThan(50);
  expect(all.filter(({ wrong }) => wrong.length > 0)).toEqual([]);
});
