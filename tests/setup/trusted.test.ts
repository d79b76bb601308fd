/** The files that a proof rests on: the table in DEVELOPERS.md lists them all, with their lines, and they stay few. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const root = new URL('../..', import.meta.url).pathname;
const linesOf = (file: string) => readFileSync(join(root, file), 'utf8').split('\n').length - 1;

const rows = [
  ...readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').matchAll(/^\| `(src\/\S+)` \| (\d+) \| (code|types) \|/gm),
];
const trusted = rows.map(([, file, lines, kind]) => ({ file: file!, lines: Number(lines), kind: kind! }));
const code = trusted.filter(({ kind }) => kind === 'code');

/** What a file imports: `types` where nothing of it is left when the program runs. */
function importsOf(file: string): { readonly file: string; readonly kind: string }[] {
  const text = readFileSync(join(root, file), 'utf8');
  return [...text.matchAll(/^(?:import|export)\s+(type\s)?[^;]*?\sfrom '([^']+)';/gm)].map(([, isType, from]) => ({
    file: from!.startsWith('.') ? join(file, '..', from!) : from!,
    kind: isType === undefined ? 'code' : 'types',
  }));
}

it('the table lists the kernel and what it imports, code and types, and nothing else', () => {
  const reached = new Map([['src/proof/kernel.ts', 'code']]);
  for (const [file] of reached) {
    for (const each of importsOf(file))
      if (!reached.has(each.file) || each.kind === 'code') reached.set(each.file, each.kind);
  }
  expect(trusted.map(({ file, kind }) => `${file} ${kind}`).sort()).toEqual(
    [...reached].map(([file, kind]) => `${file} ${kind}`).sort(),
  );
});

it('no file of types imports or holds code', () => {
  for (const { file } of trusted.filter(({ kind }) => kind === 'types')) {
    expect(importsOf(file).filter(({ kind }) => kind === 'code')).toEqual([]);
    expect(readFileSync(join(root, file), 'utf8')).not.toMatch(/^(export )?(const|let|var|function|class|enum) /m);
  }
});

it('no trusted file imports in a way that the table would miss', () => {
  for (const { file } of trusted) {
    expect(readFileSync(join(root, file), 'utf8')).not.toMatch(/\bimport\(|\brequire\(|^import '/m);
  }
});

it.each(trusted)('$file has $lines lines', ({ file, lines }) => {
  expect(linesOf(file)).toBe(lines);
});

it('the code is below 800 lines', () => {
  expect(code.map(({ file }) => linesOf(file)).reduce((sum, lines) => sum + lines, 0)).toBeLessThan(800);
});
