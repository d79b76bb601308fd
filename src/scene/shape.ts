/**
 * Whether a file has the shape that the definition of the language gives it: its keys, and the kind of each value.
 *
 * The definition is walked together with the tree, so that each fault is found at its own place, and so that a beat's
 * branch is chosen by its mark before anything in it is looked at.
 */
import { z } from 'zod';
import { type Homes, homesOf, optionsOf, ownKeys, takes, typed, wanted, withoutOptional } from './definition.ts';
import type { Span } from './diagnostic.ts';
import { type Faults, listed, quoted } from './faults.ts';
import { notesOf } from './language-values.ts';
import { didYouMean } from './nearest-word.ts';
import { mayBeMisspelt, reportUnknown, withMeantKeys } from './unknown-keys.ts';
import { keyOf, type ListNode, type MapNode, type NothingNode, type TextNode, type Tree } from './yaml-tree.ts';

/**
 * Reports all that is not as the definition has it. Gives the tree with misspelt keys as they were meant, so that what
 * stands after them is read too, and its faults are told together with the key's.
 */
export function checkShape(definition: z.ZodType, node: Tree, faults: Faults): Tree {
  const place = { named: 'the file', span: firstOf(node), faults, homesOf: () => homesOf(definition) };
  return checkValue(definition, node, place);
}

interface Place {
  /** What a message calls the value: `"rate"`, `an item of "steps"`. */
  readonly named: string;
  /** Its key, for a value that is not there. */
  readonly span: Span;
  readonly faults: Faults;
  readonly homesOf: () => Homes;
}

function checkValue(definition: z.ZodType, node: Tree, place: Place): Tree {
  const schema = withoutOptional(definition);
  if (schema instanceof z.ZodUnion && node.kind !== 'nothing') {
    const branch = branchFor(optionsOf(schema), node, place);
    return branch === undefined ? node : checkValue(branch.option, branch.node, place);
  }
  if (schema instanceof z.ZodObject && node.kind === 'map') return checkKeys(schema, node, place);
  if (schema instanceof z.ZodRecord && node.kind === 'map') {
    const entries = node.entries.map(({ key, value }) => ({
      key,
      value: checkValue(typed(schema.valueType), value, { ...place, named: quoted(key.text), span: key.span }),
    }));
    return { ...node, entries };
  }
  if (schema instanceof z.ZodArray && node.kind === 'list') return checkItems(schema, node, place);
  checkPlain(schema, node, place);
  return node;
}

/** A value that holds no others, or one that is not of the kind due. */
function checkPlain(schema: z.ZodType, node: Tree, place: Place): void {
  if (node.kind === 'nothing') {
    reportNothing(schema, node, place);
  } else if (schema instanceof z.ZodEnum && node.kind === 'text') {
    checkWord(schema, node, place);
  } else if (schema instanceof z.ZodString && node.kind === 'text') {
    checkWhole(schema, node, place);
  } else {
    const span = node.kind === 'text' ? node.span : place.span;
    const mend = schema instanceof z.ZodString ? asOneText(node) : '';
    place.faults.error('wrong-kind', span, `${place.named} is ${kindOf(node)} here; ${wanted(schema)} is due${mend}`);
  }
}

/** A list of texts as the one text that was meant: `[4b3, r9c1]` as `4b3 r9c1`. */
function asOneText(node: Tree): string {
  if (node.kind !== 'list' || node.items.length === 0) return '';
  const texts = node.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  const joined = texts.join(' ');
  return texts.length === node.items.length && joined.length <= 60 ? `: write ${joined}` : '';
}

function reportNothing(schema: z.ZodType, node: NothingNode, place: Place): void {
  if (schema instanceof z.ZodString && node.comment !== undefined) {
    place.faults.error(
      'cut-short',
      node.comment,
      `${place.named} has no value, since # begins a comment; put the text in quotes`,
    );
  } else place.faults.error('no-value', place.span, `${place.named} has no value; ${wanted(schema)} is due`);
}

function checkItems(schema: z.ZodArray, list: ListNode, place: Place): ListNode {
  const element = typed(schema.element);
  if (list.items.length === 0 && !schema.safeParse([]).success) {
    place.faults.error(
      'no-value',
      place.span,
      `${place.named} is an empty list; write at least one item, or leave the key out`,
    );
  }
  const items = list.items.map((item) =>
    checkValue(element, item, { ...place, named: `an item of ${place.named}`, span: firstOf(item) }),
  );
  return { ...list, items };
}

function checkKeys(schema: z.ZodObject, map: MapNode, place: Place): MapNode {
  const known = Object.keys(schema.shape);
  const title = schema.meta()?.title ?? 'this map';
  for (const entry of map.entries) {
    if (!known.includes(entry.key.text)) reportUnknown(entry, map, { known, title }, place);
  }
  const meant = withMeantKeys(map, known);
  const missing = ownKeys(schema).filter((key) => keyOf(meant, key) === undefined && !mayBeMisspelt(meant, key, known));
  if (missing.length > 0) {
    const named = `${missing.length === 1 ? 'the key' : 'the keys'} ${listed(
      missing.map((key) => `"${key}"`),
      'and',
    )}`;
    place.faults.error('missing-key', place.span, `${title} needs ${named}`);
  }
  const entries = meant.entries.map(({ key, value }) => {
    const definition: unknown = schema.shape[key.text];
    if (definition === undefined) return { key, value };
    return { key, value: checkValue(typed(definition), value, { ...place, named: quoted(key.text), span: key.span }) };
  });
  return { ...meant, entries };
}

