/** What a failure rests on is given by the name of the step; within one step, as what comes before it there. */
import { expect, it } from 'vitest';
import { reportOn } from '../scenes/run.ts';

const scene = (steps: string) => `proofreel: 1
puzzle:
  givens: |
    .14..2...
    ..8....1.
    ....9...7
    8.....2.1
    9..5..7..
    .36......
    6..21..4.
    ..3....98
    ...4.....
steps:
${steps}`;

it('a placement too early in a cascade, and what follows from it in the same step and in the next', () => {
  const { report } = reportOn(
    'scene.yaml',
    scene('  - id: run\n    cascade: r4c2=5 r4c3<>5\n  - id: next\n    from: 5r4\n    so: r4c8<>5\n'),
  );
  const [run, next] = report.steps;
  expect(run?.conclusions.map((each) => [each.text, each.verdict, each.restsOn])).toEqual([
    ['r4c2=5', 'unproved', []],
    ['r4c3<>5', 'unproved', ['run']],
  ]);
  expect(run?.conclusions[1]?.message).toMatch(/it would hold if what comes before it in this step were proved$/);
  expect(next?.conclusions[0]?.restsOn).toEqual(['run']);
  expect(next?.conclusions[0]?.message).toMatch(/it would hold if run were proved$/);
  expect(report.summary).toEqual({ steps: 2, toMend: ['run'], restOnThem: 1 });
});
