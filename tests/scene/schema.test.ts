/**
 * The JSON Schema for editors: it lets pass what the reader reads, and stops what the reader stops for its shape.
 * Oracle for the schema itself: ajv, a validator of JSON Schema draft 2020-12.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { beat, readScene, sceneSchema } from '../../src/lesson/read-scene.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { zodOf } from '../../src/scene/definition-schema.ts';
import { sceneDefinition } from '../../src/scene/language.ts';
import { lookDefinition } from '../../src/scene/language-look.ts';
import { lookSchema, readLook } from '../../src/scene/read-look.ts';
import { argumentNames } from '../../src/techniques/all-techniques.ts';
import { withoutAnnotations } from './annotated.ts';

const ajv = new Ajv2020({ allowUnionTypes: true, strict: true });
const isScene = ajv.compile(sceneSchema());
const isLook = ajv.compile(lookSchema());

const from = (folder: string) => {
  const at = new URL(folder, import.meta.url);
  return readdirSync(at)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(name, at), 'utf8') }));
};
const scenes = [...from('../../scenes/'), ...from('../scenes/checks/')].filter(
  ({ name }) => !name.startsWith('unreadable'),
);

describe('an editor, with YAML and its guesses,', () => {
  it.each(scenes)('takes $name', ({ text }) => {
    isScene(parse(text));
    expect(isScene.errors ?? []).toEqual([]);
  });

  const head = 'proofreel: 1\npuzzle: {boxes: 2x2, givens: 1004040000430001}\n';
  const guessed = [
    'video: {rate: 25, length: 95, small: 123}\nsteps: [{id: 7, title: 12, fails: true, say: yes}]',
    'steps: [{id: a, so: r1c2=2, show: [{fill: 2}, {circle: 2, keep: false}, {note: 3, at: 12.5}, {clear: all}]}]',
    'steps: [{id: a, so: r1c2=2, because: naked single, chain: [(2)r1c2=r1c3], show: [{link: 1}, {ask: true, hold: 3}]}]',
    'steps: [{id: a, because: X WING, at: +1.5, cascade: [r1c2=2, {cascade: r1c3=3, at: 3}], show: []}]',
    'groups: {a: blue}\nvideo: {board: [{left: 1, top: 2, side: 300, at: 0}, {hidden: true, at: 3}]}\nsteps: [{id: a}]',
  ];
  it.each(guessed)('takes %s', (rest) => {
    isScene(parse(head + rest));
    expect(isScene.errors ?? []).toEqual([]);
  });

  const wrong = [
    'stesp: []\nsteps: [{id: a}]',
    'steps: [{id: a, form: 1c2}]',
    'steps: [{id: a, show: [{cricle: 1}]}]',
    'steps: [{id: a, show: [{fill: r1, goup: a}]}]',
    'steps: [{id: a, show: [{fill: r1, circle: 1}]}]',
    'steps: [{id: a, show: [{at: 3}]}]',
    'steps: [{id: a, fails: maybe}]',
    'steps: none',
    'steps: [{title: a}]',
    'groups: {a: vermilion}\nsteps: [{id: a}]',
    'video: {draw: all}\nsteps: [{id: a}]',
    'video: {board: {left: 1, top: 2}}\nsteps: [{id: a}]',
  ];
  it.each(wrong)('stops at %s', (rest) => {
    expect(isScene(parse(head + rest))).toBe(false);
    expect(readScene(head + rest).scene).toBeUndefined();
  });
});

/** Codes that come from the definition alone, and those of faults that keep other programs from reading the YAML as we do. */
const ofShape = [
  'unknown-key',
  'missing-key',
  'no-value',
  'wrong-kind',
  'unknown-word',
  'no-mark',
  'several-marks',
  'version',
  'comma-in-text',
];
const ofSyntax = [
  'yaml-syntax',
  'indentation',
  'tab-indent',
  'colon-in-text',
  'cut-short',
  'duplicate-key',
  'empty-file',
  'several-documents',
  'alias',
  'tag',
];

describe('the walk through the definition and its own parser agree on', () => {
  const fixtures = from('./fixtures/scenes/').map(({ name, text }) => ({ name, text: withoutAnnotations(text) }));
  const files = [...from('../../scenes/'), ...fixtures].map((file) => ({
    ...file,
    codes: readScene(file.text).diagnostics.map((each): string => each.code),
  }));
  const readable = files.filter(({ codes }) => !codes.some((code) => ofSyntax.includes(code)));
  it.each(readable)('$name', ({ text, codes }) => {
    const asTexts: unknown = parse(text, { schema: 'failsafe' });
    expect(zodOf(sceneDefinition(beat)).safeParse(asTexts).success).toBe(!codes.some((code) => ofShape.includes(code)));
  });
});

describe('for completion in an editor', () => {
  const text = JSON.stringify(sceneSchema());
  it('every key has a description', () => {
    const without: string[] = [];
    walk(sceneSchema(), []);
    walk(lookSchema(), []);
    expect(without).toEqual([]);
    function walk(value: unknown, path: readonly string[]): void {
      if (typeof value !== 'object' || value === null) return;
      for (const [key, child] of Object.entries(value)) {
        if (key === 'properties' && typeof child === 'object' && child !== null) {
          for (const [name, property] of Object.entries(child)) {
            if (!('description' in Object(property))) without.push([...path, name].join('.'));
          }
        }
        walk(child, [...path, key]);
      }
    }
  });
  it('the names of arguments, colours and marks are listed', () => {
    for (const name of argumentNames) expect(text).toContain(`"${name}"`);
    for (const word of ['orange', 'sky', 'purple', 'suppose', 'sight', 'pencilled', '2x3'])
      expect(text).toContain(`"${word}"`);
    expect(text).not.toContain('guesses');
    expect(text).not.toContain('"refused"');
  });
});

describe('a look', () => {
  it('that sets everything has exactly the keys of the definition', () => {
    const whole = JSON.parse(JSON.stringify(defaultLook), (_, value: unknown) =>
      typeof value === 'number' ? String(value) : value,
    );
    expect(zodOf(lookDefinition).safeParse(whole).error).toBeUndefined();
    expect(isLook(defaultLook)).toBe(true);
    const { look, diagnostics } = readLook(JSON.stringify(whole), defaultLook);
    expect(diagnostics).toEqual([]);
    expect(look).toEqual(defaultLook);
  });
  it('changes only what it names', () => {
    const { look } = readLook(
      'name: loud\ncolours: {removal: "#FF0000", groups: {blue: "#0000ff"}}\ntype: {family: Serif}\nmotion: {fade: 0.5}\n',
      defaultLook,
    );
    expect(look).toEqual({
      ...defaultLook,
      name: 'loud',
      colours: {
        ...defaultLook.colours,
        removal: '#ff0000',
        groups: { ...defaultLook.colours.groups, blue: '#0000ff' },
      },
      type: { ...defaultLook.type, family: 'Serif' },
      motion: { ...defaultLook.motion, fade: 0.5 },
    });
  });
  it('with a misspelt key or a colour that is none is stopped in an editor too', () => {
    expect(isLook({ colurs: {} })).toBe(false);
    expect(isLook({ colours: { text: 'red' } })).toBe(false);
    expect(isLook({ motion: { fade: 99 } })).toBe(false);
  });
});
