import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { defaultLook } from '../../src/picture/default-look.ts';
import { readLook } from '../../src/scene/read-look.ts';
import { lookFile } from './goldens.ts';

const names = readdirSync(fileURLToPath(new URL('../../assets/looks', import.meta.url))).map((file) =>
  file.replace('.yaml', ''),
);

it('the default look is the one in assets/looks under its name', () => {
  expect(lookFile(defaultLook.name)).toEqual(defaultLook);
});

describe('every look that is shipped', () => {
  for (const name of names) {
    it(`${name} is read without a fault, and says all of itself`, () => {
      const other = lookFile(names.find((each) => each !== name)!);
      const text = readFileSync(fileURLToPath(new URL(`../../assets/looks/${name}.yaml`, import.meta.url)), 'utf8');
      const { look, diagnostics } = readLook(text, other);
      expect(diagnostics).toEqual([]);
      expect(look).toEqual(lookFile(name));
    });

    it(`${name} is named after its file and has what the default look has`, () => {
      const look = lookFile(name);
      expect(look.name).toBe(name);
      expect(keysOf(look)).toEqual(keysOf(defaultLook));
    });
  }
});

/** Every path with the type of its value. */
function keysOf(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [`${path}: ${typeof value}`];
  return Object.entries(value)
    .flatMap(([key, inner]) => keysOf(inner, `${path}/${key}`))
    .sort();
}
