/**
 * Whether a file has the shape that the definition of the language gives it: its keys, and the kind of each value.
 *
 * The definition is traversed together with the tree, so that each fault is found at its own place, and a beat's branch
 * is chosen by its mark before anything in it is checked.
 */
import {
  type ChoiceDefinition,
  type Definition,
  definitionOf,
  type EitherDefinition,
  type ListDefinition,
  type MapDefinition,
  type MarkedDefinition,
  type Opens,
  ownKeys,
  type TextDefinition,
  takes,
} from './definition.ts';
import { expected, type Homes, homesOf } from './definition-words.ts';
import type { Span } from './diagnostic.ts';
import { type Faults, listed, quoted } from './faults.ts';
import { didYouMean } from './nearest-word.ts';
import { mayBeMisspelt, reportUnknown, withMeantKeys } from './unknown-keys.ts';
import { keyOf, type ListNode, type MapNode, type NothingNode, type TextNode, type Tree } from './yaml-tree.ts';

/**
 * Reports everything that deviates from the definition. Returns the tree with misspelt keys as they were meant, so that
 * their values are read too, and those faults are reported together with the key's.
 */
export function checkShape(definition: Definition, node: Tree, faults: Faults): Tree {
  const place = { named: 'the file', span: firstOf(node), faults, homesOf: () => homesOf(definition) };
  return checkValue(definition, node, place);
}

/**
 * The file as the definition has it, with all faults of shape reported; undefined if it is of another kind altogether.
 */
export function readShape<Read>(definition: Definition & Opens<Read>, node: Tree, faults: Faults): Read | undefined {
  return definition.open(checkShape(definition, node, faults), 'the file');
}

interface Place {
  /** What a message calls the value: `"rate"`, `an item of "steps"`. */
  readonly named: string;
  /** Its key, for a missing value. */
  readonly span: Span;
  readonly faults: Faults;
  readonly homesOf: () => Homes;
}

function checkValue(definition: Definition, node: Tree, place: Place): Tree {
  if (node.kind === 'nothing') {
    reportNothing(definition, node, place);
    return node;
  }
  if (!takes(definition, node)) {
    reportKind(definition, node, place);
    return node;
  }
  switch (definition.kind) {
    case 'text':
      if (node.kind === 'text') checkWhole(definition, node, place);
      return node;
    case 'choice':
      if (node.kind === 'text') checkWord(definition, node, place);
      return node;
    case 'list':
      return node.kind === 'list' ? checkItems(definition, node, place) : node;
    case 'map':
      return node.kind === 'map' ? checkKeys(definition, node, place) : node;
    case 'entries':
      return node.kind === 'map' ? checkEntries(definition.value, node, place) : node;
    case 'either':
      return checkOption(definition, node, place);
    case 'marked':
      return node.kind === 'map' ? checkMarked(definition, node, place) : node;
    default:
      return definition satisfies never;
  }
}

function checkOption({ options }: EitherDefinition, node: Tree, place: Place): Tree {
  const option = options.find((each) => takes(each, node));
  return option === undefined ? node : checkValue(option, node, place);
}

function checkEntries(value: Definition, map: MapNode, place: Place): MapNode {
  const entries = map.entries.map((entry) => ({
    key: entry.key,
    value: checkValue(value, entry.value, { ...place, named: quoted(entry.key.text), span: entry.key.span }),
  }));
  return { ...map, entries };
}

function reportKind(definition: Definition, node: Tree, place: Place): void {
  const span = node.kind === 'text' ? node.span : place.span;
  const fix = isPlainText(definition) ? asOneText(node) : '';
  place.faults.error(
    'wrong-kind',
    span,
    `${place.named} is ${kindOf(node)} here; expected ${expected(definition)}${fix}`,
  );
}

/** Any text, unless it is mostly a misspelling of known words. */
function isPlainText(definition: Definition): boolean {
  return definition.kind === 'text' && definition.suggestions === undefined;
}

/** A list of texts as the one text that was meant: `[4b3, r9c1]` as `4b3 r9c1`. */
function asOneText(node: Tree): string {
  if (node.kind !== 'list' || node.items.length === 0) return '';
  const texts = node.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  const joined = texts.join(' ');
  return texts.length === node.items.length && joined.length <= 60 ? `: write ${joined}` : '';
}

function reportNothing(definition: Definition, node: NothingNode, place: Place): void {
  if (isPlainText(definition) && node.comment !== undefined) {
    place.faults.error(
      'cut-short',
      node.comment,
      `${place.named} has no value, since # begins a comment; put the text in quotes`,
    );
  } else place.faults.error('no-value', place.span, `${place.named} has no value; expected ${expected(definition)}`);
}

