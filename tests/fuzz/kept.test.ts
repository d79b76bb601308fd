/** Cases that once failed, as small as they could be made. Their names begin with the kind. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { failureOf } from './fuzz.ts';
import { type KindName, kinds } from './kinds.ts';

const folder = new URL('kept/', import.meta.url);
const isKind = (name: string): name is KindName => Object.hasOwn(kinds, name);

it.each(readdirSync(folder))('%s', async (name) => {
  const [kind = ''] = name.split('-');
  if (!isKind(kind)) throw new Error(`${kind} is not a kind`);
  expect(await failureOf({ kind, text: readFileSync(new URL(name, folder), 'utf8') })).toBeUndefined();
});
