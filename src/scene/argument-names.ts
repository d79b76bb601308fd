/**
 * How the names of arguments and of their families may be spelt: in any case, with or without hyphens, singular or
 * plural, and by the usual second names. The names themselves are in the techniques' records.
 */
import { type ArgumentName, allTechniques, argumentNames } from '../techniques/all-techniques.ts';
import { type Family, families } from '../techniques/technique.ts';
import { nearestWords } from './nearest-word.ts';

const bySpelling: ReadonlyMap<string, ArgumentName> = new Map([
  ...argumentNames.map((name) => [spelling(name), name] as const),
  ...allTechniques.flatMap(({ name, plural, otherNames }) =>
    [plural, ...otherNames].map((other) => [spelling(other), name] as const),
  ),
]);

/** The canonical spelling of a name: `naked triples` gives `naked triple`, `Y wing` gives `XY-wing`. */
export function canonicalName(text: string): ArgumentName | undefined {
  const spelt = spelling(text);
  const known = bySpelling.get(spelt);
  if (known !== undefined) return known;
  return /^bug\+\d+$/.test(spelt) && spelt !== 'bug+0' ? 'BUG+n' : undefined;
}

/** The number that a name is written with, where it counts something: the 3 of BUG+3. */
export function countInName(text: string): number | undefined {
  const count = /^bug\+(\d+)$/.exec(spelling(text))?.[1];
  return count === undefined ? undefined : Number(count);
}

/** The known names nearest to a misspelt one, nearest first, at most `most`. */
export function nearestNames(text: string, most = 3): readonly ArgumentName[] {
  const near = nearestWords(spelling(text), [...bySpelling.keys()], 2 * most);
  const names = near.flatMap((each) => bySpelling.get(each) ?? []);
  return [...new Set(names)].slice(0, most);
}

/** The family of this name, in any case and with or without hyphens. */
export function familyNamed(text: string): Family | undefined {
  const spelt = text
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return families.find((family) => family === spelt);
}

/** What remains of a spelling without case, hyphens, spaces, plurals and the two spellings of colour. */
export function spelling(text: string): string {
  return text
    .toLowerCase()
    .split(/[^a-z0-9+]+/)
    .map((word) => (word.length > 2 && word !== 'als' ? word.replace(/s$/, '') : word))
    .join('')
    .replace(/color/g, 'colour');
}
