/**
 * The names as the pages of scenes/names/ order them: by heading, with what each is a kind of, all as the techniques'
 * records say.
 */
import {
  type ArgumentName,
  argumentNames,
  isArgumentName,
  namesBySpeciality,
  techniqueNamed,
} from '../../src/techniques/all-techniques.ts';
import { inTeachingOrder } from '../../src/techniques/teaching.ts';
import { pageHeadings } from '../../src/techniques/technique.ts';

export interface Family {
  readonly title: string;
  readonly names: readonly ArgumentName[];
}

const taught = inTeachingOrder.map(({ technique }) => technique.name);

/** As they are taught; then those that are taught under other names. */
const asListed: readonly ArgumentName[] = [...taught, ...argumentNames.filter((name) => !taught.includes(name))];

/** All headings, in the order in which they are usually taught; under each heading what is taught first comes first. */
export const families: readonly Family[] = pageHeadings.map((title) => ({
  title,
  names: asListed.filter((name) => techniqueNamed(name).page.under === title),
}));

/** What the name is a kind of, the nearest alone. */
export function moreGeneral(name: ArgumentName): readonly ArgumentName[] {
  return techniqueNamed(name).kindOf;
}

/** The kinds of it, the nearest alone. */
export function moreSpecial(name: ArgumentName): readonly ArgumentName[] {
  return namesBySpeciality.filter((other) => moreGeneral(other).includes(name));
}

/** All its kinds, near and far. */
export function allMoreSpecial(name: ArgumentName): readonly ArgumentName[] {
  return [...new Set(moreSpecial(name).flatMap((kind) => [kind, ...allMoreSpecial(kind)]))];
}

/** Whether another name that fits the name's example may be more special: one under another heading, or a kind of it. */
export function mayStandBefore(name: ArgumentName, other: ArgumentName): boolean {
  const { page } = techniqueNamed(name);
  if (page.under !== techniqueNamed(other).page.under) return true;
  return allMoreSpecial(name).includes(other) || (page.seenAs ?? []).includes(other);
}

/** The names of a report, which come as texts. @throws for one that is none. */
export function asNames(texts: readonly string[]): readonly ArgumentName[] {
  const strange = texts.filter((text) => !isArgumentName(text));
  if (strange.length > 0) throw new Error(`a report names ${strange.join(', ')}`);
  return texts.filter(isArgumentName);
}

/** The name of its files: `BUG+1` is `bug-plus-1`. */
export function slugOf(name: ArgumentName): string {
  return name
    .toLowerCase()
    .replace('+', '-plus-')
    .replace(/[^a-z0-9]+/g, '-');
}
