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

/** What the last step rests on, by the steps before it. */
function restsOnAfter(before: string): readonly string[] | undefined {
  const { report } = reportOn('scene.yaml', scene(`${before}  - {id: next, from: 5r4, so: r4c8<>5}\n`));
  return report.steps.at(-1)?.conclusions[0]?.restsOn;
}

it('only the steps that it needs are named', () => {
  const run = '  - {id: run, so: r4c2=5}\n';
  const [one, two] = ['5r4', '3r1'].map((set, at) => `  - {id: beside-${at}, from: ${set}, so: r${8 + at}c9<>6}\n`);
  expect(restsOnAfter(run)).toEqual(['run']);
  expect(restsOnAfter(`${one}${run}${two}`)).toEqual(['run']);
});

it('what is unproved is supposed before what is false', () => {
  expect(restsOnAfter('  - {id: wrong, so: r4c3=5}\n')).toEqual(['wrong']);
  expect(restsOnAfter('  - {id: run, so: r4c2=5}\n  - {id: wrong, so: r4c3=5}\n')).toEqual(['run']);
});
