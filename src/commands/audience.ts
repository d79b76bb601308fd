/**
 * What an audience knows: the names that a plan may use, from `--know` and `--without`.
 */

import { restricted } from '../plan/teaching.ts';
import { canonicalName, familyNamed, nearestNames } from '../scene/argument-names.ts';
import { nearestWords } from '../scene/nearest-word.ts';
import { type ArgumentName, allTechniques, namesInFamily, techniqueNamed } from '../techniques/all-techniques.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import { families } from '../techniques/technique.ts';
import { UsageError } from '../verbs/usage-error.ts';

export interface Audience {
  /** Names, families, `upto:NAME`, separated by commas: what the audience knows, in addition to free arguments. */
  readonly know: string | undefined;
  /** Names and families that are left out. */
  readonly without: string | undefined;
}

/** The table without what the audience does not know. @throws UsageError for an unknown name. */
export function costsFor(costs: TeachingCosts, { know, without }: Audience): TeachingCosts {
  const known =
    know === undefined ? undefined : new Set(itemsOf(know, '--know', (item) => namesOf(item, '--know', costs)));
  const barred = new Set(
    without === undefined ? [] : itemsOf(without, '--without', (item) => namesOf(item, '--without', costs)),
  );
  const isKnown = (name: ArgumentName) => known === undefined || known.has(name) || costs.free.includes(name);
  const left = restricted(costs, (name) => isKnown(name) && !barred.has(name));
  if (left.free.length === 0 && left.names.length === 0)
    throw new UsageError('--know and --without leave no argument at all');
  return left;
}

function itemsOf(text: string, option: string, namesFor: (item: string) => readonly ArgumentName[]): ArgumentName[] {
  const items = text
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '');
  if (items.length === 0) throw new UsageError(`${option} is empty; name arguments, such as ${option} x-wing,xy-chain`);
  return items.flatMap(namesFor);
}

function namesOf(item: string, option: string, costs: TeachingCosts): readonly ArgumentName[] {
  const upTo = /^up-?to:(.*)$/i.exec(item)?.[1];
  if (upTo !== undefined) {
    if (option !== '--know') throw new UsageError(`${item} goes with --know, not with ${option}`);
    const last = nameOf(upTo, option);
    const at = costs.names.findIndex(({ name }) => name === last);
    if (at < 0)
      throw new UsageError(
        `--know ${item}: the table of costs has no line for ${last}; its last is ${costs.names.at(-1)?.name ?? 'none'}`,
      );
    return costs.names.slice(0, at + 1).map(({ name }) => name);
  }
  const family = familyNamed(item);
  return family === undefined ? [taughtName(item, option, costs)] : namesInFamily(family);
}

/**
 * A name under which something is taught: a name that only covers others, and is taught under theirs, would have no
 * effect.
 */
function taughtName(item: string, option: string, costs: TeachingCosts): ArgumentName {
  const name = nameOf(item, option);
  const hasLine = costs.free.includes(name) || costs.names.some((each) => each.name === name);
  if (hasLine || techniqueNamed(name).teaching !== 'under other names') return name;
  const kinds = allTechniques.filter(({ kindOf }) => kindOf.includes(name)).map((each) => each.name);
  const instead = kinds.length === 0 ? '' : `; name its kinds: ${kinds.join(', ')}`;
  throw new UsageError(`${option} ${name}: the table of costs has no line for it${instead}`);
}

function nameOf(text: string, option: string): ArgumentName {
  const name = canonicalName(text);
  if (name !== undefined) return name;
  const near = [...nearestNames(text), ...nearestWords(text, [...families])];
  const hint = near.length === 0 ? `; families are ${families.join(', ')}` : `; did you mean ${near[0]}?`;
  throw new UsageError(`${option}: no argument and no family is called "${text.trim()}"${hint}`);
}
