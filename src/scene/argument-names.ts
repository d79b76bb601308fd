/**
 * The names of arguments, by family, and how they may be spelt: in any case, with or without hyphens, singular or
 * plural, and by the usual second names. Names are common practice of the trade and have no source.
 */
import { type ArgumentFamily, argumentFamilies } from './argument-families.ts';
import { nearestWords } from './nearest-word.ts';

/** All names in their canonical spelling, by family. */
export const argumentNames: readonly ArgumentName[] = Object.values(argumentFamilies).flat();

export type ArgumentName = (typeof argumentFamilies)[ArgumentFamily][number];

/** Second names in use, each of exactly one argument. */
const otherNames: Readonly<Record<string, ArgumentName>> = {
  'locked candidate': 'locked candidates',
  'intersection removal': 'locked candidates',
  'claiming pair': 'claiming',
  'claiming triple': 'claiming',
  'pointing triplet': 'pointing triple',
  'naked triplet': 'naked triple',
  'naked quadruple': 'naked quad',
  'naked quadruplet': 'naked quad',
  'hidden triplet': 'hidden triple',
  'hidden quadruple': 'hidden quad',
  'hidden quadruplet': 'hidden quad',
  'locked triplet': 'locked triple',
  'box/line': 'box-line reduction',
  '2-string kite': 'two-string kite',
  'multi-colours': 'multi-colouring',
  'simple colours': 'simple colouring',
  'Y-wing': 'XY-wing',
  'alternating inference chain': 'AIC',
  'grouped alternating inference chain': 'grouped AIC',
  'continuous nice loop': 'continuous loop',
  'discontinuous nice loop': 'discontinuous loop',
  'almost locked set chain': 'ALS chain',
  '3D Medusa': 'three-dimensional Medusa',
  '3-dimensional Medusa': 'three-dimensional Medusa',
  'hidden unique rectangle': 'hidden rectangle',
  APE: 'aligned pair exclusion',
};

const bySpelling: ReadonlyMap<string, ArgumentName> = new Map([
  ...argumentNames.map((each) => [spelling(each), each] as const),
  ...Object.entries(otherNames).map(([other, each]) => [spelling(other), each] as const),
]);

/** The canonical spelling of a name: `naked triples` gives `naked triple`, `Y wing` gives `XY-wing`. */
export function canonicalName(text: string): ArgumentName | undefined {
  const spelt = spelling(text);
  const known = bySpelling.get(spelt);
  if (known !== undefined) return known;
  return /^bug\+\d+$/.test(spelt) && spelt !== 'bug+0' ? 'BUG+n' : undefined;
}

/** The known names nearest to a misspelt one, nearest first, at most `most`. */
export function nearestNames(text: string, most = 3): readonly ArgumentName[] {
  const near = nearestWords(spelling(text), [...bySpelling.keys()], 2 * most);
  const names = near.flatMap((each) => bySpelling.get(each) ?? []);
  return [...new Set(names)].slice(0, most);
}

/** What is left of a spelling when case, hyphens, blanks, plurals and the two ways to spell colour are set aside. */
function spelling(text: string): string {
  return text
    .toLowerCase()
    .split(/[^a-z0-9+]+/)
    .map((word) => (word.length > 2 && word !== 'als' ? word.replace(/s$/, '') : word))
    .join('')
    .replace(/color/g, 'colour');
}
