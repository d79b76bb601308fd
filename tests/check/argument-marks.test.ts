/** What the check says about marks that the argument does not justify: the whole message, and the text it points at. */
import { expect, test } from 'vitest';
import { sidesOf } from '../../src/check/sides.ts';
import { printCandidates } from '../../src/grid/notation/print.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { skyscraper, towers } from '../staging/stage.ts';

/** Errors as `code at "text": message`. */
function errorsOf(steps: string): string[] {
  const text = towers(steps);
  const { scene, diagnostics } = readScene(text);
  if (scene === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return checkScene(scene).errors.map(
    ({ code, span, message }) => `${code} at "${text.slice(span.start, span.end)}": ${message}`,
  );
}

const cases = 'from: 3c35 3r2 3b3, so: r5c1<>3';
const stuck = (what: string) =>
  `suppose-not-forced at "${what}": forcing alone does not get there: with 3r1c4 taken as not true the argument comes to no clash, and its conclusions do not fall, without a choice between cases; suppose another candidate, or tell the cases in steps of their own`;

const rows: readonly (readonly [what: string, steps: string, expected: readonly string[]])[] = [
  [
    'a victim, a near end, a set',
    `  - {id: s, ${skyscraper}, show: [{suppose: 3r6c4}, {suppose: no 3r6c3}, {suppose: each 3c3}]}`,
    [],
  ],
  ['what the argument says nothing of', `  - {id: s, ${cases}, show: [{suppose: no 3r1c4}]}`, [stuck('no 3r1c4')]],
  [
    'a candidate that is gone',
    `  - {id: s, ${skyscraper}}\n  - {id: t, from: 5r3, so: r3c5=5, show: [{suppose: 3r6c4}]}`,
    [
      'suppose-nothing at "3r6c4": 3r6c4 is not possible any more when the step begins, so there is nothing to suppose of it',
    ],
  ],
  [
    'an either/or that the step does not draw on',
    `  - {id: s, ${skyscraper}, show: [{suppose: each step other}]}`,
    [
      'suppose-nothing at "each step other": there is no set step other to take the members of: name a cell or the places of a digit, or an either/or that the step has after from',
    ],
  ],
  [
    'a step without an argument of its own',
    '  - {id: s, cascade: r3c5=5, show: [{suppose: no 5r3c5}]}',
    [
      'suppose-not-forced at "no 5r3c5": there is no argument to play out: "suppose" follows the chain or the sets that the step draws its so from',
    ],
  ],
  [
    'a false step, which gets nowhere',
    '  - {id: s, fails: true, from: 3c4, so: r6c6<>3, show: [{suppose: 3r6c6}]}',
    [],
  ],
  [
    'a step that is not proved, and is reported as such',
    '  - {id: s, from: 3c4, so: r6c6<>3, show: [{suppose: 3r6c6}]}',
    [],
  ],
  ['the sides of a cluster', `  - {id: s, ${skyscraper}, show: [{sides: 3r1c3}]}`, []],
  [
    'the sides of a candidate outside',
    `  - {id: s, ${skyscraper}, show: [{sides: 3r6c4}]}`,
    [
      'sides-of-nothing at "3r6c4": 3r6c4 belongs to no cluster of strong links here: its sets of two members are 3c3 3c5; name the sets of two whose colours are meant after from, and a candidate of one of them here',
    ],
  ],
  [
    'sides in a step that claims nothing',
    '  - {id: s, show: [{sides: 3r6c4}]}',
    [
      'sides-of-nothing at "3r6c4": 3r6c4 belongs to no cluster of strong links here: this step has no argument in its so or chain; name the sets of two whose colours are meant after from, and a candidate of one of them here',
    ],
  ],
];

test.each(rows)('%s', (_, steps, expected) => {
  expect(errorsOf(steps)).toEqual(expected);
});

/** The two sides as they would be drawn, the candidate's own first. */
function sides(from: string, candidate: string): string[] | undefined {
  const { scene } = readScene(towers(`  - {id: s, from: ${from}, so: r5c1<>3, show: [{sides: ${candidate}}]}`));
  const mark = scene?.steps[0]?.show?.[0]?.mark;
  if (scene === undefined || mark?.kind !== 'sides') throw new Error('no sides');
  const { grid } = scene.puzzle;
  const found = sidesOf(grid, checkScene(scene).steps[0]!.argument.sets, mark.candidate.value);
  return found === undefined ? undefined : [printCandidates(grid, found.own), printCandidates(grid, found.other)];
}

test('a cluster grows from set to set, and only by sets of two', () => {
  // Column 4 has four places for a 3, and one of them is in the cluster's column 3 and row 1.
  expect(sides('3c35', '3r1c3')).toEqual(['3r1c3', '3r6c3']);
  expect(sides('3c35 3c4', '3r1c5')).toEqual(['3r1c5', '3r5c5']);
  expect(sides('3c3 3c4 3b5', '3r6c3')).toEqual(['3r6c3', '3r1c3 3r5c1']);
  expect(sides('3c35 3c4', '3r1c4')).toBeUndefined();
});
