/**
 * Scenes by chance, sound and spoilt, judged by the checker and by a second reading of the rules that shares no code with
 * it (`rules.ts`, `arguments.ts`, `claims.ts`). `JUDGE_SCENES=2000` looks at more of them, `JUDGE_FROM=500` at others.
 */
import { describe, expect, it } from 'vitest';
import { reportOn } from '../scenes/run.ts';
import { differencesIn } from './compare.ts';
import { inventTale } from './invent.ts';

const first = Number(process.env.JUDGE_FROM ?? 0);
const count = Number(process.env.JUDGE_SCENES ?? 16);
const perTest = 8;

describe('the report agrees with a second reading of the rules', () => {
  for (let from = first; from < first + count; from += perTest) {
    it(`scenes ${from} to ${from + perTest - 1}`, () => {
      for (let seed = from; seed < from + perTest; seed++) {
        const tale = inventTale(seed, 10);
        const differences = differencesIn(tale.truth, tale.steps, reportOn('invented.yaml', tale.text));
        expect(differences, `scene ${seed}:\n${tale.text}`).toEqual([]);
      }
    });
  }
});
