/** Files of phrases: what is wrong with one is told at its place. */
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { phrasesSchema, readPhrases } from '../../src/draft/phrases.ts';
import { namesBySpeciality } from '../../src/techniques/all-techniques.ts';

const folder = new URL('../../assets/phrases/', import.meta.url);
const files = readdirSync(folder);
const english = readFileSync(new URL('en.yaml', folder), 'utf8');

describe('the phrases that are shipped', () => {
  it.each(files)('%s can be read, and is as its schema has it', (file) => {
    const text = readFileSync(new URL(file, folder), 'utf8');
    expect(readPhrases(text).diagnostics).toEqual([]);
    const ajv = new Ajv2020({ allowUnionTypes: true });
    const isValid = ajv.compile(phrasesSchema());
    expect([isValid(parse(text, { schema: 'failsafe' })), isValid.errors]).toEqual([true, null]);
  });

  const translated = files.filter((file) => file !== 'en.yaml');
  it.each(translated)('%s says what every technique is called', (file) => {
    const { phrases } = readPhrases(readFileSync(new URL(file, folder), 'utf8'));
    expect(namesBySpeciality.filter((name) => phrases?.names.has(name) !== true)).toEqual([]);
  });
});

describe('a file of phrases', () => {
  const rows: readonly (readonly [about: string, from: string, to: string, says: string])[] = [
    [
      'a slot that is none',
      '{given} digits are given. One more',
      '{giben} digits are given. One more',
      'did you mean {given}?',
    ],
    ['a brace left open', '"{cells}, and {cell}"', '"{cells}, and {cell"', 'is not a slot here'],
    ['a phrase that is missing', '  chain-on: then {what}\n', '', 'needs the key "chain-on"'],
    ['a phrase too many', '  chain-on:', '  chain-off: x\n  chain-on:', 'has no key "chain-off"'],
    ['a digit too few', 'sevens, eights, nines]', 'sevens, eights]', '8 words were found here'],
    ['a name that is none', 'names: {}', 'names: {skyscrapr: Tower}', 'did you mean skyscraper?'],
    [
      'a name in two spellings',
      'names: {}',
      'names: {naked pair: Twins, Naked Pairs: Twins}',
      'naked pair appears twice here',
    ],
    ['another version', 'phrases: 1', 'phrases: 2', '"phrases" cannot be "2"'],
  ];
  it.each(rows)('with %s', (_, from, to, says) => {
    expect(english).toContain(from);
    const { phrases, diagnostics } = readPhrases(english.replace(from, to));
    expect(phrases).toBeUndefined();
    expect(diagnostics.map(({ message }) => message).join('\n')).toContain(says);
  });
});
