/**
 * The names of arguments, by family, and how they may be spelt: in any case, with or without hyphens, singular or
 * plural, and by the usual second names. Names are common practice of the trade and have no source.
 */
import { nearestWords } from './nearest-word.ts';

const fish = ['X-wing', 'swordfish', 'jellyfish'] as const;
const fishKinds = ['finned', 'sashimi', 'franken', 'mutant', 'finned franken', 'finned mutant'] as const;

/** All names in their canonical spelling, by family. */
export const argumentNames = [
  'full house',
  'naked single',
  'hidden single',
  'locked candidates',
  'pointing pair',
  'pointing triple',
  'claiming',
  'box-line reduction',
  'naked pair',
  'naked triple',
  'naked quad',
  'hidden pair',
  'hidden triple',
  'hidden quad',
  'locked pair',
  'locked triple',
  ...fish,
  ...fish.flatMap((name) => fishKinds.map((kind) => `${kind} ${name}` as const)),
  'skyscraper',
  'two-string kite',
  'empty rectangle',
  'turbot fish',
  'X-chain',
  'grouped X-chain',
  'simple colouring',
  'multi-colouring',
  'XY-wing',
  'XYZ-wing',
  'WXYZ-wing',
  'W-wing',
  'M-wing',
  'S-wing',
  'L-wing',
  'H-wing',
  'remote pair',
  'XY-chain',
  'AIC',
  'grouped AIC',
  'continuous loop',
  'discontinuous loop',
  'ALS chain',
  'forcing chain',
  'forcing net',
  'kraken fish',
  'three-dimensional Medusa',
  'ALS-XZ',
  'ALS-XY-wing',
  'death blossom',
  'Sue de Coq',
  'aligned pair exclusion',
  'unique rectangle',
  'unique rectangle type 1',
  'unique rectangle type 2',
  'unique rectangle type 3',
  'unique rectangle type 4',
  'unique rectangle type 5',
  'unique rectangle type 6',
  'hidden rectangle',
  'avoidable rectangle',
  'unique loop',
  'extended rectangle',
  'BUG+1',
  'BUG+n',
] as const;

export type ArgumentName = (typeof argumentNames)[number];

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
