/**
 * A mark is one record: whatever it leaves out, the compiler asks for. The compiler is run on the source as it stands but
 * for one thing taken out or put in, and what it finds fault with is looked at.
 */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const tables = ['src/marks/marks.ts', 'src/marks/paintings.ts', 'src/frames/layers.ts'];

const { config } = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile);
const {
  options: { tsBuildInfoFile: _, incremental: __, ...options },
} = ts.parseJsonConfigFileContent({ ...config, include: [], files: tables }, ts.sys, root);
const changed = new Map<string, string>();
let version = 0;
const versions = new Map<string, number>();
const service = ts.createLanguageService({
  getCompilationSettings: () => options,
  fileExists: ts.sys.fileExists,
  readFile: ts.sys.readFile,
  readDirectory: ts.sys.readDirectory,
  directoryExists: ts.sys.directoryExists,
  getDirectories: ts.sys.getDirectories,
  getScriptFileNames: () => tables.map((file) => join(root, file)),
  getScriptVersion: (path) => `${versions.get(path) ?? 0}`,
  getScriptSnapshot(path) {
    const text = changed.get(path) ?? ts.sys.readFile(path);
    return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
  },
  getCurrentDirectory: () => root,
  getDefaultLibFileName: ts.getDefaultLibFilePath,
});

/** What the compiler says of the file and of the tables, with the file changed; then it is as it was. */
function faultsWith(file: string, change: (text: string) => string, looked: readonly string[] = tables): string[] {
  const path = join(root, file);
  const before = readFileSync(path, 'utf8');
  const after = change(before);
  expect(after).not.toBe(before);
  changed.set(path, after);
  versions.set(path, ++version);
  const paths = new Set([path, ...looked.map((each) => join(root, each))]);
  const faults = [...paths].flatMap((each) => service.getSemanticDiagnostics(each));
  changed.clear();
  versions.set(path, ++version);
  return faults.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'));
}

/** The text without an exported constant, or without one property of it. */
function without(name: string, property?: string): (text: string) => string {
  return (text) => {
    const file = ts.createSourceFile('file.ts', text, ts.ScriptTarget.ES2023, true);
    let gone: ts.Node | undefined;
    const visit = (node: ts.Node): void => {
      if (ts.isVariableStatement(node) && node.declarationList.declarations[0]?.name.getText() === name) {
        if (property === undefined) gone = node;
        else ts.forEachChild(node, visit);
      } else if (ts.isObjectLiteralElementLike(node) && node.name?.getText() === property) gone ??= node;
      else if (!ts.isVariableStatement(node)) ts.forEachChild(node, visit);
    };
    visit(file);
    if (gone === undefined) return text;
    const comma = text[gone.end] === ',' ? 1 : 0;
    return text.slice(0, gone.getStart()) + text.slice(gone.end + comma);
  };
}

it('the records as they stand have no fault', { timeout: 120_000 }, () => {
  expect(tables.flatMap((file) => service.getSemanticDiagnostics(join(root, file)))).toEqual([]);
});

describe('a mark does not compile', { timeout: 120_000 }, () => {
  const rows: readonly { readonly part: string; readonly property?: string }[] = [
    { part: 'reading' },
    { part: 'beat' },
    { part: 'beat', property: 'judge' },
    { part: 'beat', property: 'seconds' },
    { part: 'beat', property: 'strokes' },
    { part: 'words' },
    { part: 'words', property: 'clause' },
    { part: 'words', property: 'isClaim' },
    { part: 'words', property: 'areJoined' },
    { part: 'words', property: 'isNews' },
    { part: 'words', property: 'answers' },
    { part: 'painting' },
    { part: 'painting', property: 'comesIn' },
    { part: 'painting', property: 'candidates' },
    { part: 'painting', property: 'isRinged' },
    { part: 'painting', property: 'covers' },
    { part: 'painting', property: 'onBoard' },
    { part: 'painting', property: 'onFrame' },
  ];
  it.each(rows)('without its $part $property', ({ part, property }) => {
    // The compiler asks for a property where the record is, and for a part where the records are put together.
    const faults = faultsWith(
      'src/marks/fill.ts',
      without(part, property),
      property === undefined ? tables.slice(0, 2) : [],
    );
    expect(faults.join('\n')).toMatch(new RegExp(`'${property ?? part}'|"${property ?? part}"`));
  });

  it('without a layer', () => {
    const faults = faultsWith('src/marks/fill.ts', (text) => text.replace(/onBoard: \{[^}]*\}/, 'onBoard: {}'));
    expect(faults.join('\n')).toContain('never');
  });

  it('with a layer that has no place in the order', () => {
    const faults = faultsWith('src/marks/fill.ts', (text) =>
      text.replace('onBoard: { tint: paintFills }', 'onBoard: { tint: paintFills, edge: paintFills }'),
    );
    expect(faults.join('\n')).toContain('leftOut: readonly ["fill", "edge"]');
  });

  it('where the order names a layer that nobody paints', () => {
    const faults = faultsWith('src/frames/layers.ts', (text) =>
      text.replace("['fill', 'tint'],", "['fill', 'tint'],\n  ['fill', 'edge'],"),
    );
    expect(faults.join('\n')).toContain('"edge"');
  });

  it('where the order leaves a layer out', () => {
    const faults = faultsWith('src/frames/layers.ts', (text) => text.replace("['clash', 'line'],", ''));
    expect(faults.join('\n')).toContain('leftOut: readonly ["clash", "line"]');
  });

  it('where a scene can write it and it has no record', () => {
    const faults = faultsWith('src/scene/scene.ts', (text) =>
      text.replace('export type BeatMark =\n', "export type BeatMark =\n  | { readonly kind: 'halo' }\n"),
    );
    expect(faults.filter((fault) => fault.includes("'halo'")).length).toBeGreaterThan(1);
  });

  it('where it stands on the picture and has no record', () => {
    const faults = faultsWith('src/timeline/film.ts', (text) =>
      text.replace('export type MarkShape =\n', "export type MarkShape =\n  | { readonly kind: 'halo' }\n"),
    );
    expect(faults.filter((fault) => fault.includes("'halo'")).length).toBeGreaterThan(1);
  });

  it('where it has a record that no scene can write and nothing draws', () => {
    const faults = faultsWith('src/marks/marks.ts', (text) =>
      text.replace('  clear,\n};', '  clear,\n  halo: clear,\n};'),
    );
    expect(faults.join('\n')).toContain("'halo'");
  });
});
