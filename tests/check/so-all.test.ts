/** `so: all` stands for what an argument proves; without an argument it does not count as a sound claim of nothing. */
import { expect, it } from 'vitest';
import { reportOn } from '../scenes/run.ts';

const puzzle = `proofreel: 1
puzzle:
  givens: |
    ....6...4
    74..8..9.
    .....5...
    ..7.48.3.
    68..7....
    4....6..9
    .7...1..3
    ..32.....
    .69....2.
steps:
`;
const stepOf = (lines: string) => {
  const { report, exit } = reportOn('scene.yaml', `${puzzle}  - id: a1\n${lines}`);
  return { ...report.steps[0]!, exit };
};

it.each([
  ['neither a name nor an argument', '    so: all\n', 'none is given'],
  ['a single, which removes nothing', '    because: hidden single\n    so: all\n', 'no hidden single was found'],
])('with %s the step is unsound and says why', (_, lines, reason) => {
  const step = stepOf(lines);
  expect(step.sound).toBe(false);
  expect(step.exit).toBe(1);
  expect(step.message).toContain(reason);
});

it('given only a name, an argument of that name is found and all its removals are concluded', () => {
  const step = stepOf('    because: naked pair\n    so: all\n');
  expect(step).toMatchObject({ sound: true, verdict: 'proved', missed: [], argument: { found: true } });
  expect(step.conclusions.length).toBeGreaterThan(0);
  expect(step.name?.judged).toBe('fits');
});
