/**
 * A YAML file as a tree of texts, lists and maps, each with its place. All scalars are texts as written: YAML's guesses
 * of numbers and truth values are not used.
 */
import { type Document, isAlias, isMap, isNode, isPair, isScalar, isSeq, parseAllDocuments, type Scalar } from 'yaml';
import type { Span } from './diagnostic.ts';
import { type Faults, quoted } from './faults.ts';
import { offsetsOf, type ScalarStyle } from './text-offsets.ts';

export type Tree = TextNode | ListNode | MapNode | NothingNode;

export interface TextNode {
  readonly kind: 'text';
  readonly text: string;
  readonly span: Span;
  /** By unit of the text: its offset in the file; one more for the end. */
  readonly offsets: readonly number[];
  /** For a plain text followed by ` #`: the comment. */
  readonly comment: Span | undefined;
}

export interface ListNode {
  readonly kind: 'list';
  readonly items: readonly Tree[];
  readonly span: Span;
}

export interface MapNode {
  readonly kind: 'map';
  readonly entries: readonly Entry[];
  readonly span: Span;
  /** Written between braces. */
  readonly braces: boolean;
}

/** A key with nothing after it, or an empty item. */
export interface NothingNode {
  readonly kind: 'nothing';
  readonly span: Span;
  /** The comment in place of the value. */
  readonly comment: Span | undefined;
}

export interface Entry {
  readonly key: TextNode;
  readonly value: Tree;
}

/** The documents of the file, with their faults of syntax. Blank ones are left out. */
export function parseYaml(file: string): readonly Document.Parsed[] {
  const documents = parseAllDocuments(file, {
    schema: 'failsafe',
    keepSourceTokens: true,
    prettyErrors: false,
    uniqueKeys: false,
    logLevel: 'silent',
  });
  return 'empty' in documents ? [] : documents.filter((document) => !isBlank(document));
}

/**
 * What no text may hold: control characters other than blanks (they would act on a terminal), and what XML 1.0, 2.2,
 * has no place for: halves of a pair, U+FFFE and U+FFFF.
 */
const controlSign = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/u;

/** The tree of a document. Duplicate keys, and features of YAML that the language does not use, are reported. */
export function treeOf(file: string, document: Document.Parsed, faults: Faults): Tree {
  const anchors = new Map<string, TextNode>();
  return build(document.contents, { start: 0, end: 0 });

  function build(node: unknown, around: Span): Tree {
    if (!isNode(node)) return nothingAt(file, around.start);
    const span = { start: node.range?.[0] ?? around.start, end: node.range?.[1] ?? around.start };
    if (isAlias(node)) return aliased(node.source, span);
    reportTag(node.tag, span);
    if (isScalar(node)) return scalar(node, span);
    if (node.anchor !== undefined) reportAnchor(node.anchor, span);
    if (isSeq(node))
      return { kind: 'list', items: node.items.map((item) => build(item, span)), span: trimmed(file, span) };
    if (!isMap(node)) return nothingAt(file, span.start);
    return { kind: 'map', entries: entriesOf(node.items, span), span: trimmed(file, span), braces: node.flow === true };
  }

  function entriesOf(pairs: readonly unknown[], map: Span): readonly Entry[] {
    const entries: Entry[] = [];
    for (const pair of pairs) {
      if (!isPair(pair)) continue;
      const key = build(pair.key, map);
      if (key.kind !== 'text') {
        faults.error('yaml-syntax', key.span, 'there is no plain word before this colon; write `key: value`');
        continue;
      }
      const value = build(pair.value, { start: key.span.end, end: key.span.end });
      const earlier = entries.find((entry) => entry.key.text === key.text);
      if (earlier === undefined) entries.push({ key, value });
      else {
        faults.error('duplicate-key', key.span, `${quoted(key.text)} appears twice here; keep one of the two`, [
          { span: earlier.key.span, message: 'the first is here' },
        ]);
      }
    }
    return entries;
  }

  function scalar(node: Scalar, span: Span): Tree {
    if (span.start === span.end) return nothingAt(file, span.start);
    const style = styleOf(node.type);
    const text = String(node.value ?? '');
    const offsets = offsetsOf(file, span.start, span.end, text, style);
    const built: TextNode = {
      kind: 'text',
      text,
      // A block text is shown from its first word on, not from the | or > before it.
      span: trimmed(file, style === 'block' ? { start: offsets[firstWord(text)]!, end: span.end } : span),
      offsets,
      comment: style === 'plain' ? commentAfter(file, span.end) : undefined,
    };
    reportControlSign(built);
    if (node.anchor !== undefined) anchors.set(node.anchor, built);
    return built;
  }

  function reportControlSign(text: TextNode): void {
    const found = controlSign.exec(text.text);
    if (found === null) return;
    const code = found[0].charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
    const message = `U+${code} is a character that nothing can show; leave it out`;
    faults.error('control-sign', spanIn(text, found.index, found.index + 1), message);
  }

  function aliased(name: string, span: Span): Tree {
    const text = anchors.get(name);
    if (text !== undefined) return text;
    const fix = `mark a text before it with &${name}, or write the text out here`;
    faults.error('alias', span, `*${name} names no earlier text; ${fix}`);
    faults.settle(span);
    return { kind: 'text', text: '', span, offsets: [span.start], comment: undefined };
  }

  function reportAnchor(name: string, span: Span): void {
    const place = { start: Math.max(0, file.lastIndexOf('&', span.start)), end: span.start };
    const message = `&${name} marks a map or a list; only a text can be used again, so write the rest out`;
    faults.error('alias', trimmed(file, place), message);
  }

  function reportTag(tag: string | undefined, span: Span): void {
    if (tag === undefined || tag === 'tag:yaml.org,2002:str' || tag === '!') return;
    const name = tag.replace('tag:yaml.org,2002:', '!!');
    const place = { start: Math.max(0, file.lastIndexOf('!', span.start)), end: span.start };
    faults.error(
      'tag',
      trimmed(file, place),
      `the tag ${name} means nothing here; leave it out: values are read as they are written`,
    );
  }
}

