/** Ten thousand cases, as in `fuzz.test.ts`. */
import { it } from 'vitest';
import { runCases } from './fuzz.ts';

const block = 200;

it.each(Array.from({ length: 10_000 / block }, (_, at) => 1_000 + block * at))(
  'cases from %d on',
  (from) => runCases(from, block),
  3_600_000,
);
