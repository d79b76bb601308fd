/**
 * A file of phrases: the words in which drafts are told, in one language. Others are added as files, not as code.
 */
import { z } from 'zod';
import { canonicalName, nearestNames } from '../scene/argument-names.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { type Faults, listed, quoted } from '../scene/faults.ts';
import { choice, keys, listOf, name, sentence } from '../scene/language-values.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { editorSchema } from '../scene/schema.ts';
import { checkShape } from '../scene/shape.ts';
import { readYamlFile } from '../scene/yaml-file.ts';
import { type MapNode, spanIn, type TextNode, textOf, valueOf } from '../scene/yaml-tree.ts';
import { type PartKey, parts, type Saying, type SentenceKey, sentences, type TitleKey, titles } from './sayings.ts';

export interface Phrases {
  /** As BCP 47 has it: `en`, `de`. */
  readonly language: string;
  readonly words: Words;
  /** What arguments are called, by canonical name; where one is not there, that name stands. */
  readonly names: ReadonlyMap<string, string>;
  readonly parts: Readonly<Record<PartKey, string>>;
  readonly titles: Readonly<Record<TitleKey, string>>;
  /** One or more of each, which take turns. */
  readonly sentences: Readonly<Record<SentenceKey, readonly string[]>>;
}

export interface Words {
  /** By digit from 1, at index 0: `seven`, `a seven`, `sevens`. */
  readonly digit: readonly string[];
  readonly 'a-digit': readonly string[];
  readonly digits: readonly string[];
  /** From nought on. */
  readonly numbers: readonly string[];
  /** What stands between the items of a list, before its last one, and between the links of a chain. */
  readonly comma: string;
  readonly and: string;
  readonly or: string;
  readonly link: string;
}

const slotted = ({ means, slots }: Saying) =>
  slots.length === 0 ? means : `${means} Slots: ${slots.map((slot) => `{${slot}}`).join(', ')}.`;
const phraseOf = (saying: Saying) => sentence(slotted(saying));
const turnsOf = (saying: Saying) => z.union([phraseOf(saying), listOf(phraseOf(saying))]);
const record = <Value extends z.ZodType>(sayings: Readonly<Record<string, Saying>>, value: (each: Saying) => Value) =>
  Object.fromEntries(Object.entries(sayings).map(([key, each]) => [key, value(each)]));
const words = (description: string) => listOf(name(description)).meta({ description });

/** A whole file of phrases. */
export const phrasesDefinition = keys('a file of phrases', 'What a draft says, in one language.', {
  phrases: choice(['1'], 'The version of this format.'),
  language: name('The language, as BCP 47 has it: en, de.'),
  words: keys('the words', 'Digits, numbers, and what joins lists.', {
    digit: words('The nine digits: seven.'),
    'a-digit': words('The nine digits with an article: a seven.'),
    digits: words('The nine digits in the plural: sevens.'),
    numbers: words('Counts from nought on; larger ones are written in figures.'),
    comma: sentence('Between the items of a list.'),
    and: sentence('Before the last item of a list.'),
    or: sentence('Before the last item of a choice.'),
    link: sentence('Between the links of a chain.'),
  }),
  names: z.record(z.string(), name('What the argument is called.')).meta({
    description: 'What arguments are called in this language, by the names of the scene language.',
  }),
  parts: keys('the parts', 'Parts of sentences.', record(parts, phraseOf)),
  titles: keys('the titles', 'What stands on screen.', record(titles, phraseOf)),
  sentences: keys(
    'the sentences',
    'What is said: one sentence, or several that take turns.',
    record(sentences, turnsOf),
  ),
});