function checkItems({ item: element, mayBeEmpty }: ListDefinition, list: ListNode, place: Place): ListNode {
  if (list.items.length === 0 && !mayBeEmpty) {
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

function checkKeys(definition: MapDefinition, map: MapNode, place: Place): MapNode {
  const known = Object.keys(definition.shape);
  const { title } = definition;
  for (const entry of map.entries) {
    if (!known.includes(entry.key.text)) reportUnknown(entry, map, { known, title }, place);
  }
  const meant = withMeantKeys(map, known);
  const missing = ownKeys(definition).filter(
    (key) => keyOf(meant, key) === undefined && !mayBeMisspelt(meant, key, known),
  );
  if (missing.length > 0) {
    const named = `${missing.length === 1 ? 'the key' : 'the keys'} ${listed(
      missing.map((key) => `"${key}"`),
      'and',
    )}`;
    place.faults.error('missing-key', place.span, `${title} needs ${named}`);
  }
  const entries = meant.entries.map(({ key, value }) => {
    const own = definitionOf(definition, key.text);
    if (own === undefined) return { key, value };
    return { key, value: checkValue(own, value, { ...place, named: quoted(key.text), span: key.span }) };
  });
  return { ...meant, entries };
}

function checkWord({ words, refused = {} }: ChoiceDefinition, node: TextNode, place: Place): void {
  if (words.includes(node.text)) return;
  if (place.named === '"proofreel"') {
    const message = `version ${quoted(node.text)} of the language is not known here; this proofreel reads version ${listed(words)}`;
    place.faults.error('version', node.span, message);
    return;
  }
  const reason = Object.hasOwn(refused, node.text) ? refused[node.text] : undefined;
  const meant = /\d/.test(node.text) ? '' : didYouMean(node.text, words);
  const fix = reason ?? `it is ${listed(words)}${meant}`;
  place.faults.error('unknown-word', node.span, `${place.named} cannot be ${quoted(node.text)}; ${fix}`);
}

/** A text must not be empty; a sentence, or a text in its own quotes, with a comment after it was cut by YAML. */
function checkWhole({ isSentence }: TextDefinition, node: TextNode, { named, faults }: Place): void {
  if (node.text.trim() === '') {
    faults.error('no-value', node.span, `${named} is empty; write its text, or leave the key out`);
    faults.settle(node.span);
  }
  if (node.comment === undefined) return;
  const openQuote = (node.text.match(/["\u201c\u201d]/g) ?? []).length % 2 === 1;
  if (isSentence !== true && !openQuote) return;
  const message =
    'a space and # begin a comment here, and YAML drops the rest of the line; put the sentence in quotes, or on the next line after `>` (a comment goes on a line of its own)';
  faults.error('cut-short', node.comment, message);
  faults.settle(node.span);
}

/** A map that is one of several, as the one that its mark selects. */
function checkMarked(definition: MarkedDefinition, node: MapNode, place: Place): Tree {
  const maps = Object.values(definition.maps);
  const named = mapsNamedBy(node, maps);
  if (named.length === 0) return checkWithoutMark(definition, node, place);
  if (named.length === 1) return checkKeys(named[0]!, node, place);
  const marks = named.flatMap(ownKeys).flatMap((key) => keyOf(node, key) ?? []);
  const [first, second] = marks.sort((a, b) => a.span.start - b.span.start);
  if (first !== undefined && second !== undefined) {
    const message = `${quoted(first.text)} and ${quoted(second.text)} are in one item; write two items, one for each`;
    place.faults.error('several-marks', second.span, message, [{ span: first.span, message: 'the first is here' }]);
  }
  return node;
}

function mapsNamedBy(node: MapNode, maps: readonly MapDefinition[]): readonly MapDefinition[] {
  return maps.filter((map) => ownKeys(map).some((key) => keyOf(node, key) !== undefined));
}

/** No key says which map is meant: most likely that key is misspelt. */
function checkWithoutMark({ title, maps: named }: MarkedDefinition, node: MapNode, place: Place): Tree {
  const maps = Object.values(named);
  const marks = [...new Set(maps.flatMap(ownKeys))];
  const known = [...new Set(maps.flatMap((map) => Object.keys(map.shape)))];
  const strangers = node.entries.filter(({ key }) => !known.includes(key.text));
  for (const { key } of strangers) {
    const meant = didYouMean(key.text, known);
    const fix = meant === '' ? `; it has one of ${listed(marks)}` : meant;
    place.faults.error('unknown-key', key.span, `${title} has no key ${quoted(key.text)}${fix}`);
  }
  if (strangers.length === 0) {
    place.faults.error('no-mark', place.span, `${title} does not say what it is; it needs one of ${listed(marks)}`);
  }
  const meant = withMeantKeys(node, known);
  const [map, other] = mapsNamedBy(meant, maps);
  return map === undefined || other !== undefined ? node : checkKeys(map, meant, place);
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
