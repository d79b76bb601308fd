/**
 * The options of all verbs, by their records: each is written in a test, and no text of ours speaks of one that is not.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { parseCommandLine } from '../../src/commands/command-line.ts';
import { wordOf } from '../../src/verbs/verb.ts';
import { isVerb, renamedVerbs, type VerbName, verbNames, verbs } from '../../src/verbs/verbs.ts';
import { keptTerminal, run } from './run.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const here = fileURLToPath(import.meta.url);

function filesIn(folder: string, ending: string): readonly string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(root, folder, name));
}

/**
 * Calls in this text, each as its literal words: lists and arguments in which the word of a verb stands, from there on.
 * `run('check', path, '--json')` is one, and so is a row `['check', path, '--json']` of a table.
 */
function callsIn(text: string): readonly (readonly [verb: VerbName, ...words: string[]])[] {
  const found: [VerbName, ...string[]][] = [];
  const visit = (node: ts.Node): void => {
    const list = ts.isCallExpression(node) ? node.arguments : ts.isArrayLiteralExpression(node) ? node.elements : [];
    const words = list.flatMap(wordsIn);
    const start = words.findIndex(isVerb);
    const verb = words[start];
    if (verb !== undefined && isVerb(verb)) found.push([verb, ...words.slice(start + 1)]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('test.ts', text, ts.ScriptTarget.ES2023, true));
  return found;
}

/** The text of a string, or of the strings in a list that is spread; of `--scale=${part}` what stands before the value. */
function wordsIn(node: ts.Node): readonly string[] {
  if (ts.isStringLiteralLike(node)) return [node.text.replace(/^(--[a-z-]+)=.*$/s, '$1')];
  if (ts.isTemplateExpression(node)) return [node.head.text.replace(/=$/, '')];
  if (ts.isSpreadElement(node)) return wordsIn(node.expression);
  return ts.isArrayLiteralExpression(node) ? node.elements.flatMap(wordsIn) : [];
}

const flags = verbNames.flatMap((verb) =>
  Object.entries(verbs[verb].options).map(([key, { letter }]: [string, { letter?: string }]) => ({
    verb,
    forms: [wordOf(key), ...(letter === undefined ? [] : [`-${letter}`])],
  })),
);

it('every flag is written in a call of its verb in some test', () => {
  const written = new Set<string>();
  for (const file of filesIn('tests', '.ts')) {
    const text = file === here ? '' : readFileSync(file, 'utf8');
    if (!/['`]-/.test(text)) continue;
    for (const [verb, ...words] of callsIn(text)) for (const word of words) written.add(`${verb} ${word}`);
  }
  const unwritten = flags.filter(({ verb, forms }) => !forms.some((form) => written.has(`${verb} ${form}`)));
  expect(unwritten.map(({ verb, forms }) => `${verb} ${forms[0]}`)).toEqual([]);
});

it('a call in a test is found by its verb, wherever its words stand', () => {
  expect(
    callsIn("run('check', path, '--json'); x(['plan', ...['--until', a], `--seconds=$" + "{b}`]); f('--tree');"),
  ).toEqual([
    ['check', '--json'],
    // The call of x and the list in it.
    ['plan', '--until', '--seconds'],
    ['plan', '--until', '--seconds'],
  ]);
});

const known = new Set([...flags.flatMap(({ forms }) => forms), '--help', '--version']);
/** Options of Node, of ffmpeg's and our own npm scripts, and of GNU parallel. */
const foreign = new Set(['--import', '--check', '--mode', '--sshlogin', '--workdir', '--return', '--cleanup']);

/** What the messages of a program can say: its strings, without its comments and its code. */
function stringsIn(text: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      found.push(node.text);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('file.ts', text, ts.ScriptTarget.ES2023, true));
  return found;
}

it.each(['src/commands', 'src/verbs', 'src/output', 'README.md', 'scenes/LANGUAGE.md'])(
  'every flag that %s speaks of is one',
  (place) => {
    const texts = place.endsWith('.md')
      ? [readFileSync(join(root, place), 'utf8')]
      : filesIn(place, '.ts').flatMap((file) => stringsIn(readFileSync(file, 'utf8')));
    const spoken = texts.flatMap((text) => text.match(/(?<![\w-])--[a-z]+(-[a-z]+)*(?![\w-])/g) ?? []);
    expect(spoken.length).toBeGreaterThan(0);
    expect([...new Set(spoken)].filter((word) => !known.has(word) && !foreign.has(word))).toEqual([]);
  },
);

describe('the examples in the help of', () => {
  it.each(verbNames)('%s are calls that the command line takes', (verb) => {
    for (const example of verbs[verb].examples) {
      const words = [...example.replace(/ > .*$/, '').matchAll(/'([^']*)'|(\S+)/g)].map(
        ([, quoted, bare]) => quoted ?? bare ?? '',
      );
      const terminal = keptTerminal();
      const [program, ...call] = words;
      expect([program, parseCommandLine(call, terminal)], terminal.said.err).toMatchObject([
        'proofreel',
        { kind: 'verb', name: verb },
      ]);
    }
  });
});

describe('a word of an earlier version', () => {
  const rows = verbNames.flatMap((verb) =>
    Object.entries(verbs[verb].renamed ?? {}).map(
      ([old, key]) => [[verb, 'x', `--${old}`], `--${old} is now ${wordOf(key)}`] as const,
    ),
  );
  it.each([
    ...rows,
    ...Object.entries(renamedVerbs).map(
      ([old, verb]) => [[old, 'x.yaml', '--step', 'y'], `${old} is now ${verb}`] as const,
    ),
    [['alternatives', '1234341221434321', '--at', 'free'], '--at free is now --at singles'] as const,
  ])('%j is refused, with what it is now', async (call, said) => {
    expect(await run(...call)).toEqual({ status: 2, out: '', err: `proofreel: ${said}\n` });
  });
});
