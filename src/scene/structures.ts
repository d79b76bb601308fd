/**
 * The definitions that contain others: maps, lists, and one of several.
 */
import {
  type Definition,
  type EitherDefinition,
  type EntriesDefinition,
  type ListDefinition,
  type MapDefinition,
  type MarkedDefinition,
  type Opens,
  ownKeys,
  type ReadEntries,
  type ReadList,
  type ReadMap,
  type ReadMarked,
  type ReadOf,
  takes,
} from './definition.ts';
import { quoted } from './faults.ts';
import { keyOf, type MapNode, valueOf } from './yaml-tree.ts';

/** A definition of which something can be read. */
export type Opening = Definition & Opens<unknown>;
export type OpeningShape = Readonly<Record<string, Opening>>;

/** A map with these keys and no others; `title` is what a message calls it ("a step"). */
export function keys<S extends OpeningShape>(
  title: string,
  description: string,
  shape: S,
): MapDefinition & { readonly shape: S } & Opens<ReadMap<S>> {
  return {
    kind: 'map',
    title,
    description,
    shape,
    open: (node) => (node.kind === 'map' ? openMap(shape, node) : undefined),
  };
}

/** The same for a key that may be left out. */
export function optional<D extends Definition>(definition: D): D & { readonly isOptional: true } {
  return { ...definition, isOptional: true };
}

/** A list of one item or more. */
export function listOf<Item extends Opening>(
  item: Item,
  description?: string,
): ListDefinition & Opens<ReadList<ReadOf<Item>>> {
  return listing(item, false, description);
}

/** A list that may be empty. */
export function anyListOf<Item extends Opening>(
  item: Item,
  description?: string,
): ListDefinition & Opens<ReadList<ReadOf<Item>>> {
  return listing(item, true, description);
}

function listing<Item extends Opening>(
  item: Item,
  mayBeEmpty: boolean,
  description: string | undefined,
): ListDefinition & Opens<ReadList<ReadOf<Item>>> {
  return {
    kind: 'list',
    item,
    mayBeEmpty,
    description,
    open(node, named) {
      if (node.kind !== 'list') return undefined;
      const items = node.items.map((each) => openAs(item, each, `an item of ${named}`));
      return { kind: 'list', span: node.span, items };
    },
  };
}

/** A map whose keys are names of the user's own, in the order of the file. */
export function entriesOf<Value extends Opening>(
  value: Value,
  description: string,
): EntriesDefinition & Opens<ReadEntries<ReadOf<Value>>> {
  return {
    kind: 'entries',
    value,
    description,
    open(node) {
      if (node.kind !== 'map') return undefined;
      const entries = node.entries.map((entry) => ({
        key: entry.key,
        value: openAs(value, entry.value, quoted(entry.key.text)),
      }));
      return { kind: 'entries', span: node.span, entries };
    },
  };
}

/** One of several kinds of value; at most one option is a text, one a list and one a map. */
export function either<Options extends readonly [Opening, ...Opening[]]>(
  options: Options,
  description?: string,
): EitherDefinition & Opens<ReadOf<Options[number]>> {
  return {
    kind: 'either',
    options,
    description,
    open(node, named) {
      const option: Options[number] | undefined = options.find((each) => takes(each, node));
      return option === undefined ? undefined : openAs(option, node, named);
    },
  };
}

/** What may be written on its own or as a list, as a list. */
export function eachOf<Item extends { readonly kind: string }>(
  written: Item | ReadList<Item> | undefined,
): readonly (Item | undefined)[] {
  if (written === undefined) return [];
  return isList(written) ? written.items : [written];
}

function isList<Item extends { readonly kind: string }>(written: Item | ReadList<Item>): written is ReadList<Item> {
  return written.kind === 'list';
}

interface MarkedWords<Mark extends string> {
  /** What a message calls any of the maps: `a beat`. */
  readonly title: string;
  /** What a message calls the map of a mark, if that is more than the title. */
  readonly titleOf?: (mark: Mark) => string;
  readonly descriptionOf: (mark: Mark) => string;
  /** Of all the maps together. */
  readonly description?: string;
}

/**
 * One of several maps. `shapes` has the keys of each by mark, and the required ones tell which it is; `common` has the
 * keys that each of them may have in addition to its own.
 */
export function marked<Shapes extends Readonly<Record<string, OpeningShape>>, Common extends OpeningShape>(
  shapes: Shapes,
  common: Common,
  { title, titleOf, descriptionOf, description }: MarkedWords<keyof Shapes & string>,
): MarkedDefinition & Opens<ReadMarked<Shapes, Common>> {
  const marks = namesIn(shapes);
  const maps: Record<string, MapDefinition> = {};
  for (const mark of marks) {
    maps[mark] = keys(titleOf?.(mark) ?? title, descriptionOf(mark), { ...shapes[mark], ...common });
  }
  return {
    kind: 'marked',
    title,
    isTitled: description !== undefined,
    maps,
    description,
    open(node) {
      if (node.kind !== 'map') return undefined;
      const isNamed = (key: string) => marks.find((mark) => ownKeys(maps[mark]!).includes(key));
      const mark = node.entries.map(({ key }) => isNamed(key.text)).find((each) => each !== undefined);
      const either = { kind: 'marked', span: node.span, common: openMap(common, node) } as const;
      if (mark === undefined) return { ...either, mark, own: undefined };
      // That the keys are those of the mark goes beyond what the compiler can follow.
      return { ...either, mark, own: openMap(shapes[mark]!, node) } as ReadMarked<Shapes, Common>;
    },
  };
}

/** The definitions of a map whose keys come from a table, made from each of its entries by key. */
export function byKey<Key extends string, Entry, Made>(
  record: Readonly<Record<Key, Entry>>,
  make: (entry: Entry, key: Key) => Made,
): Readonly<Record<Key, Made>> {
  const made: Partial<Record<Key, Made>> = {};
  for (const key of namesIn(record)) made[key] = make(record[key], key);
  return made as Record<Key, Made>;
}

/** The keys of a record that has no others than its type says. */
export function namesIn<T extends object>(record: T): readonly (keyof T & string)[] {
  return Object.keys(record) as (keyof T & string)[];
}

/** What the definition of each key makes of its value. */
function openMap<S extends OpeningShape>(shape: S, node: MapNode): ReadMap<S> {
  const values: Record<string, unknown> = {};
  const found: Record<string, unknown> = {};
  const misfits = new Set<keyof S>();
  for (const key of namesIn(shape)) {
    const value = valueOf(node, key);
    values[key] = value === undefined ? undefined : shape[key]!.open(value, quoted(key));
    found[key] = keyOf(node, key);
    if (value !== undefined && !takes(shape[key]!, value)) misfits.add(key);
  }
  // A loop over keys cannot tell the compiler that each value is that of its key.
  const [typedValues, typedKeys] = [values as ReadMap<S>['values'], found as ReadMap<S>['keys']];
  return { kind: 'map', span: node.span, node, values: typedValues, keys: typedKeys, misfits };
}

/** What the definition makes of a value, typed by the definition. */
function openAs<D extends Opening>(
  definition: D,
  node: Parameters<D['open']>[0],
  named: string,
): ReadOf<D> | undefined {
  return definition.open(node, named) as ReadOf<D> | undefined;
}
