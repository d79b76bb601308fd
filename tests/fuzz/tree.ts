/**
 * YAML files as trees that are changed by parts: texts, lists, maps whose keys may stand twice.
 */
import { isAlias, isMap, isScalar, isSeq, parseDocument } from 'yaml';

export type Tree =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly Tree[] }
  | { readonly kind: 'map'; readonly entries: readonly Entry[] };

export interface Entry {
  readonly key: string;
  readonly value: Tree;
}

export const textTree = (text: string): Tree => ({ kind: 'text', text });

/** The tree of a file that is right; a comment is lost. */
export function treeOf(file: string): Tree {
  return fromNode(parseDocument(file, { schema: 'failsafe', uniqueKeys: false }).contents);
}

function fromNode(node: unknown): Tree {
  if (isSeq(node)) return { kind: 'list', items: node.items.map(fromNode) };
  if (isMap(node)) {
    const entries = node.items.map(({ key, value }) => ({ key: textOf(key), value: fromNode(value) }));
    return { kind: 'map', entries };
  }
  return textTree(textOf(node));
}

function textOf(node: unknown): string {
  if (isScalar(node)) return String(node.value ?? '');
  return isAlias(node) ? `*${node.source}` : '';
}

/** The tree as a file: maps and lists in blocks down to some depth, in braces and brackets below. */
export function printTree(tree: Tree, blocks = 3): string {
  return blockOf(tree, '', blocks);
}

function blockOf(tree: Tree, indent: string, blocks: number): string {
  if (blocks === 0 || tree.kind === 'text') return `${flowOf(tree)}\n`;
  const parts = tree.kind === 'list' ? tree.items : tree.entries;
  if (parts.length === 0) return `${flowOf(tree)}\n`;
  if (tree.kind === 'list') return tree.items.map((item) => `${indent}- ${flowOf(item)}\n`).join('');
  return tree.entries.map(({ key, value }) => `${indent}${scalar(key)}:${under(value, indent, blocks)}`).join('');
}

function under(value: Tree, indent: string, blocks: number): string {
  const isBlock =
    blocks > 1 && value.kind !== 'text' && (value.kind === 'list' ? value.items : value.entries).length > 0;
  return isBlock ? `\n${blockOf(value, `${indent}  `, blocks - 1)}` : ` ${flowOf(value)}\n`;
}

function flowOf(tree: Tree): string {
  switch (tree.kind) {
    case 'text':
      return scalar(tree.text);
    case 'list':
      return `[${tree.items.map(flowOf).join(', ')}]`;
    case 'map':
      return `{${tree.entries.map(({ key, value }) => `${scalar(key)}: ${flowOf(value)}`).join(', ')}}`;
    default:
      return tree satisfies never;
  }
}

/** Bare where YAML reads it back as it is, else in quotes. */
function scalar(text: string): string {
  return /^[\w./+][\w ./+()=<>-]*$/.test(text) && !text.endsWith(' ') ? text : JSON.stringify(text);
}
