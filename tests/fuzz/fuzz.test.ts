/**
 * Files and calls that are nearly right: whatever was changed in them, they are carried out or refused in words.
 * `SEED=400 CASES=1000 npx vitest run tests/fuzz/fuzz.test.ts` runs others; `KEEP=1` keeps the smallest that fails.
 */
import { expect, it } from 'vitest';
import { caseOf, runCases } from './fuzz.ts';
import { kinds } from './kinds.ts';

const first = Number(process.env.SEED ?? 1);
const count = Number(process.env.CASES ?? 300);

it.each(Array.from({ length: Math.ceil(count / 50) }, (_, block) => first + 50 * block))(
  'cases from %d on',
  (from) => runCases(from, Math.min(50, first + count - from)),
  600_000,
);

it('every kind is among them, and a number is one case', () => {
  const made = Array.from({ length: 100 }, (_, seed) => caseOf(seed));
  expect(new Set(made.map(({ kind }) => kind))).toEqual(new Set(Object.keys(kinds)));
  expect(made.slice(0, 20)).toEqual(Array.from({ length: 20 }, (_, seed) => caseOf(seed)));
  expect(new Set(made.map(({ text }) => text)).size).toBeGreaterThan(95);
});
