import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';

const basic = readFileSync(new URL('../scenes/checks/basic-01.yaml', import.meta.url), 'utf8');
const nets = readFileSync(new URL('../scenes/checks/nets-01.yaml', import.meta.url), 'utf8');

function adviceOn(text: string): string[] {
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics[0]?.message);
  return checkScene(scene).steps.flatMap(({ step, advice }) => advice.map((sentence) => `${step.id}: ${sentence}`));
}

const withAdvice = (text: string, advice: string) => text.replace('steps:', `advice: ${advice}\nsteps:`);

describe('advice on a step', () => {
  it('names a simpler argument, and a placement open for long', () => {
    const advice = adviceOn(basic);
    expect(advice).toContain('pair-9: a simpler argument gives the same: a hidden single');
    expect(advice).toContain('single-13: r2c2=4 was open 3 steps before single-13, at pair-10');
  });

  it('may be switched off, each on its own', () => {
    expect(adviceOn(withAdvice(basic, '{simpler: off}')).filter((each) => each.includes('simpler'))).toEqual([]);
    expect(adviceOn(withAdvice(basic, '{simpler: off, open: off}'))).toEqual([]);
  });

  it('warns about more cases than the scene allows, and says how many', () => {
    const counted = adviceOn(withAdvice(nets, '{simpler: off, open: off, cases: 1}'));
    expect(counted.length).toBeGreaterThan(0);
    for (const each of counted) expect(each).toMatch(/ takes \d+ cases to prove; nobody follows more than 1$/);
    expect(adviceOn(withAdvice(nets, '{simpler: off, open: off, cases: 100000}'))).toEqual([]);
  });

  it('refuses a value that is not a switch', () => {
    expect(readScene(withAdvice(basic, '{simpler: maybe}')).diagnostics[0]?.message).toMatch(/maybe.*on.*off/);
  });
});
