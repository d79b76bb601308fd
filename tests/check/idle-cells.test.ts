/** A cell listed in a node that no longer has the digit is a warning; an almost locked set keeps all its own cells. */
import { expect, it } from 'vitest';
import { reportOn } from '../scenes/run.ts';

const puzzle = `proofreel: 1
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
`;

it.each([
  ['a group with a cell that has lost the digit', '(4)r4c23=r5c2', ['4r4c23 lists r4c3, which no longer has a 4']],
  ['a single cell that has lost the digit', '(1)r1c2=r1c1', ['1r1c1 is no longer possible']],
  ['an almost locked set whose one digit stands in one of its cells', '(4=57)r4c23', []],
  ['an almost locked set without the digit', '(6=57)r4c23', ['6r4c23 lists r4c23, which no longer has a 6']],
  ['a chain with nothing idle', '(7=45)r4c23', []],
])('%s: %s', (_, chain, idle) => {
  const { report } = reportOn('scene.yaml', `${puzzle}  - id: one\n    chain: "${chain}"\n`);
  const messages = report.warnings.filter((warning) => warning.code === 'idle-cell').map((warning) => warning.message);
  expect(messages).toEqual(idle);
});
