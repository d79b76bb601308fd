import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { differences, type Expected } from './run.ts';

const folder = new URL('./checks/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

describe('scenes and the report that each must give', () => {
  it('finds them', () => expect(names.length).toBeGreaterThan(70));
  it.each(names)('%s', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const expected = JSON.parse(
      readFileSync(new URL(name.replace('.yaml', '.expected.json'), folder), 'utf8'),
    ) as Expected;
    expect(differences(name, text, expected)).toEqual([]);
  });
});
