/**
 * Every fault of a scene or a look: where it is found and what is said, word for word. The expectations stand in the
 * fixtures; `REWRITE=1 npx vitest run tests/scene/faults.test.ts` writes them anew, for a reader to look through.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readScene } from '../../src/lesson/read-scene.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { readingCodes } from '../../src/scene/codes.ts';
import type { Diagnostic } from '../../src/scene/diagnostic.ts';
import { readLook } from '../../src/scene/read-look.ts';
import { annotate, withoutAnnotations } from './annotated.ts';

const folders = [
  { folder: 'scenes', read: (text: string) => readScene(text).diagnostics },
  { folder: 'looks', read: (text: string) => readLook(text, defaultLook).diagnostics },
];

const fixtures = folders.flatMap(({ folder, read }) => {
  const at = new URL(`./fixtures/${folder}/`, import.meta.url);
  return readdirSync(at).map((name) => ({ name: `${folder}/${name}`, at: new URL(name, at), read }));
});

const found: Diagnostic[] = [];

describe('the faults of', () => {
  it.each(fixtures)('$name', ({ at, read }) => {
    const fixture = readFileSync(at, 'utf8');
    const file = withoutAnnotations(fixture);
    const diagnostics = read(file);
    found.push(...diagnostics);
    const annotated = annotate(file, diagnostics);
    if (process.env.REWRITE === '1') writeFileSync(at, annotated);
    else expect(annotated).toBe(fixture);
  });

  it('reach every code of the reader', () => {
    const reached = new Set<string>(found.map((diagnostic) => diagnostic.code));
    expect(Object.keys(readingCodes).filter((code) => !reached.has(code))).toEqual([]);
  });

  it('stand in the order of the file', () => {
    for (const { at, read } of fixtures) {
      const starts = read(withoutAnnotations(readFileSync(at, 'utf8'))).map((diagnostic) => diagnostic.span.start);
      expect(starts).toEqual([...starts].sort((a, b) => a - b));
    }
  });
});
