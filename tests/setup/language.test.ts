/** scenes/LANGUAGE.md against the reader: it names every key and argument, and nothing that is not there yet. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { sceneSchema } from '../../src/lesson/read-scene.ts';
import { argumentNames } from '../../src/techniques/all-techniques.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const page = readFileSync(join(root, 'scenes/LANGUAGE.md'), 'utf8');

/** All names of keys in a JSON Schema, however deep. */
function keysIn(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(keysIn);
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([name, value]) =>
    name === 'properties' && typeof value === 'object' && value !== null
      ? [...Object.keys(value), ...Object.values(value).flatMap(keysIn)]
      : keysIn(value),
  );
}

describe('the page names', () => {
  const keys = [...new Set(keysIn(sceneSchema()))].sort();
  it('a good number of keys', () => {
    expect(keys.length).toBeGreaterThan(40);
  });
  it.each(keys)('the key %s', (key) => {
    // As code (`key`, `key: value`, `{file: name, key: value}`), or in the example of a file.
    expect(page).toMatch(new RegExp(`(\`|^ *|\\{|, )${key}(\`|:)`, 'm'));
  });

  const section = page.slice(page.indexOf('## 5. '), page.indexOf('## 6. ')).toLowerCase();
  it.each(['skyscraper', 'x-wing', 'naked single', 'xy-chain', 'bug+1'])('the argument %s', (name) => {
    expect(argumentNames.map((each) => each.toLowerCase())).toContain(name);
    expect(section).toContain(name);
  });
});

it('the page promises nothing that is still to come', () => {
  expect(page).not.toMatch(/\*\*coming/i);
});
