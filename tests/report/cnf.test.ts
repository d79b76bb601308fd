import { readFileSync } from 'node:fs';
import Logic from 'logic-solver';
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { certificatesOf } from '../../src/report/cnf.ts';

function certificates(name: string) {
  const { scene } = readScene(readFileSync(new URL(`../scenes/checks/${name}`, import.meta.url), 'utf8'));
  if (scene === undefined) throw new Error(name);
  return certificatesOf(checkScene(scene));
}

/** Reads the DIMACS text by the format's own rules, knowing nothing of scenes, and asks logic-solver (MiniSat). */
function isSatisfiable(dimacs: string): boolean {
  const lines = dimacs.split('\n').filter((line) => line !== '' && !line.startsWith('c'));
  const [, variables, clauses] = /^p cnf (\d+) (\d+)$/.exec(lines[0] ?? '') ?? [];
  const read = lines.slice(1).map((line) => line.split(' ').map(Number));
  expect(read).toHaveLength(Number(clauses));
  const solver = new Logic.Solver();
  for (const clause of read) {
    expect(clause.at(-1)).toBe(0);
    const literals = clause.slice(0, -1);
    for (const literal of literals) expect(Math.abs(literal)).toBeLessThanOrEqual(Number(variables));
    solver.require(Logic.or(...literals.map((literal) => (literal < 0 ? `-v${-literal}` : `v${literal}`))));
  }
  return solver.solve() !== null;
}

describe('certificates, solved by a general solver from their text alone', () => {
  it.each([
    'basic-01.yaml',
    'wings-01.yaml',
    'deadly-01.yaml',
    'either-01.yaml',
    'spoilt-third-01.yaml',
    'spoilt-early-01.yaml',
    'size6-01.yaml',
  ])('%s', (name) => {
    const all = certificates(name);
    expect(all.length).toBeGreaterThan(4);
    for (const { name: file, text } of all) {
      const isProved = /^c step .*, proved$/m.test(text);
      expect([file, isSatisfiable(text)]).toEqual([file, !isProved]);
    }
  });

  it('names variables and sets in comments', () => {
    const [first] = certificates('basic-01.yaml');
    expect(first?.name).toBe('single-1-1-r3c5-is-5.cnf');
    expect(first?.text).toMatch(/^c variable 1 is 5r3c5$/m);
    expect(first?.text).toMatch(/^c set 5b2: 1$/m);
  });
});
