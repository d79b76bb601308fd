/**
 * What a definition makes of a file: typed values by key, whatever else stands there.
 */
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Definition, Opens, ReadOf } from '../../src/scene/definition.ts';
import type { Faults } from '../../src/scene/faults.ts';
import { choice, name, sentence, yesOrNo } from '../../src/scene/language-values.ts';
import { number } from '../../src/scene/numbers.ts';
import { readShape } from '../../src/scene/shape.ts';
import { eachOf, either, entriesOf, keys, listOf, marked, optional } from '../../src/scene/structures.ts';
import { readYamlFile } from '../../src/scene/yaml-file.ts';

const square = keys('a square', 'Its side.', {
  side: number('How long.', ['3'], { least: 1, most: 9 }),
  closed: optional(yesOrNo('Whether it is closed.')),
});
const drawing = marked(
  { dot: { dot: name('Where.') }, line: { line: listOf(name('Where.')) } },
  { colour: optional(choice(['red', 'blue'], 'A colour.')) },
  { title: 'a drawing', descriptionOf: (mark) => `A ${mark}.` },
);
const page = keys('a page', 'What is on it.', {
  heading: sentence('Words.'),
  shape: optional(either([name('By name.'), square, listOf(square)])),
  drawings: optional(listOf(drawing)),
  names: optional(entriesOf(name('What is called so.'), 'Names.')),
});

/** What is read of the text, and the codes of its faults. */
function read<Read, Value>(
  definition: Definition & Opens<Read>,
  text: string,
  valueOf: (read: Read, faults: Faults) => Value,
): { readonly value: Value | undefined; readonly codes: readonly string[] } {
  const file = readYamlFile(text, 'a page begins with a heading', (tree, faults) => {
    const opened = readShape(definition, tree, faults);
    return opened === undefined ? undefined : { value: valueOf(opened, faults) };
  });
  return { value: (file.value ?? file.rough)?.value, codes: file.diagnostics.map(({ code }) => code) };
}

describe('a map', () => {
  it('has the values of its keys, typed, and none that it does not have', () => {
    const { value, codes } = read(square, 'side: 3\nclosed: true\n', ({ values }, faults) => [
      values.side?.read({ faults }),
      values.closed?.read(),
    ]);
    expect({ value, codes }).toEqual({ value: [3, true], codes: [] });
    type Values = ReadOf<typeof square>['values'];
    expectTypeOf<keyof Values>().toEqualTypeOf<'side' | 'closed'>();
    expectTypeOf<ReturnType<NonNullable<Values['closed']>['read']>>().toEqualTypeOf<boolean | undefined>();
  });
  it('tells a key that is not there from one with a value of another kind, and from one with none', () => {
    const states = (text: string) =>
      read(page, text, ({ values, keys, misfits }) => [
        values.drawings !== undefined,
        keys.drawings !== undefined,
        misfits.has('drawings'),
      ]).value;
    expect(states('heading: a\ndrawings: [{dot: x}]\n')).toEqual([true, true, false]);
    expect(states('heading: a\ndrawings: none\n')).toEqual([false, true, true]);
    expect(states('heading: a\ndrawings:\n')).toEqual([false, true, false]);
    expect(states('heading: a\n')).toEqual([false, false, false]);
  });
  it('reads a misspelt key as the one that was meant', () => {
    const { value, codes } = read(square, 'sdie: 3\n', ({ values }, faults) => values.side?.read({ faults }));
    expect({ value, codes }).toEqual({ value: 3, codes: ['unknown-key'] });
  });
  it('names the key in a fault of its value', () => {
    const { value, codes } = read(square, 'side: 12\n', ({ values }, faults) => values.side?.read({ faults }));
    expect({ value, codes }).toEqual({ value: undefined, codes: ['out-of-range'] });
  });
});

describe('one of several kinds', () => {
  const shapes = (shape: string) =>
    read(page, `heading: a\nshape: ${shape}\n`, ({ values }, faults) =>
      eachOf(values.shape).map((each) => (each?.kind === 'map' ? each.values.side?.read({ faults }) : each?.text)),
    );
  it.each([
    ['round', ['round'], []],
    ['{side: 2}', [2], []],
    ['[{side: 2}, {side: 4}]', [2, 4], []],
    ['[{side: 2}, round]', [2, undefined], ['wrong-kind']],
  ])('%s', (shape, value, codes) => {
    expect(shapes(shape)).toEqual({ value, codes });
  });
});

describe('one of several maps', () => {
  const marks = (drawings: string) =>
    read(page, `heading: a\ndrawings: ${drawings}\n`, ({ values }) =>
      (values.drawings?.items ?? []).map((each) => [each?.mark, each?.common.values.colour?.read()]),
    );
  it.each([
    [
      '[{dot: a}, {line: [a, b], colour: red}]',
      [
        ['dot', undefined],
        ['line', 'red'],
      ],
      [],
    ],
    ['[{colour: blue}]', [[undefined, 'blue']], ['no-mark']],
    ['[{line: [a], dot: a}]', [['line', undefined]], ['several-marks']],
  ])('%s', (drawings, value, codes) => {
    expect(marks(drawings)).toEqual({ value, codes });
  });
  it('has the keys of its mark alone', () => {
    type Own<Mark> = Extract<ReadOf<typeof drawing>, { mark: Mark }>['own'];
    expectTypeOf<keyof Own<'dot'>['values']>().toEqualTypeOf<'dot'>();
    expectTypeOf<keyof Own<'line'>['values']>().toEqualTypeOf<'line'>();
  });
});

/** A lookup in a plain object finds these in every one of them. */
const ofEveryObject = ['constructor', 'toString', 'valueOf', 'hasOwnProperty', '__proto__'];

describe.each(ofEveryObject)('a key called %s', (key) => {
  it('is unknown to a map, of whatever kind', () => {
    expect(read(square, `side: 3\n${key}: 1\n`, () => 0).codes).toEqual(['unknown-key']);
    expect(read(drawing, `dot: a\n${key}: 1\n`, () => 0).codes).toEqual(['unknown-key']);
    expect(read(drawing, `${key}: a\n`, () => 0).codes).toEqual(['unknown-key']);
  });
  it('is a name like others where names are the users own', () => {
    const { value, codes } = read(page, `heading: a\nnames: {${key}: x}\n`, ({ values }) =>
      values.names?.entries.map((entry) => [entry.key.text, entry.value?.text]),
    );
    expect({ value, codes }).toEqual({ value: [[key, 'x']], codes: [] });
  });
  it('is none of the words that may be written', () => {
    expect(read(drawing, `dot: a\ncolour: ${key}\n`, ({ common }) => common.values.colour?.read())).toEqual({
      value: undefined,
      codes: ['unknown-word'],
    });
  });
});
