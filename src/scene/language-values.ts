/**
 * The kinds of value that keys of the language take. All are read as texts first: their meaning is read afterwards, by
 * the reader that the definition carries. The descriptions are what an editor shows while a scene is typed.
 */
import type { ChoiceDefinition, Opens, ReadText, TextDefinition } from './definition.ts';
import type { TextNode, Tree } from './yaml-tree.ts';

/**
 * What a text means; undefined after a report. `named` is what a message calls the value (`"rate"`), `needs` what
 * reading it requires, such as the grid.
 */
export type TextReader<Value, Needs> = (node: TextNode, needs: Needs, named: string) => Value | undefined;

/** A definition of a text that means a `Value`. */
export type TextOf<Value, Needs = void> = TextDefinition & Opens<ReadText<Value, Needs>>;

/** A definition of one of some words, which mean values. */
export type ChoiceOf<Value> = ChoiceDefinition & Opens<ReadText<Value, void>>;

/** Words for viewers; without a reader, as written. */
export function sentence(description: string): TextOf<string>;
export function sentence<Value, Needs>(description: string, read: TextReader<Value, Needs>): TextOf<Value, Needs>;
export function sentence(description: string, read: TextReader<unknown, never> = asWritten): TextOf<unknown, never> {
  return text({ description, isSentence: true, guesses: ['number', 'boolean'], leastLength: 1 }, read);
}

/** A name, or the name of a file. */
export function name(description: string): TextOf<string> {
  return text({ description, guesses: ['number', 'boolean'], leastLength: 1 }, asWritten);
}

/** Cells, candidates, sets, conclusions or chains in the usual notation; without a reader, as written. */
export function notation(description: string, examples: readonly string[]): TextOf<string>;
export function notation<Value, Needs>(
  description: string,
  examples: readonly string[],
  read: TextReader<Value, Needs>,
): TextOf<Value, Needs>;
export function notation(
  description: string,
  examples: readonly string[],
  read: TextReader<unknown, never> = asWritten,
): TextOf<unknown, never> {
  return measured(description, examples, read);
}

/** A time, a number, a size: a text of a fixed form; without a reader, as written. */
export function measure(description: string, examples: readonly string[]): TextOf<string>;
export function measure<Value, Needs>(
  description: string,
  examples: readonly string[],
  read: TextReader<Value, Needs>,
): TextOf<Value, Needs>;
export function measure(
  description: string,
  examples: readonly string[],
  read: TextReader<unknown, never> = asWritten,
): TextOf<unknown, never> {
  return measured(description, examples, read);
}

function measured(
  description: string,
  examples: readonly string[],
  read: TextReader<unknown, never>,
): TextOf<unknown, never> {
  return text({ description, editor: { examples: [...examples] }, guesses: ['number'], leastLength: 1 }, read);
}

/** A text of any other kind. */
export function text<Value, Needs>(
  definition: Omit<TextDefinition, 'kind'>,
  read: TextReader<Value, Needs>,
): TextOf<Value, Needs> {
  return { ...definition, kind: 'text', open: (node, named) => opened(node, named, read) };
}

/** One of some words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
  refused: Readonly<Record<string, string>> = {},
): ChoiceOf<Words[number]> {
  return chosen(words, description, (word) => word, refused);
}

/** `true` or `false`. */
export function yesOrNo(description: string): ChoiceOf<boolean> {
  return chosen(['true', 'false'], description, (word) => word === 'true');
}

/** `on` or `off`. */
export function onOrOff(description: string): ChoiceOf<boolean> {
  return chosen(['on', 'off'], description, (word) => word === 'on');
}

function chosen<const Words extends readonly string[], Value>(
  words: Words,
  description: string,
  meaning: (word: Words[number]) => Value,
  refused: Readonly<Record<string, string>> = {},
): ChoiceOf<Value> {
  const read = (node: TextNode): Value | undefined => {
    const known: Words[number] | undefined = words.find((word) => word === node.text);
    return known === undefined ? undefined : meaning(known);
  };
  return { kind: 'choice', words, description, refused, open: (node, named) => opened(node, named, read) };
}

function asWritten(node: TextNode): string {
  return node.text;
}

function opened<Value, Needs>(
  node: Tree,
  named: string,
  read: TextReader<Value, Needs>,
): ReadText<Value, Needs> | undefined {
  if (node.kind !== 'text') return undefined;
  return { kind: 'text', text: node.text, span: node.span, node, read: (needs) => read(node, needs, named) };
}
