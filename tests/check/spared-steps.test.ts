/** Fixes of one step that leave every sound step as it was, and files that keep their line ends and their layout. */
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { fixScene } from '../../src/lesson/fixed-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { skyscraper, towers } from '../staging/stage.ts';

const kites = `proofreel: 1
puzzle:
  givens: |
    .......71
    .3..9.5..
    .59.8....
    ......3.8
    .4.83....
    ...64..5.
    ..5......
    ..1...26.
    ..6..2..7
  start:
    placed: r1c3=8 r1c7=9 r2c3=4 r2c8=8 r4c8=4 r5c8=1 r6c3=3 r6c6=9 r6c7=7 r6c9=2 r7c8=9 r8c5=7 r8c9=5 r9c5=1 r9c8=3
    removed: r1c4<>5 r1c5<>6 r3c1<>67 r3c4<>1 r3c6<>3 r4c1<>7 r4c4<>2 r7c1<>34 r7c6<>6 r7c7<>4 r8c1<>8 r9c4<>4
steps:
`;
const cells = kites.replace(/givens: [\s\S]*(?=steps:)/, () =>
  [
    'givens: |\n    ..4..5.7.\n    65.27....\n    ..38.....\n    8.2...5..\n    ..5.....6\n    46.3..78.\n    ......2..\n    ...9.1...\n    ...62319.',
    '  start:\n    placed: r1c1=9 r1c4=1 r1c5=3 r1c7=6 r1c9=2 r2c6=9 r3c6=4 r3c7=9 r3c9=5 r4c6=6 r5c6=8 r5c8=2 r6c3=9 r6c5=5 r6c6=2 r6c9=1 r7c1=1 r7c4=5 r7c6=7',
    '    removed: r2c7<>3 r2c8<>1 r4c2<>7 r4c8<>3 r5c2<>7 r7c8<>4 r8c1<>2 r8c2<>78 r8c7<>3 r8c8<>4 r9c9<>7\n',
  ].join('\n'),
);
const ones = '  - id: chain\n    because: two-string kite\n    chain: (1)r3c1=r3c6-r2c4=r4c4\n    so: r4c1<>1\n';
const twos = '  - id: chain\n    because: two-string kite\n    chain: (2)r2c1=r2c4-r1c5=r4c5\n    so: r4c1<>2\n';
const threes = '  - id: chain\n    because: two-string kite\n    chain: (3)r4c9=r4c2-r5c1=r8c1\n    so: r8c9<>3\n';
const pairs = (one: string, other: string, so: string) =>
  `  - id: chain\n    because: XY-chain\n    chain: (2=6)${one}-(6=2)${other}-(2=5)r1c5-(5=2)r4c5\n    so: ${so}\n`;

/** A first step whose nearest fix takes the chain after it away, its link or its name. */
const rows = [
  [kites, 'from: 1r3', 'r2c1<>1', ones],
  [kites, 'from: 1b2', 'r2c1<>1', ones],
  [kites, 'from: 2r2', 'r1c4<>2', twos],
  [kites, 'from: 2c5', 'r4c2<>2', twos],
  [kites, 'from: 2c5', 'r4c2<>2', pairs('r1c1', 'r1c2', 'r4c1<>2')],
  [kites, 'from: 2c5', 'r4c1<>2', pairs('r1c2', 'r1c1', 'r4c2<>2')],
  [cells, 'from: 3r4', 'r5c2<>3', threes],
  [cells, 'from: 3b6', 'r5c2<>3', threes],
] as const;

function checkedSteps(text: string) {
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return checkScene(scene).steps;
}

