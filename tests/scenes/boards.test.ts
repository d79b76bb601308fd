/** Scenes on boards with regions and further rules, checked like any other. */
import { describe, expect, test } from 'vitest';
import { reportOn } from './run.ts';

const pieces = `
  regions: |
    aaabbb
    aaabbb
    ccddee
    ccddee
    ccddee
    ffffff
  givens: |
    ..3..6
    .4...3
    ..4..2
    .5....
    ....4.
    .1....`;
const crossed = `
  rules: [diagonals]
  givens: |
    9........
    735....2.
    ..167....
    .......89
    .........
    ..319....
    ..948.6..
    .....6..5
    .....7...`;

interface Row {
  readonly about: string;
  readonly puzzle: string;
  readonly step: string;
  readonly verdict: string;
  /** What the name is judged, where one is given. */
  readonly judged?: string;
  readonly message?: string;
}

const rows: readonly Row[] = [
  {
    about: 'a pointing pair in a region',
    puzzle: pieces,
    step: 'because: pointing pair\n    from: 3b5\n    so: r6c5<>3',
    verdict: 'proved',
    judged: 'fits',
  },
  {
    about: 'a hidden single is found in a region',
    puzzle: pieces,
    step: 'because: hidden single\n    so: r1c4=4',
    verdict: 'proved',
    judged: 'fits',
  },
  {
    about: 'the places of a digit in a diagonal',
    puzzle: crossed,
    step: 'from: 5d1\n    so: r4c56<>5 r5c46<>5',
    verdict: 'proved',
  },
  {
    about: 'a rectangle with a corner on a diagonal is refused',
    puzzle: crossed,
    step: 'deadly: 45r56c16\n    so: r5c1<>4',
    verdict: 'unproved',
    message: 'cannot be exchanged within every house',
  },
  {
    about: 'all places of a digit in a row see a cell, some of them by a knight',
    puzzle: `
  boxes: 2x3
  rules: [anti-knight]
  givens: |
    ..34..
    .....5
    ......
    ......
    .....4
    ..2..1`,
    step: 'from: 1r4\n    so: r3c2<>1',
    verdict: 'proved',
  },
];

describe('steps on other boards', () => {
  test.each(rows)('$about', ({ puzzle, step, verdict, judged, message }) => {
    const text = `proofreel: 1\npuzzle:${puzzle}\nsteps:\n  - id: a\n    ${step}\n`;
    const { report } = reportOn('scene.yaml', text);
    expect(report.errors).toEqual([]);
    expect(report.puzzle.solutions).toBe(1);
    expect([report.steps[0]!.verdict, report.steps[0]!.name?.judged]).toEqual([verdict, judged]);
    if (message !== undefined) expect(report.steps[0]!.message).toContain(message);
  });
});
