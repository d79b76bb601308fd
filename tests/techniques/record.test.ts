/**
 * A technique is one record: what leaves a field out, or misspells a name, does not compile; and all tables follow from
 * the records.
 */
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it, test } from 'vitest';
import { allTechniques, argumentNames, namesBySpeciality } from '../../src/techniques/all-techniques.ts';
import { namesInTeachingOrder } from '../../src/techniques/simplest.ts';
import { inTeachingOrder, ownCosts } from '../../src/techniques/teaching.ts';
import { costs } from '../plan/costs.ts';

/** A technique as somebody adds it, field by field. */
const fields = {
  name: `'lantern'`,
  plural: `'lanterns'`,
  otherNames: `['lamp']`,
  family: `'wings'`,
  kindOf: `['XY-chain']`,
  teaching: `{ place: 2065, cost: 7 }`,
  isOffered: 'false',
  phrase: `'step by step'`,
  page: `{ under: 'Wings', shows: 'removals' }`,
  recognise: '() => undefined',
  find: '() => []',
};

const before = `
import { type ArgumentName, type Technique, techniqueNamed } from './all-techniques.ts';
import { technique, type TechniqueRecord } from './technique.ts';
`;
/** As `all-techniques.ts` takes it in. */
const after = `
export const listed: readonly TechniqueRecord<ArgumentName | 'lantern', ArgumentName | 'lantern'>[] = [lantern];
`;

function withFields(changed: Readonly<Record<string, string | undefined>>): string {
  const all = Object.entries({ ...fields, ...changed }).filter(([, value]) => value !== undefined);
  return `${before}const lantern = technique({ ${all.map(([key, value]) => `${key}: ${value}`).join(', ')} });${after}`;
}

/**
 * What the compiler says about each snippet, as if it were a file next to the techniques; one program compiles them
 * all.
 */
function compiled(snippets: Readonly<Record<string, string>>): ReadonlyMap<string, readonly string[]> {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const { config } = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const host = ts.createCompilerHost(options);
  const texts = new Map(
    Object.entries(snippets).map(([key, text], index) => [`${root}src/techniques/snippet-${index}.ts`, { key, text }]),
  );
  const { getSourceFile, fileExists, readFile } = host;
  host.fileExists = (file) => texts.has(file) || fileExists(file);
  host.readFile = (file) => texts.get(file)?.text ?? readFile(file);
  host.getSourceFile = (file, ...rest) => {
    const own = texts.get(file);
    return own === undefined ? getSourceFile(file, ...rest) : ts.createSourceFile(file, own.text, rest[0]);
  };
  const program = ts.createProgram([...texts.keys()], { ...options, noEmit: true }, host);
  return new Map(
    [...texts].map(([file, { key }]) => [
      key,
      program
        .getSemanticDiagnostics(program.getSourceFile(file))
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n')),
    ]),
  );
}

describe('the compiler', () => {
  const keys = Object.keys(fields);
  const whole = 'the whole record';
  const wrong: Readonly<Record<string, readonly [snippet: string, said: RegExp]>> = {
    'a misspelt kind': [withFields({ kindOf: `['XY-chian']` }), /'"XY-chian"' is not assignable/],
    'a misspelt name that it is seen as': [
      withFields({ page: `{ under: 'Wings', shows: 'removals', seenAs: ['AICs'] }` }),
      /'"AICs"' is not assignable/,
    ],
    'a family that is none': [withFields({ family: `'wing'` }), /'"wing"' is not assignable/],
    'a heading that is none': [withFields({ page: `{ under: 'Wing', shows: 'removals' }` }), /'"Wing"' is not/],
    'a phrase that is none': [withFields({ phrase: `'XY wing'` }), /'"XY wing"' is not assignable/],
    'a misspelt technique that is asked for': [
      `${before}export const found = techniqueNamed('skyscrapper');`,
      /'"skyscrapper"' is not assignable/,
    ],
    'a misspelt name in a list': [
      `${before}export const names: readonly ArgumentName[] = ['X-wing', 'swordfsh'];`,
      /'"swordfsh"' is not assignable/,
    ],
  };
  const said = compiled({
    [whole]: withFields({}),
    ...Object.fromEntries(keys.map((key) => [key, withFields({ [key]: undefined })])),
    ...Object.fromEntries(Object.entries(wrong).map(([key, [snippet]]) => [key, snippet])),
  });

  const unused = /is declared but (its value is )?never (used|read)/;
  const faultsOf = (key: string) => (said.get(key) ?? ['not compiled']).filter((message) => !unused.test(message));

  test('takes the whole record', () => expect(faultsOf(whole)).toEqual([]));
  it.each(keys)('asks for %s', (key) => {
    expect(faultsOf(key).join('\n')).toMatch(new RegExp(`Property '${key}' is missing`));
  });
  it.each(Object.entries(wrong))('refuses %s', (key, [, message]) => {
    expect(faultsOf(key).join('\n')).toMatch(message);
  });
});

describe('what follows from the records', () => {
  test('each name is one technique, in one family', () => {
    expect(new Set(namesBySpeciality).size).toBe(allTechniques.length);
    expect([...argumentNames].sort()).toEqual([...namesBySpeciality].sort());
  });

  test('no place in the order of teaching is taken twice', () => {
    const places = inTeachingOrder.map(({ teaching }) => teaching.place);
    expect(places.filter((place, index) => places.indexOf(place) !== index)).toEqual([]);
  });

  test('the file of costs says what the records say, in their order', () => expect(costs).toEqual(ownCosts));

  test('what the check offers is tried in the order of the file of costs', () => {
    const inFile = [...costs.free, ...costs.names.map(({ name }) => name)];
    expect(namesInTeachingOrder).toEqual(inFile.filter((name) => namesInTeachingOrder.includes(name)));
    expect(namesInTeachingOrder.length).toBeGreaterThan(20);
  });
});
