/**
 * Changes of files that know what they change: a text for another that stood under the same key, a step twice, a key
 * that is none, a digit for another.
 */
import type { Chance } from '../random.ts';
import { type Entry, type Tree, textTree } from './tree.ts';

/** What the files of one kind are made of. */
export interface Stock {
  readonly byKey: ReadonlyMap<string, readonly Tree[]>;
  readonly keys: readonly string[];
  readonly texts: readonly string[];
}

export function stockOf(trees: readonly Tree[]): Stock {
  const byKey = new Map<string, Tree[]>();
  const texts: string[] = [];
  const visit = (tree: Tree): void => {
    if (tree.kind === 'text') texts.push(tree.text);
    else if (tree.kind === 'list') tree.items.forEach(visit);
    else {
      for (const { key, value } of tree.entries) {
        byKey.set(key, [...(byKey.get(key) ?? []), value]);
        visit(value);
      }
    }
  };
  trees.forEach(visit);
  return { byKey, keys: [...byKey.keys()], texts: [...new Set(texts)] };
}

/** Texts that programs stumble over. */
export const awkward: readonly string[] = [
  ...['', ' ', '0', '-1', '1e999', '9'.repeat(40), '0.1', '1/0', '0/0', 'null', 'true', '~'],
  ...[
    'constructor',
    '__proto__',
    'toString',
    'all',
    'either',
    'step',
    'none',
    '*',
    '=>',
    '<>',
    '=',
    '-',
    '+',
    '(',
    ')',
  ],
  ...['r0c0', 'r10c10', '0r1c1', 'r1c1=0', '9r9c9<>9', 'r1', 'b9p9', '12r12c12', 'r123456789c123456789', 'd1', '1d2'],
  ...['99:99:99:99', '00:00:00;00', '+0', '-0:01', '1000000:00', '0.0000001', 'cue', 'words', 'words ""', 'cue 1 +0.5'],
  ...[
    '1x1',
    '0x0',
    '9x9',
    '100000x100000',
    '2x2',
    '#ffffff',
    '#fff',
    '../../etc/passwd',
    '/dev/null',
    'http://a.example/',
  ],
  ...[
    '\u0000',
    '\u0007',
    '\u001b[31m',
    '\u202e',
    '\ud800',
    '\ufeff',
    '日本語',
    'e\u0301',
    '👩‍👩‍👧',
    '\r\n',
    '\t',
    '\\',
    '"',
    "'",
  ],
  ...[
    '<script>',
    '&amp;',
    '$(x)',
    '{x}',
    '%s',
    'a'.repeat(3000),
    'W'.repeat(200),
    '1..4 .4.. ..43 ...1',
    '.'.repeat(81),
  ],
];

/** Where almost any change makes the whole file one that is refused: it is made, but seldom. */
const brittle: ReadonlySet<string> = new Set([
  'proofreel',
  'phrases',
  'givens',
  'placed',
  'removed',
  'puzzle',
  'boxes',
]);

/** The tree with one change somewhere. */
export function changed(tree: Tree, stock: Stock, chance: Chance): Tree {
  const all = placesIn(tree);
  const places = chance.below(8) === 0 ? all : all.filter(({ keys }) => !keys.some((key) => brittle.has(key)));
  return changedAt(tree, chance.pick(places.length === 0 ? all : places).path, (found, key) =>
    changeOf(found, key, stock, chance),
  );
}

/** A way down: indices of items and entries. */
type Path = readonly number[];

interface Place {
  readonly path: Path;
  /** Of the maps on the way. */
  readonly keys: readonly string[];
}

function placesIn(tree: Tree, path: Path = [], keys: readonly string[] = []): Place[] {
  const own = { path, keys };
  if (tree.kind === 'text') return [own];
  if (tree.kind === 'list') return [own, ...tree.items.flatMap((item, at) => placesIn(item, [...path, at], keys))];
  const within = tree.entries.flatMap(({ key, value }, at) => placesIn(value, [...path, at], [...keys, key]));
  return [own, ...within];
}

