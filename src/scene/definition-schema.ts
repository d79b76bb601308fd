/**
 * A definition as a zod schema, which prints it as a JSON Schema and can check a value against it.
 */
import { z } from 'zod';
import type { Definition, MapDefinition, TextDefinition } from './definition.ts';

/** The schema of a value that the definition allows; all scalars are strings. */
export function zodOf(definition: Definition): z.ZodType {
  const { description } = definition;
  const described = description === undefined ? {} : { description };
  switch (definition.kind) {
    case 'text':
      return ofText(definition);
    case 'choice':
      return z.enum(definition.words).meta(described);
    case 'list': {
      const list = z.array(zodOf(definition.item));
      return (definition.mayBeEmpty ? list : list.min(1)).meta(described);
    }
    case 'map':
      return ofMap(definition);
    case 'entries':
      return z.record(z.string(), zodOf(definition.value)).meta(described);
    case 'either':
      return z.union(definition.options.map(zodOf)).meta(described);
    case 'marked':
      return z
        .union(Object.values(definition.maps).map(ofMap))
        .meta(definition.isTitled ? { title: definition.title, ...described } : described);
    default:
      return definition satisfies never;
  }
}

function ofText({ description, guesses, suggestions, editor, leastLength }: TextDefinition): z.ZodType {
  const plain = leastLength === undefined ? z.string() : z.string().min(leastLength);
  if (suggestions !== undefined) {
    const { words, besides } = suggestions;
    return z.union([z.enum(words), plain.meta({ description: besides })]).meta({ description });
  }
  return plain.meta({ description, ...editor, ...(guesses === undefined ? {} : { guesses }) });
}

function ofMap({ title, description, shape }: MapDefinition): z.ZodType {
  const schemas = Object.entries(shape).map(([key, value]): [string, z.ZodType] => {
    const schema = zodOf(value);
    return [key, value.isOptional === true ? schema.optional() : schema];
  });
  return z.strictObject(Object.fromEntries(schemas)).meta({ title, description });
}
