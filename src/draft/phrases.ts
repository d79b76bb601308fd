/**
 * A file of phrases: the words of drafts in one language. Further languages are added as files, not as code.
 */
import { entriesByName } from '../scene/argument-entries.ts';
import type { ReadEntries, ReadList, ReadOf, ReadText } from '../scene/definition.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { type Faults, listed, quoted } from '../scene/faults.ts';
import { choice, name, sentence } from '../scene/language-values.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { editorSchema } from '../scene/schema.ts';
import { readShape } from '../scene/shape.ts';
import { byKey, either, entriesOf, keys, listOf } from '../scene/structures.ts';
import { readYamlFile } from '../scene/yaml-file.ts';
import { spanIn, type TextNode } from '../scene/yaml-tree.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { type PartKey, parts, type Saying, type SentenceKey, sentences, type TitleKey, titles } from './sayings.ts';

export interface Phrases {
  /** As BCP 47 has it: `en`, `de`. */
  readonly language: string;
  readonly words: Words;
  /** What arguments are called, by canonical name; if missing, that name is used. */
  readonly names: ReadonlyMap<ArgumentName, string>;
  readonly parts: Readonly<Record<PartKey, string>>;
  readonly titles: Readonly<Record<TitleKey, string>>;
  /** One or more of each, used in turn. */
  readonly sentences: Readonly<Record<SentenceKey, readonly string[]>>;
}

export interface Words {
  /** By digit from 1, at index 0: `seven`, `a seven`, `sevens`. */
  readonly digit: readonly string[];
  readonly 'a-digit': readonly string[];
  readonly digits: readonly string[];
  /** From zero on. */
  readonly numbers: readonly string[];
  /** The separators between the items of a list, before its last one, and between the links of a chain. */
  readonly comma: string;
  readonly and: string;
  readonly or: string;
  readonly link: string;
}

const slotted = ({ means, slots }: Saying) =>
  slots.length === 0 ? means : `${means} Slots: ${slots.map((slot) => `{${slot}}`).join(', ')}.`;
const phraseOf = (saying: Saying) =>
  sentence(slotted(saying), (node, { faults }: { readonly faults: Faults }) => {
    checkSlots(node, saying, faults);
    return node.text;
  });
const turnsOf = (saying: Saying) => either([phraseOf(saying), listOf(phraseOf(saying))]);
const words = (description: string) => listOf(name(description), description);

const wordsDefinition = keys('the words', 'Digits, numbers, and what joins lists.', {
  digit: words('The nine digits: seven.'),
  'a-digit': words('The nine digits with an article: a seven.'),
  digits: words('The nine digits in the plural: sevens.'),
  numbers: words('Counts from zero on; larger ones are written in figures.'),
  comma: sentence('Between the items of a list.'),
  and: sentence('Before the last item of a list.'),
  or: sentence('Before the last item of a choice.'),
  link: sentence('Between the links of a chain.'),
});

/** A whole file of phrases. */
export const phrasesDefinition = keys('a file of phrases', 'What a draft says, in one language.', {
  phrases: choice(['1'], 'The version of this format.'),
  language: name('The language, as BCP 47 has it: en, de.'),
  words: wordsDefinition,
  names: entriesOf(
    name('What the argument is called.'),
    'What arguments are called in this language, by the names of the scene language.',
  ),
  parts: keys('the parts', 'Parts of sentences.', byKey(parts, phraseOf)),
  titles: keys('the titles', 'What appears on screen.', byKey(titles, phraseOf)),
  sentences: keys(
    'the sentences',
    'What is said: one sentence, or several that are used in turn.',
    byKey(sentences, turnsOf),
  ),
});

export interface ReadPhrases {
  /** Undefined if there is an error. */
  readonly phrases: Phrases | undefined;
  /** All faults of the file by place. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads a file of phrases; `text` is its content. */
export function readPhrases(text: string): ReadPhrases {
  const beginning = 'a file of phrases begins with `phrases: 1`';
  const { value, diagnostics } = readYamlFile(text, beginning, (tree, faults) => {
    const before = faults.errorCount();
    const file = readShape(phrasesDefinition, tree, faults);
    return file !== undefined && faults.errorCount() === before ? phrasesOf(file, faults) : undefined;
  });
  return { phrases: value, diagnostics };
}

/** A schema of JSON Schema draft 2020-12 for files of phrases. */
export function phrasesSchema(): object {
  return editorSchema(phrasesDefinition, 'Proofreel phrases');
}

function phrasesOf(file: ReadOf<typeof phrasesDefinition>, faults: Faults): Phrases | undefined {
  const { language, words, names, parts, titles, sentences } = file.values;
  if (words === undefined || parts === undefined || titles === undefined || sentences === undefined) return undefined;
  const phrase = (written: ReadText<string, { readonly faults: Faults }> | undefined) =>
    written?.read({ faults }) ?? '';
  return {
    language: language?.text ?? '',
    words: wordsOf(words, faults),
    names: names === undefined ? new Map() : namesOf(names, faults),
    parts: byKey(parts.values, phrase),
    titles: byKey(titles.values, phrase),
    sentences: byKey(sentences.values, (turns) => {
      const phrases = turns?.kind === 'list' ? turns.items : [turns];
      return phrases.flatMap((each) => each?.read({ faults }) ?? []);
    }),
  };
}

function wordsOf(words: ReadOf<typeof wordsDefinition>, faults: Faults): Words {
  const { values } = words;
  const nine = (key: 'digit' | 'a-digit' | 'digits') => {
    const list = textsOf(values[key]);
    if (list.length !== 9) {
      const span = values[key]?.span ?? words.span;
      faults.error(
        'out-of-range',
        span,
        `${list.length} words were found here; ${quoted(key)} takes nine, for the digits from 1 on`,
      );
    }
    return list;
  };
  return {
    digit: nine('digit'),
    'a-digit': nine('a-digit'),
    digits: nine('digits'),
    numbers: textsOf(values.numbers),
    comma: values.comma?.text ?? '',
    and: values.and?.text ?? '',
    or: values.or?.text ?? '',
    link: values.link?.text ?? '',
  };
}

/** Every slot of the phrase must be one that is filled there. */
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
      `${quoted(match[0])} is not a slot here; ${near === undefined ? known : `did you mean {${near}}?`}`,
    );
  }
}

function namesOf({ entries }: ReadEntries<ReadText<string, void>>, faults: Faults): ReadonlyMap<ArgumentName, string> {
  const named = entriesByName(entries, faults);
  return new Map(named.flatMap(({ name, value }) => (value === undefined ? [] : [[name, value.text] as const])));
}

function textsOf(list: ReadList<ReadText<string, void>> | undefined): readonly string[] {
  return (list?.items ?? []).flatMap((item) => item?.text ?? []);
}