function checkWord(schema: z.ZodEnum, node: TextNode, place: Place): void {
  const words = schema.options.map(String);
  if (words.includes(node.text)) return;
  if (place.named === '"proofreel"') {
    const message = `version ${quoted(node.text)} of the language is not known here; this proofreel reads version ${listed(words)}`;
    place.faults.error('version', node.span, message);
    return;
  }
  const reason = notesOf(schema).refused?.[node.text];
  const meant = /\d/.test(node.text) ? '' : didYouMean(node.text, words);
  const mend = reason ?? `it is ${listed(words)}${meant}`;
  place.faults.error('unknown-word', node.span, `${place.named} cannot be ${quoted(node.text)}; ${mend}`);
}

/** A text must not be empty; a sentence, or a text in quotes of its own, with a comment after it was cut by YAML. */
function checkWhole(schema: z.ZodType, node: TextNode, { named, faults }: Place): void {
  if (node.text.trim() === '') {
    faults.error('no-value', node.span, `${named} is empty; write its text, or leave the key out`);
    faults.settle(node.span);
  }
  if (node.comment === undefined) return;
  const openQuote = (node.text.match(/["\u201c\u201d]/g) ?? []).length % 2 === 1;
  if (notesOf(schema).sentence !== true && !openQuote) return;
  const message =
    'a blank and # begin a comment here, and YAML drops the rest of the line; put the sentence in quotes, or on the next line after `>` (a comment goes on a line of its own)';
  faults.error('cut-short', node.comment, message);
  faults.settle(node.span);
}

/** The option that the value means, with the value as it was meant; undefined after a report that it means none. */
function branchFor(options: readonly z.ZodType[], node: Tree, place: Place): Branch | undefined {
  const fitting = options.filter((option) => takes(option, node));
  if (fitting.length === 0) return reportKind(options, node, place);
  if (fitting.length === 1) return { option: fitting[0]!, node };
  if (node.kind !== 'map')
    return { option: fitting.find((option) => option instanceof z.ZodString) ?? fitting[0]!, node };
  const objects = fitting.flatMap((option) => (option instanceof z.ZodObject ? [option] : []));
  const named = optionsNamedBy(node, objects);
  if (named.length === 0) return reportNoMark(objects, node, place);
  if (named.length === 1) return { option: named[0]!, node };
  const marks = named.flatMap(ownKeys).flatMap((key) => keyOf(node, key) ?? []);
  const [first, second] = marks.sort((a, b) => a.span.start - b.span.start);
  if (first !== undefined && second !== undefined) {
    const message = `${quoted(first.text)} and ${quoted(second.text)} stand together; write two items, one for each`;
    place.faults.error('several-marks', second.span, message, [{ span: first.span, message: 'the first stands here' }]);
  }
  return undefined;
}

interface Branch {
  readonly option: z.ZodType;
  readonly node: Tree;
}

function optionsNamedBy(map: MapNode, objects: readonly z.ZodObject[]): readonly z.ZodObject[] {
  return objects.filter((option) => ownKeys(option).some((key) => keyOf(map, key) !== undefined));
}

function reportKind(options: readonly z.ZodType[], node: Tree, place: Place): undefined {
  const span = node.kind === 'text' ? node.span : place.span;
  const kinds = [...new Set(options.map(wanted))];
  place.faults.error('wrong-kind', span, `${place.named} is ${kindOf(node)} here; ${listed(kinds)} is due`);
  return undefined;
}

/** No key says which option is meant: most likely that key is misspelt. */
function reportNoMark(objects: readonly z.ZodObject[], map: MapNode, place: Place): Branch | undefined {
  const marks = [...new Set(objects.flatMap(ownKeys))];
  const known = new Set(objects.flatMap((option) => Object.keys(option.shape)));
  const title = place.named === 'an item of "show"' ? 'a beat' : 'a place of the board';
  const strangers = map.entries.filter(({ key }) => !known.has(key.text));
  for (const { key } of strangers) {
    const meant = didYouMean(key.text, [...known]);
    place.faults.error(
      'unknown-key',
      key.span,
      `${title} has no key ${quoted(key.text)}${meant === '' ? `; it has one of ${listed(marks)}` : meant}`,
    );
  }
  if (strangers.length === 0) {
    place.faults.error('no-mark', place.span, `${title} does not say what it is; it needs one of ${listed(marks)}`);
  }
  const meant = withMeantKeys(map, [...known]);
  const [option, other] = optionsNamedBy(meant, objects);
  return option === undefined || other !== undefined ? undefined : { option, node: meant };
}

function kindOf(node: Tree): string {
  switch (node.kind) {
    case 'text':
      return `the text ${quoted(node.text)}`;
    case 'list':
      return 'a list';
    case 'map':
      return 'a map of keys';
    case 'nothing':
      return 'empty';
    default:
      return node satisfies never;
  }
}

/** Where something is said to be missing: a map's first key, a list's first item, or the text itself. */
function firstOf(node: Tree): Span {
  if (node.kind === 'map') return node.entries[0]?.key.span ?? node.span;
  if (node.kind === 'list') return node.items[0] === undefined ? node.span : firstOf(node.items[0]);
  return node.span;
}