/** The places in the file of a part of the text: `from` to `to` in its units, `to` excluded. */
export function spanIn(node: TextNode, from: number, to: number): Span {
  const last = node.offsets.length - 1;
  const start = node.offsets[Math.min(Math.max(from, 0), last)]!;
  if (to <= from || last === 0) return { start, end: start };
  return { start, end: node.offsets[Math.min(to, last) - 1]! + 1 };
}

/** The value of a key; undefined if the map does not have it or it has no value. */
export function valueOf(map: MapNode, key: string): Tree | undefined {
  const value = map.entries.find((entry) => entry.key.text === key)?.value;
  return value?.kind === 'nothing' ? undefined : value;
}

/** The key itself, if the map has it. */
export function keyOf(map: MapNode, key: string): TextNode | undefined {
  return map.entries.find((entry) => entry.key.text === key)?.key;
}

/** The text after a key, if there is one. */
export function textOf(map: MapNode, key: string): TextNode | undefined {
  const value = valueOf(map, key);
  return value?.kind === 'text' ? value : undefined;
}

function isBlank(document: Document.Parsed): boolean {
  const { contents } = document;
  return document.errors.length === 0 && (contents === null || (isScalar(contents) && contents.source === ''));
}

function styleOf(type: string | undefined): ScalarStyle {
  if (type === 'QUOTE_DOUBLE') return 'double';
  if (type === 'QUOTE_SINGLE') return 'single';
  return type === 'BLOCK_LITERAL' || type === 'BLOCK_FOLDED' ? 'block' : 'plain';
}

function nothingAt(file: string, offset: number): NothingNode {
  return { kind: 'nothing', span: { start: offset, end: offset }, comment: commentAfter(file, offset) };
}

function firstWord(text: string): number {
  return Math.max(0, text.search(/\S/));
}

/** Without the white space and line breaks at its end. */
function trimmed(file: string, span: Span): Span {
  return { start: span.start, end: span.start + file.slice(span.start, span.end).trimEnd().length };
}

function commentAfter(file: string, end: number): Span | undefined {
  const isApart = /[\s:]/.test(file[end - 1] ?? ' ');
  const comment = /^[ \t]*(#[^\r\n]*)/.exec(file.slice(end, end + 2000));
  if (comment === null || (!isApart && comment[0].startsWith('#'))) return undefined;
  return { start: end + comment[0].length - comment[1]!.length, end: end + comment[0].length };
}
