/**
 * The kinds of value that keys of the language take. All are texts at the gate: what they mean is read behind it.
 * The descriptions are what an editor shows while a scene is typed.
 */
import { z } from 'zod';

/** What the definition of a value says beside its kind; taken out again of the JSON Schema. */
export interface ValueNotes {
  readonly description?: string | undefined;
  /** Kinds that YAML's own guess may make of such a text: an editor's check must let them pass. */
  readonly guesses?: readonly ('number' | 'boolean')[];
  /** Words for a person: a comment after it can only be a part that YAML cut off. */
  readonly sentence?: boolean;
  /** Words that one might well write, with the reason why they are not taken. */
  readonly refused?: Readonly<Record<string, string>>;
}

/** What was noted of a definition. */
export function notesOf(schema: z.ZodType): ValueNotes {
  const notes = schema.meta() ?? {};
  return {
    description: notes.description,
    sentence: notes.sentence === true,
    ...(isReasons(notes.refused) ? { refused: notes.refused } : {}),
  };
}

/** Words for viewers. */
export function sentence(description: string) {
  return z
    .string()
    .min(1)
    .meta({ description, sentence: true, guesses: ['number', 'boolean'] });
}

/** A name, or the name of a file. */
export function name(description: string) {
  return z
    .string()
    .min(1)
    .meta({ description, guesses: ['number', 'boolean'] });
}

/** Cells, candidates, sets, conclusions or chains in the notation of the trade. */
export function notation(description: string, examples: readonly string[]) {
  return z
    .string()
    .min(1)
    .meta({ description, examples: [...examples], guesses: ['number'] });
}

/** A time, a number, a size: a text of a fixed form. */
export function measure(description: string, examples: readonly string[]) {
  return z
    .string()
    .min(1)
    .meta({ description, examples: [...examples], guesses: ['number'] });
}

/** One of some words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
  refused: Readonly<Record<string, string>> = {},
) {
  return z.enum(words).meta({ description, refused });
}

/** A list of one item or more. */
export function listOf<Item extends z.ZodType>(item: Item) {
  return z.array(item).min(1);
}

/** `true` or `false`. */
export function yesOrNo(description: string) {
  return choice(['true', 'false'], description);
}

/** A map with these keys and no others; `title` is what a message calls it ("a step"). */
export function keys<Shape extends z.core.$ZodLooseShape>(title: string, description: string, shape: Shape) {
  return z.strictObject(shape).meta({ title, description });
}

function isReasons(value: unknown): value is Readonly<Record<string, string>> {
  return typeof value === 'object' && value !== null;
}
