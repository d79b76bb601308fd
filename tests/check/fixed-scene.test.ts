import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { fixScene, spellOut } from '../../src/lesson/fixed-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';

const folder = new URL('../scenes/checks/', import.meta.url);
const names = readdirSync(folder).filter(
  (name) => name.endsWith('.yaml') && /^(spoilt|refused|several|size\d-spoilt)/.test(name),
);
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8');

function checked(text: string) {
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics[0]?.message);
  return checkScene(scene);
}

describe('a fixed scene', () => {
  it.each(names)('%s checks sound, and keeps every line that no fix touched', (name) => {
    const text = textOf(name);
    const fixed = fixScene(text);
    expect(fixed.sound).toBe(true);
    expect(checked(fixed.text).sound).toBe(true);
    if (checked(text).sound) expect(fixed.text).toBe(text);
    const left = new Set(fixed.text.split('\n').map((line) => line.replace(/^([ ]*)# /, '$1')));
    const lost = text.split('\n').filter((line) => !left.has(line));
    expect(lost.length).toBeLessThanOrEqual(3 * fixed.done.length);
  });
});

const kite = `proofreel: 1
# a comment above
puzzle:
  givens: |
    .3. 1.. ..9
    8.6 ..9 ...
    ..2 ..7 3..
    5.. ... ...
    ... 8.. 5..
    928 5.6 7..
    ... .1. ...
    .6. .73 ..4
    ... ... .5.
steps:
  - id: opening
    cascade: r8c3=5 r3c2=9 r4c4=7 r5c1=6 r7c6=5 r1c5=5 r2c2=5 r3c9=5 r3c1=1 r8c1=2 r8c4=9 r2c4=3
  - id: kite   # the one in the middle
    because: two-string kite
    chain: (4)r6c5=r6c8-r4c7=r2c7
    so: r2c5<>4
`;

describe('fixes, one by one', () => {
  it('puts the step that removes a third candidate before the chain that it breaks', () => {
    const fixed = fixScene(kite);
    expect(fixed.text).toBe(
      kite.replace(
        '  - id: kite ',
        `  # fixed: kite needs this first
  - id: kite-first
    because: pointing pair
    from: 4b1
    so: r1c7<>4
  - id: kite `,
      ),
    );
    expect(fixed.done).toEqual(['kite: a step inserted before it: pointing pair']);
  });

  it('tells the author the same, in the order of the language', () => {
    const [, step] = checked(kite).steps;
    expect(step?.message).toBe(
      '4r4c7=4r2c7 is not a strong link: r1c7 also holds a 4, so column 7 has three places for it. ' +
        'A pointing pair (4b1) removes 4r1c7; as a step before this one it would make this step hold',
    );
  });

  it('removes what a solution contradicts, and says so', () => {
    const fixed = fixScene(
      kite.replace('so: r2c5<>4', 'so: r2c5<>4 r1c1<>7').replace('chain: (4)r6c5=r6c8-r4c7=r2c7', 'from: r1c1'),
    );
    expect(fixed.sound).toBe(true);
  });

  const easy = kite.replace(/ {2}- id: kite[\s\S]*/, '');

  it('moves what comes too early in a cascade after the conclusion with which it follows', () => {
    const swapped = easy.replace(/cascade: (\S+) (.*)/, 'cascade: $2 $1');
    const { message, fixes } = checked(swapped).steps[0]!;
    expect(fixes.map(({ fix }) => fix.kind)).toContain('move behind');
    expect(message).toMatch(
      /(r\dc\d=\d) follows once r\dc\d=\d is known, which comes later in the cascade; move it after that/,
    );
    const fixed = fixScene(swapped);
    expect(fixed.sound).toBe(true);
    expect(fixed.done.join()).toMatch(/^opening: r\dc\d=\d moved after r\dc\d=\d/);
    expect(fixed.done.join()).not.toContain('taken out');
  });

  it('removes only what is false if the rest follows without it, and leaves no gap', () => {
    const wrong = easy.replace('r3c2=9 r4c4=7', 'r3c2=9 r2c4=7 r4c4=7');
    const fixed = fixScene(wrong);
    expect(fixed.done).toEqual(['opening: r2c4=7 taken out']);
    expect(fixed.text).toContain('cascade: r8c3=5 r3c2=9 r4c4=7 r5c1=6');
  });

  it('comments out a step that nothing fixes, where it is', () => {
    const wrong = kite.replace(
      / {2}- id: kite[\s\S]*/,
      '  - id: wrong\n    say: >\n      One line,\n\n      and one.\n    from: r1c1\n    so: r1c1=7\n  - id: last\n',
    );
    expect(fixScene(wrong).text).toBe(
      wrong.replace(
        / {2}- id: wrong[\s\S]*(?= {2}- id: last)/,
        `  # taken out, since it could not be fixed:
  # - id: wrong
  #   say: >
  #     One line,
  #
  #     and one.
  #   from: r1c1
  #   so: r1c1=7
`,
      ),
    );
  });

  it('leaves steps in flow style as they are, and says that the scene is not sound', () => {
    const flow = kite.replace(/steps:[\s\S]*/, 'steps: [{id: kite, so: r2c5<>4}]\n');
    expect(fixScene(flow)).toMatchObject({ text: flow, sound: false });
  });
});

describe('so: all', () => {
  it('is written out with the removals that it stands for', () => {
    const text = textOf('all-01.yaml');
    const spelled = spellOut(text, checked(text));
    expect(spelled).not.toMatch(/so: all/);
    const [before, after] = [checked(text), checked(spelled)].map((each) =>
      each.steps.map((step) => step.conclusions.map((one) => one.text)),
    );
    expect(after).toEqual(before);
  });
});
