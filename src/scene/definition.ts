/**
 * Questions to the definition of the language, for whoever walks through it.
 */
import { z } from 'zod';
import { Bug } from '../grid/bug.ts';
import { listed } from './faults.ts';
import type { Tree } from './yaml-tree.ts';

/** By key: what the maps that have it are called ("the video", "a step"). */
export type Homes = ReadonlyMap<string, readonly string[]>;

/** The keys that a map must have: those tell it from the other maps that may stand in its place. */
export function ownKeys(map: z.ZodObject): readonly string[] {
  return Object.keys(map.shape).filter((key) => !(map.shape[key] instanceof z.ZodOptional));
}

/** Whether the value is of the kind that the definition asks for: text, list or map. */
export function takes(option: z.ZodType, node: Tree): boolean {
  if (option instanceof z.ZodUnion) return optionsOf(option).some((each) => takes(each, node));
  if (option instanceof z.ZodObject || option instanceof z.ZodRecord) return node.kind === 'map';
  return option instanceof z.ZodArray ? node.kind === 'list' : node.kind === 'text';
}

/** Where each key of the definition belongs, for keys that stand in a wrong place. */
export function homesOf(definition: z.ZodType): Homes {
  const homes = new Map<string, string[]>();
  visit(definition);
  return homes;
  function visit(each: z.ZodType): void {
    const schema = withoutOptional(each);
    if (schema instanceof z.ZodUnion) for (const option of optionsOf(schema)) visit(option);
    if (schema instanceof z.ZodArray) visit(typed(schema.element));
    if (!(schema instanceof z.ZodObject)) return;
    const title = schema.meta()?.title ?? '';
    for (const [key, value] of Object.entries(schema.shape)) {
      const known = homes.get(key) ?? [];
      if (!known.includes(title)) homes.set(key, [...known, title]);
      visit(typed(value));
    }
  }
}

/** What may be left out, as it is where it is there. */
export function withoutOptional(schema: z.ZodType): z.ZodType {
  return schema instanceof z.ZodOptional ? typed(schema.unwrap()) : schema;
}

/** What may stand here, one of several. */
export function optionsOf(union: z.ZodUnion): readonly z.ZodType[] {
  return union.options.map(typed);
}

/** A part of a definition, which the library types loosely. */
export function typed(schema: unknown): z.ZodType {
  if (schema instanceof z.ZodType) return schema;
  throw new Bug('the definition of the language holds something that is no definition');
}

/** What is due here, for a message: `a text`, `a list`, `true or false`. */
export function wanted(schema: z.ZodType): string {
  if (schema instanceof z.ZodUnion) return listed([...new Set(optionsOf(schema).map(wanted))]);
  if (schema instanceof z.ZodArray) return 'a list';
  if (schema instanceof z.ZodEnum) return listed(schema.options.map(String));
  if (schema instanceof z.ZodString) return 'a text';
  return 'a map of keys';
}
