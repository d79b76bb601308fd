/**
 * The stages up to the picture are functions of their input: no clock, no randomness, no machine. Lint refuses the
 * globals by name; what depends on a property, or on a name of the standard library, is looked for here.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const pure = [
  'grid',
  'proof',
  'techniques',
  'plan',
  'puzzles',
  'scene',
  'check',
  'draft',
  'timeline',
  'staging',
  'picture',
  'marks',
  'lesson',
  'film',
  'frames',
  'slides',
  'recording',
];

/** Uses of what differs from one run, machine or country to the next: `name (line)`. */
function impurities(text: string): string[] {
  const file = ts.createSourceFile('file.ts', text, ts.ScriptTarget.ES2023, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const name = impure(node);
    if (name !== undefined) found.push(`${name} (${file.getLineAndCharacterOfPosition(node.getStart()).line + 1})`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

const globals = new Set([
  'Date',
  'performance',
  'process',
  'Buffer',
  'crypto',
  'globalThis',
  'Intl',
  'console',
  'fetch',
]);
const methods = new Set(['toLocaleString', 'toLocaleUpperCase', 'toLocaleLowerCase', 'localeCompare']);

function impure(node: ts.Node): string | undefined {
  if (ts.isPropertyAccessExpression(node)) {
    const name = node.name.text;
    if (methods.has(name)) return name;
    if (name === 'random' && node.expression.getText() === 'Math') return 'Math.random';
    return undefined;
  }
  if (!ts.isIdentifier(node) || !globals.has(node.text)) return undefined;
  const parent = node.parent;
  const isOwnName =
    (ts.isPropertyAccessExpression(parent) && parent.name === node) ||
    (ts.isPropertyAssignment(parent) && parent.name === node) ||
    (ts.isPropertySignature(parent) && parent.name === node);
  return isOwnName ? undefined : node.text;
}

function filesOf(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => `${folder}/${name}`);
}

describe('what counts as impure', () => {
  const rows: readonly (readonly [text: string, expected: readonly string[]])[] = [
    ['const die = Math.random();', ['Math.random (1)']],
    ['const now = new Date();', ['Date (1)']],
    ['\nconst home = process.env.HOME;', ['process (2)']],
    ["['b', 'a'].sort((x, y) => x.localeCompare(y));", ['localeCompare (1)']],
    ['// Math.random and Date are only spoken of here', []],
    ['const when = { Date: 1 }; when.Date;', []],
    ['const half = Math.round(0.5);', []],
  ];
  it.each(rows)('%j', (text, expected) => {
    expect(impurities(text)).toEqual(expected);
  });
});

describe.each(pure.map((name) => `src/${name}`))('%s', (folder) => {
  it('depends on its input alone', () => {
    const faults = filesOf(folder).flatMap((file) =>
      impurities(readFileSync(join(root, file), 'utf8')).map((fault) => `${file}: ${fault}`),
    );
    expect(faults).toEqual([]);
  });
});

it('looked at files', () => {
  expect(pure.flatMap((name) => filesOf(`src/${name}`)).length).toBeGreaterThan(30);
});