export interface ReadPhrases {
  /** Undefined where there is an error. */
  readonly phrases: Phrases | undefined;
  /** All faults of the file by place. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads a file of phrases; `text` is its content. */
export function readPhrases(text: string): ReadPhrases {
  const beginning = 'a file of phrases begins with `phrases: 1`';
  const { value, diagnostics } = readYamlFile(text, beginning, (tree, faults) => {
    const before = faults.errorCount();
    checkShape(phrasesDefinition, tree, faults);
    return tree.kind === 'map' && faults.errorCount() === before ? phrasesOf(tree, faults) : undefined;
  });
  return { phrases: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for files of phrases. */
export function phrasesSchema(): object {
  return editorSchema(phrasesDefinition, 'Proofreel phrases');
}

function phrasesOf(file: MapNode, faults: Faults): Phrases {
  const wordMap = mapOf(file, 'words');
  const nine = (key: string) => {
    const list = textsOf(wordMap, key);
    if (list.length !== 9) {
      const span = valueOf(wordMap, key)?.span ?? wordMap.span;
      faults.error(
        'out-of-range',
        span,
        `${list.length} words stand here; ${quoted(key)} takes nine, for the digits from 1 on`,
      );
    }
    return list.map((node) => node.text);
  };
  const joint = (key: string) => textOf(wordMap, key)?.text ?? '';
  return {
    language: textOf(file, 'language')?.text ?? '',
    words: {
      digit: nine('digit'),
      'a-digit': nine('a-digit'),
      digits: nine('digits'),
      numbers: textsOf(wordMap, 'numbers').map((node) => node.text),
      comma: joint('comma'),
      and: joint('and'),
      or: joint('or'),
      link: joint('link'),
    },
    names: namesOf(mapOf(file, 'names'), faults),
    parts: oneEach(mapOf(file, 'parts'), parts, faults),
    titles: oneEach(mapOf(file, 'titles'), titles, faults),
    sentences: severalEach(mapOf(file, 'sentences'), sentences, faults),
  };
}

function oneEach<Key extends string>(
  map: MapNode,
  sayings: Readonly<Record<Key, Saying>>,
  faults: Faults,
): Readonly<Record<Key, string>> {
  return mapValues(severalEach(map, sayings, faults), (phrases) => phrases[0] ?? '');
}

function severalEach<Key extends string>(
  map: MapNode,
  sayings: Readonly<Record<Key, Saying>>,
  faults: Faults,
): Readonly<Record<Key, readonly string[]>> {
  const read = mapValues(sayings, (saying, key) => {
    const nodes = textsOf(map, key);
    for (const node of nodes) checkSlots(node, saying, faults);
    return nodes.map((node) => node.text);
  });
  return read;
}

/** Every slot of the phrase must be one that is filled in there. */
function checkSlots(node: TextNode, { slots }: Saying, faults: Faults): void {
  for (const match of node.text.matchAll(/\{([^{}]*)\}?|\}/g)) {
    const slot = match[1];
    if (slot !== undefined && match[0].endsWith('}') && slots.includes(slot)) continue;
    const span = spanIn(node, match.index, match.index + match[0].length);
    const [near] = slot === undefined ? [] : nearestWords(slot, slots);
    const known =
      slots.length === 0
        ? 'this phrase has no slots'
        : `its slots are ${listed(
            slots.map((each) => `{${each}}`),
            'and',
          )}`;
    faults.error(
      'unknown-word',
      span,
      `${quoted(match[0])} is no slot here; ${near === undefined ? known : `did you mean {${near}}?`}`,
    );
  }
}

function namesOf(map: MapNode, faults: Faults): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { key, value } of map.entries) {
    const canonical = canonicalName(key.text);
    if (canonical === undefined) {
      const near = nearestNames(key.text);
      const mend = near.length === 0 ? '' : `; did you mean ${listed(near, 'or')}?`;
      faults.error('unknown-name', key.span, `no argument is called ${quoted(key.text)}${mend}`);
    } else if (value.kind === 'text') names.set(canonical, value.text);
  }
  return names;
}

function mapOf(map: MapNode, key: string): MapNode {
  const value = valueOf(map, key);
  return value?.kind === 'map' ? value : { kind: 'map', entries: [], span: map.span, braces: false };
}

function textsOf(map: MapNode, key: string): readonly TextNode[] {
  const value = valueOf(map, key);
  if (value?.kind === 'text') return [value];
  return value?.kind === 'list' ? value.items.flatMap((item) => (item.kind === 'text' ? [item] : [])) : [];
}

function mapValues<Key extends string, From, To>(
  record: Readonly<Record<Key, From>>,
  change: (value: From, key: Key) => To,
): Readonly<Record<Key, To>> {
  const entries = Object.entries(record) as [Key, From][];
  return Object.fromEntries(entries.map(([key, value]) => [key, change(value, key)])) as Record<Key, To>;
}
