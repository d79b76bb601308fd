/**
 * All verbs, in the order in which help and README list them. The key is the verb's word.
 */
import { alternatives } from './alternatives.ts';
import { captions } from './captions.ts';
import { chapters } from './chapters.ts';
import { check } from './check.ts';
import { draft } from './draft.ts';
import { join } from './join.ts';
import { locate } from './locate.ts';
import { plan } from './plan.ts';
import { puzzle } from './puzzle.ts';
import { render } from './render.ts';
import { retime } from './retime.ts';
import { schema } from './schema.ts';
import { slides } from './slides.ts';
import { still } from './still.ts';

export const verbs = {
  check,
  render,
  join,
  still,
  captions,
  slides,
  chapters,
  retime,
  locate,
  plan,
  alternatives,
  puzzle,
  draft,
  schema,
};

export type VerbName = keyof typeof verbs;

/** In the order of the table. */
export const verbNames: readonly VerbName[] = Object.keys(verbs).filter((word) => isVerb(word));

export function isVerb(word: string): word is VerbName {
  return Object.hasOwn(verbs, word);
}

/** Words of earlier versions, each with what it is now. */
export const renamedVerbs: ReadonlyMap<string, VerbName> = new Map([['ways', 'alternatives']]);
