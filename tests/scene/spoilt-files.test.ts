/**
 * Whatever is done to a file, the reader answers with a scene or with errors that lie in the file, and never throws.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { placeOf, printDiagnostic } from '../../src/scene/locate.ts';

const whole = `proofreel: 1
title: "The whole: of it"
puzzle:
  setter: in-house
  boxes: 2x2
  givens: |
    1..4
    .4..
    ..43
    ...1
  start: {placed: r1c2=2, removed: r1c3<>1}
  uniqueness: allowed
video:
  size: 640x360
  rate: 30000/1001
  length: 1:35
  timecode: 01:00:00;00
  board: [{left: 60, top: 60, side: 200, at: 0}, {corners: [[0, 0], [9, 0], [9, 9], [0, 9]], at: cue b}, {hidden: true, at: 30}]
  small: 789
  narration: a.vtt
  footage: {file: a.mp4, start: 0:12}
look: look.yaml
groups:
  feet: blue
steps:
  - id: first
    at: words 2 "either here" or 4
    because: naked single
    from: r1c2 2b1
    chain: (2)r1c2=r1c3 => r1c3<>2
    so: r1c3<>2
    show:
      - {link: 1, at: +1, group: feet}
      - {strike: all, gone: 9}
      - {label: 2r1c2 "roof", keep: true}
      - sight: {of: 4r1c4, along: r1}
  - id: second
    say: >-
      Either this one
      or that one.
    deadly: 12r12c13
    so: either 2r1c2 3r1c2
  - id: trap
    from: 2c2
    so: r1c3<>2
    fails: true
  - id: third
    from: step second, 1c2
    so: all
    only: [1r1 in r1c1, {only: 4r1 in r1c4, at: +2}]
    pencil: '23r1c2
      23r1c3'
    cascade:
      - r1c2=2
      - {cascade: r2c1=3, because: hidden single, from: 3r2}
`;

const piece = fc.constantFrom(
  ...[
    ':',
    ': ',
    ' #',
    '#',
    ',',
    '-',
    '- ',
    '{',
    '}',
    '[',
    ']',
    '"',
    "'",
    '\n',
    '\n\n',
    '\t',
    '|',
    '>',
    '&a ',
    '*a',
    '!!x ',
    '? ',
    '---\n',
    '...\n',
    '%',
    '@',
  ],
  ...[
    '0',
    '9',
    'r',
    'r1c',
    '7r1c5',
    '=>',
    '<>',
    '=',
    'all',
    'either',
    'step ',
    'true',
    '~',
    '\ufeff',
    '\r\n',
    '日',
    '\u0000',
    '1e999',
    '  ',
    '\\',
  ],
);

interface Change {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(whole.length),
  remove: fc.oneof({ weight: 3, arbitrary: fc.nat(3) }, { weight: 1, arbitrary: fc.nat(60) }),
  insert: fc.oneof(fc.constant(''), piece),
});

it('a file with anything changed is read, or refused with faults that lie in it', () => {
  fc.assert(
    fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
      let file = whole;
      for (const { at, remove, insert } of changes) file = file.slice(0, at) + insert + file.slice(at + remove);
      const { scene, diagnostics } = readScene(file);
      expect(scene === undefined).toBe(diagnostics.some((each) => each.severity === 'error'));
      let before = 0;
      for (const diagnostic of diagnostics) {
        const spans = [diagnostic.span, ...(diagnostic.notes ?? []).map((note) => note.span)];
        for (const { start, end } of spans) {
          expect(start).toBeGreaterThanOrEqual(0);
          expect(end).toBeGreaterThanOrEqual(start);
          expect(end).toBeLessThanOrEqual(file.length);
          expect(placeOf(file, start).line).toBeGreaterThan(0);
        }
        expect(diagnostic.span.start).toBeGreaterThanOrEqual(before);
        before = diagnostic.span.start;
        expect(printDiagnostic('scene.yaml', file, diagnostic)).toContain('^');
        expect(diagnostic.message).not.toMatch(/undefined|NaN|\[object|\n/);
      }
    }),
    { numRuns: Number(process.env.RUNS ?? 150) },
  );
});

it('the file that they change is right', () => {
  expect(readScene(whole).diagnostics.filter((each) => each.severity === 'error')).toEqual([]);
});
