/**
 * The families of arguments, as the language lists them: what a teller means by "no uniqueness", "chains".
 */
const fish = ['X-wing', 'swordfish', 'jellyfish'] as const;
const fishKinds = ['finned', 'sashimi', 'franken', 'mutant', 'finned franken', 'finned mutant'] as const;

/** Each name in just one family. */
export const argumentFamilies = {
  singles: ['full house', 'naked single', 'hidden single'],
  'locked candidates': ['locked candidates', 'pointing pair', 'pointing triple', 'claiming', 'box-line reduction'],
  subsets: [
    'naked pair',
    'naked triple',
    'naked quad',
    'hidden pair',
    'hidden triple',
    'hidden quad',
    'locked pair',
    'locked triple',
  ],
  'one digit': [
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
  ],
  wings: ['XY-wing', 'XYZ-wing', 'WXYZ-wing', 'W-wing', 'M-wing', 'S-wing', 'L-wing', 'H-wing'],
  chains: [
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
  ],
  'almost locked sets': ['ALS-XZ', 'ALS-XY-wing', 'death blossom', 'Sue de Coq', 'aligned pair exclusion'],
  uniqueness: [
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
  ],
} as const;

export type ArgumentFamily = keyof typeof argumentFamilies;

export const familyNames = Object.keys(argumentFamilies) as readonly ArgumentFamily[];

/** The family of this name, in any case and with or without hyphens. */
export function familyNamed(text: string): ArgumentFamily | undefined {
  const spelt = text
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();
  return familyNames.find((family) => family === spelt);
}
