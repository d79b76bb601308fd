/** scenes/LANGUAGE.md against the reader: it names every key, and what it calls coming is refused. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { argumentNames } from '../../src/scene/argument-names.ts';
import { readScene } from '../../src/scene/read.ts';
import { sceneSchema } from '../../src/scene/schema.ts';

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

describe('what the page calls coming is refused by name', () => {
  const scene = (lines: readonly string[]) =>
    ['proofreel: 1', 'puzzle: {boxes: 2x2, givens: 1... ..3. .4.. ...2}', 'steps:', ...lines].join('\n');
  const rows: readonly (readonly [feature: string, lines: readonly string[]])[] = [
    ['sides', ['  - {id: a, from: 3r1, so: r1c2=3, show: [{sides: 3r1c2}]}']],
    ['suppose', ['  - {id: a, from: 3r1, so: r1c2=3, show: [{suppose: 3r1c2}]}']],
  ];
  it.each(rows)('%s', (feature, lines) => {
    const coming = page.split('\n').filter((line) => line.includes('**Coming:**'));
    expect(coming.some((line) => line.includes(`\`${feature}`))).toBe(true);
    const { diagnostics } = readScene(scene(lines));
    expect(diagnostics.map(({ code, severity }) => ({ code, severity }))).toEqual([
      { code: 'not-yet', severity: 'error' },
    ]);
  });

  it('and the same scene without it is read', () => {
    expect(readScene(scene(['  - {id: a, from: 3r1, so: r1c2=3}'])).diagnostics).toEqual([]);
  });
});
