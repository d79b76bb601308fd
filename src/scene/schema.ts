/**
 * The JSON Schema of the language, for editors that complete and check a scene while it is typed. Generated from the
 * definition that the reader works with.
 */
import { z } from 'zod';
import type { BeatDefinition } from './beats.ts';
import type { Definition } from './definition.ts';
import { zodOf } from './definition-schema.ts';
import { sceneDefinition } from './language.ts';

/** A schema of JSON Schema draft 2020-12 for scene files whose steps show these beats. */
export function sceneSchemaWith(beat: BeatDefinition): object {
  return editorSchema(sceneDefinition(beat), 'A proofreel scene');
}

/** A definition as a JSON Schema that allows for YAML's guesses: `rate: 25` is a number to an editor, a text to us. */
export function editorSchema(definition: Definition, title: string): object {
  const schema = z.toJSONSchema(zodOf(definition), {
    io: 'input',
    target: 'draft-2020-12',
    override: ({ jsonSchema }) => {
      const guesses = jsonSchema.guesses;
      if (Array.isArray(guesses)) Object.assign(jsonSchema, { type: ['string', ...guesses] });
      if (jsonSchema.enum !== undefined) {
        delete jsonSchema.type;
        jsonSchema.enum = jsonSchema.enum.flatMap((word) => [word, ...guessOf(word)]);
      }
      delete jsonSchema.guesses;
    },
  });
  return { ...schema, title };
}

/** The value that YAML guesses for a word that is only text to the language. */
function guessOf(word: unknown): readonly (number | boolean)[] {
  if (word === 'true' || word === 'false') return [word === 'true'];
  return typeof word === 'string' && /^\d+$/.test(word) ? [Number(word)] : [];
}