function changedAt(tree: Tree, [at, ...rest]: Path, change: (found: Tree, key: string) => Tree, key = ''): Tree {
  if (at === undefined) return change(tree, key);
  if (tree.kind === 'list') {
    return { kind: 'list', items: tree.items.map((item, n) => (n === at ? changedAt(item, rest, change, key) : item)) };
  }
  if (tree.kind === 'text') return tree;
  const entries = tree.entries.map((entry, n) =>
    n === at ? { key: entry.key, value: changedAt(entry.value, rest, change, entry.key) } : entry,
  );
  return { kind: 'map', entries };
}

function changeOf(tree: Tree, key: string, stock: Stock, chance: Chance): Tree {
  const others = stock.byKey.get(key) ?? [];
  // What stood there elsewhere keeps most of the file right, so that the change is met by what comes after the reader.
  if (others.length > 0 && chance.below(5) < 2) return chance.pick(others);
  if (chance.below(25) === 0) return otherKind(tree, key, chance);
  switch (tree.kind) {
    case 'text':
      return textTree(changedText(tree.text, stock, chance));
    case 'list':
      return { kind: 'list', items: changedList(tree.items, chance) };
    case 'map':
      return { kind: 'map', entries: changedEntries(tree.entries, stock, chance) };
    default:
      return tree satisfies never;
  }
}

function otherKind(tree: Tree, key: string, chance: Chance): Tree {
  const kinds: readonly Tree[] = [
    { kind: 'list', items: [tree] },
    { kind: 'list', items: [] },
    { kind: 'map', entries: [{ key: key === '' ? 'a' : key, value: tree }] },
    { kind: 'map', entries: [] },
    textTree(''),
  ];
  return chance.pick(kinds);
}

/** A token for another: words, numbers and signs of the notation are exchanged, taken out, and said twice. */
export function changedText(text: string, stock: Pick<Stock, 'texts'>, chance: Chance): string {
  if (text === '' || chance.below(6) === 0) return chance.pick(chance.below(2) === 0 ? awkward : stock.texts);
  const tokens = text.match(/\d|[A-Za-z]+|\s+|[^\w\s]/g) ?? [text];
  const at = chance.below(tokens.length);
  const token = tokens[at]!;
  const swapped = (): string =>
    /\d/.test(token) ? String(chance.below(10)) : (chance.pick(chance.pick(stock.texts).split(/\b/)) ?? '');
  const turns: readonly (() => readonly string[])[] = [
    () => tokens.with(at, swapped()),
    () => tokens.with(at, swapped()),
    () => tokens.toSpliced(at, 1),
    () => tokens.toSpliced(at, 0, token),
    () => tokens.toSpliced(at, 0, chance.pick(['=', '-', '<>', '=>', ' ', '|', '(', ')', ',', '+'])),
    () => tokens.slice(0, at),
    () => [...tokens, ' ', chance.pick(stock.texts)],
  ];
  return chance.pick(turns)().join('');
}

function changedList<Item>(items: readonly Item[], chance: Chance): readonly Item[] {
  if (items.length === 0) return items;
  const [a, b] = [chance.below(items.length), chance.below(items.length)];
  const turns: readonly (() => readonly Item[])[] = [
    () => items.toSpliced(a, 1),
    () => items.toSpliced(b, 0, items[a]!),
    () => items.with(a, items[b]!).with(b, items[a]!),
    () => items.toReversed(),
    () => items.slice(0, a + 1),
  ];
  return chance.pick(turns)();
}

function changedEntries(entries: readonly Entry[], stock: Stock, chance: Chance): readonly Entry[] {
  const key = chance.below(8) === 0 ? chance.pick(awkward) : chance.pick(stock.keys);
  const more = { key, value: chance.pick(stock.byKey.get(key) ?? [textTree(chance.pick(awkward))]) };
  if (entries.length === 0 || chance.below(3) === 0)
    return entries.toSpliced(chance.below(entries.length + 1), 0, more);
  if (chance.below(3) > 0) return changedList(entries, chance);
  const at = chance.below(entries.length);
  return entries.with(at, { key, value: entries[at]!.value });
}

/** Signs and lines of any text moved about, for files that are no tree. */
export function changedLines(text: string, stock: Pick<Stock, 'texts'>, chance: Chance): string {
  const lines = text.split('\n');
  const at = chance.below(lines.length);
  return chance.below(3) === 0
    ? changedList(lines, chance).join('\n')
    : lines.with(at, changedText(lines[at]!, stock, chance)).join('\n');
}