describe('a fix spares the sound step after the one that is fixed', () => {
  it.each(rows)('%#', (puzzle, from, so, sound) => {
    const text = `${puzzle}  - id: first\n    ${from}\n    so: ${so}\n${sound}`;
    expect(checkedSteps(text).map((step) => step.sound)).toEqual([false, true]);
    const fixed = fixScene(text);
    expect(fixed.sound).toBe(true);
    expect(fixed.text).toContain(sound);
    expect(fixed.done.join()).not.toContain('taken out');
    const chain = checkedSteps(fixed.text).find(({ step }) => step.id === 'chain')!;
    expect([chain.sound, chain.name?.judged]).toEqual([true, 'fits']);
    expect(chain.conclusions.map(({ verdict }) => verdict)).toEqual(['proved']);
  });
});

const list = (...steps: readonly string[]) =>
  towers(steps.map((step) => step.replace(/^/gm, '  ')).join('\n')).concat('\n');
const first = `- id: first\n  chain: (3)r6c3=r1c3-r1c5=r5c5\n  so: r5c1<>3 r6c46<>3`;

describe('before a step is taken out', () => {
  it.each([
    [
      'its argument is given what it does prove',
      `${first.replace('r5c1<>3 r6c46<>3', 'r1c1<>3')}`,
      'so: r5c1<>3 r6c46<>3',
    ],
    [
      'it is moved behind the one that it needs',
      `- id: early\n  from: 3r6\n  so: r6c3=3\n${first}`,
      'id: first[^]*# fixed: moved behind first\n  - id: early',
    ],
    [
      'what holds leaves a false step',
      '- id: s\n  from: 3c35\n  so: r6c4<>3 r1c1<>3\n  fails: true',
      'so: r1c1<>3\n    fails: true',
    ],
    [
      'another argument of its name is found',
      '- id: s\n  because: skyscraper\n  chain: (3)r6c3=r1c3-r1c4=r5c4\n  so: r5c1<>3 r6c46<>3',
      'because: skyscraper\n    chain: [^]*so: r5c1<>3 r6c46<>3',
    ],
  ])('%s', (_, steps, expected) => {
    const fixed = fixScene(list(steps));
    expect(fixed.sound).toBe(true);
    expect(fixed.text).toMatch(new RegExp(expected));
    expect(fixed.done.join()).not.toContain('could not be fixed');
  });
});

describe('the text that is left', () => {
  const trap = `- id: s\n  ${skyscraper.replace(', ', '\n  ')}\n  fails: true`;
  const wrong = '- id: wrong\n  say: >\n    One line,  \n\n    and one.\n  so: r1c1=6\n- id: last';

  it.each([
    ['last in the file, with a line feed', `${list(trap)}`],
    ['last in the file, without one', list(trap).trimEnd()],
    ['before another step', list(`${trap}\n- id: last`)],
  ])('has no blank line for the `fails: true` that is taken away, %s', (_, text) => {
    const fixed = fixScene(text);
    expect(fixed).toMatchObject({ sound: true, done: ['s: it holds, so it is not marked as failing'] });
    const before = text.split('\n');
    const kept = fixed.text.split('\n').filter((line) => !line.includes('# fixed'));
    expect(kept).toEqual(before.filter((line) => !line.includes('fails: true')));
  });

  it.each([
    ['a step taken out', wrong],
    ['a mark taken away', trap],
    ['a step that is moved', `- id: early\n  from: 3r6\n  so: r6c3=3\n${first}`],
  ])('keeps its line ends, of two characters too: %s', (_, steps) => {
    const text = list(steps);
    const fixed = fixScene(text.replaceAll('\n', '\r\n'));
    expect(fixed.text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(fixed.text.replaceAll('\r\n', '\n')).toBe(fixScene(text).text);
  });

  it('holds a step taken out as it stood, its trailing blanks too', () => {
    const text = list(wrong);
    const fixed = fixScene(text);
    const commented = fixed.text.split('\n').filter((line) => /^ {2}#/.test(line) && !line.includes('taken out'));
    const stood = text.slice(text.indexOf('  - id: wrong'), text.indexOf('  - id: last')).trimEnd();
    expect(commented.map((line) => line.replace(/^ {2}# ?/, ''))).toEqual(
      stood.split('\n').map((line) => line.replace(/^ {2}/, '')),
    );
  });
});
