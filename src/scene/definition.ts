/**
 * What one of our files may contain, as data: one definition says which values exist, and from it come the JSON Schema
 * (`definition-schema.ts`), the faults of shape (`shape.ts`) and the typed values that a reader works with. A key is
 * therefore named in one place: a reader that asks for another does not compile.
 *
 * Definitions are built by the functions of `structures.ts` and `language-values.ts`.
 */
import type { Span } from './diagnostic.ts';
import type { MapNode, TextNode, Tree } from './yaml-tree.ts';

export type Definition =
  | TextDefinition
  | ChoiceDefinition
  | ListDefinition
  | MapDefinition
  | EntriesDefinition
  | EitherDefinition
  | MarkedDefinition;

interface Described {
  /** What an editor shows while the value is typed. */
  readonly description?: string | undefined;
  /** The key may be left out. */
  readonly isOptional?: true;
}

/** A text, whose meaning is read behind the gate. */
export interface TextDefinition extends Described {
  readonly kind: 'text';
  /** Words for a person: a comment after them can only be a part that YAML cut off. */
  readonly isSentence?: true;
  /** Kinds that YAML may guess for such a text: an editor's check must accept them. */
  readonly guesses?: readonly ('number' | 'boolean')[];
  /** Texts that an editor suggests; others are allowed, as `besides` says. */
  readonly suggestions?: { readonly words: readonly string[]; readonly besides: string };
  /** What an editor's check adds: examples, a pattern, a least length, a range. */
  readonly editor?: Readonly<Record<string, unknown>>;
  readonly leastLength?: number;
}

/** One of some words. */
export interface ChoiceDefinition extends Described {
  readonly kind: 'choice';
  readonly words: readonly string[];
  /** Words that one might well write, with the reason why they are not accepted. */
  readonly refused?: Readonly<Record<string, string>>;
}

export interface ListDefinition extends Described {
  readonly kind: 'list';
  readonly item: Definition;
  readonly mayBeEmpty: boolean;
}

/** A map with these keys and no others. */
export interface MapDefinition extends Described {
  readonly kind: 'map';
  /** What a message calls the map: `a step`. */
  readonly title: string;
  readonly shape: Shape;
}

export type Shape = Readonly<Record<string, Definition>>;

/** A map whose keys are names of the user's own. */
export interface EntriesDefinition extends Described {
  readonly kind: 'entries';
  readonly value: Definition;
}

/** One of several kinds of value: at most one text, one list and one map, so that the kind says which is meant. */
export interface EitherDefinition extends Described {
  readonly kind: 'either';
  readonly options: readonly Definition[];
}

/** One of several maps, distinguished by the keys that only one of them has and requires: its marks. */
export interface MarkedDefinition extends Described {
  readonly kind: 'marked';
  /** What a message calls any of them: `a beat`. */
  readonly title: string;
  readonly isTitled: boolean;
  readonly maps: Readonly<Record<string, MapDefinition>>;
}

/**
 * What can be read of a value; `open` returns it, and nothing if the value is of another kind than the definition's.
 */
export interface Opens<Read> {
  /** `named` is what a message calls the value: `"rate"`. No fault is reported: `checkShape` has done so. */
  open(node: Tree, named: string): Read | undefined;
}

/** What a reader gets from a definition: `ReadOf<typeof videoDefinition>`. */
export type ReadOf<D> = D extends Opens<infer Read> ? Read : never;

/** A text of the file, and how to read its meaning. */
export interface ReadText<Value, Needs> {
  readonly kind: 'text';
  readonly text: string;
  readonly span: Span;
  readonly node: TextNode;
  /** What the text means; undefined after a report (for one of some words, a report of `checkShape`). */
  read(needs: Needs): Value | undefined;
}

export interface ReadList<Item> {
  readonly kind: 'list';
  readonly span: Span;
  /** In their order; undefined for one that is of another kind than the definition's. */
  readonly items: readonly (Item | undefined)[];
}

export interface ReadMap<S> {
  readonly kind: 'map';
  readonly span: Span;
  readonly node: MapNode;
  /** By key: what follows it, if anything does, and if it is of the definition's kind. */
  readonly values: { readonly [Key in keyof S]: ReadOf<S[Key]> | undefined };
  /** By key: the key itself, if the map has it. */
  readonly keys: { readonly [Key in keyof S]: TextNode | undefined };
  /** Keys with a value of another kind than the definition's. */
  readonly misfits: ReadonlySet<keyof S>;
}

export interface ReadEntries<Value> {
  readonly kind: 'entries';
  readonly span: Span;
  readonly entries: readonly { readonly key: TextNode; readonly value: Value | undefined }[];
}

/**
 * A map that is one of several: `own` has the keys that only this one has, `common` those of all. If it contains no
 * mark (which `checkShape` has reported), the common ones can still be read.
 */
export type ReadMarked<Shapes, Common> =
  | {
      readonly [Mark in keyof Shapes]: {
        readonly kind: 'marked';
        readonly span: Span;
        readonly mark: Mark;
        readonly own: ReadMap<Shapes[Mark]>;
        readonly common: ReadMap<Common>;
      };
    }[keyof Shapes]
  | {
      readonly kind: 'marked';
      readonly span: Span;
      readonly mark: undefined;
      readonly own: undefined;
      readonly common: ReadMap<Common>;
    };

/** The required keys of a map: they distinguish it from the other maps allowed there. */
export function ownKeys(map: MapDefinition): readonly string[] {
  return Object.keys(map.shape).filter((key) => map.shape[key]!.isOptional !== true);
}

/** The definition of a key, if the map has it. */
export function definitionOf(map: MapDefinition, key: string): Definition | undefined {
  return Object.hasOwn(map.shape, key) ? map.shape[key] : undefined;
}

/** Whether the value is of the kind that the definition asks for: text, list or map. */
export function takes(definition: Definition, node: Tree): boolean {
  switch (definition.kind) {
    case 'text':
    case 'choice':
      return node.kind === 'text';
    case 'list':
      return node.kind === 'list';
    case 'map':
    case 'entries':
    case 'marked':
      return node.kind === 'map';
    case 'either':
      return definition.options.some((option) => takes(option, node));
    default:
      return definition satisfies never;
  }
}
