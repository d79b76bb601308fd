/**
 * The names that are judged, as the pages of scenes/names/ order them: by family, with what each is a kind of.
 */
import { allTechniques } from '../../src/techniques/all-techniques.ts';

export interface Family {
  readonly title: string;
  readonly names: readonly string[];
}

const fish = ['X-wing', 'swordfish', 'jellyfish'];
const fishOf = (word: string) => fish.map((size) => `${word} ${size}`);

/** All families, in the order in which they are usually taught. */
export const families: readonly Family[] = [
  { title: 'Singles', names: ['full house', 'naked single', 'hidden single'] },
  {
    title: 'Locked candidates',
    names: ['pointing pair', 'pointing triple', 'claiming', 'box-line reduction', 'locked candidates'],
  },
  {
    title: 'Subsets',
    names: [
      ...['naked pair', 'naked triple', 'naked quad'],
      ...['hidden pair', 'hidden triple', 'hidden quad'],
      ...['locked pair', 'locked triple'],
    ],
  },
  {
    title: 'Fish',
    names: [...fish, ...['finned', 'sashimi', 'franken', 'finned franken', 'mutant', 'finned mutant'].flatMap(fishOf)],
  },
  {
    title: 'Chains of one digit',
    names: [
      ...['skyscraper', 'two-string kite', 'empty rectangle', 'turbot fish', 'X-chain', 'grouped X-chain'],
      ...['simple colouring', 'multi-colouring'],
    ],
  },
  {
    title: 'Wings',
    names: ['XY-wing', 'XYZ-wing', 'WXYZ-wing', 'W-wing', 'M-wing', 'S-wing', 'L-wing', 'H-wing'],
  },
  {
    title: 'Chains',
    names: [
      ...['remote pair', 'XY-chain', 'AIC', 'grouped AIC', 'continuous loop', 'discontinuous loop'],
      ...['three-dimensional Medusa', 'kraken fish', 'forcing chain', 'forcing net'],
    ],
  },
  {
    title: 'Almost locked sets',
    names: ['ALS-XZ', 'ALS-XY-wing', 'ALS chain', 'death blossom', 'Sue de Coq', 'aligned pair exclusion'],
  },
  {
    title: 'Uniqueness',
    names: [
      ...[1, 2, 3, 4, 5, 6].map((type) => `unique rectangle type ${type}`),
      ...['hidden rectangle', 'unique rectangle', 'avoidable rectangle', 'unique loop', 'extended rectangle'],
      ...['BUG+1', 'BUG+n'],
    ],
  },
];

/**
 * Of what each name is a kind: an argument that bears the first bears the others too, unless the other is told apart by
 * the lack of groups, or by having some. Only the nearest are listed.
 */
const kindsOf: Readonly<Record<string, readonly string[]>> = {
  'full house': ['naked single'],
  'pointing pair': ['locked candidates'],
  'pointing triple': ['locked candidates'],
  claiming: ['box-line reduction'],
  'box-line reduction': ['locked candidates'],
  'locked pair': ['naked pair'],
  'locked triple': ['naked triple'],
  skyscraper: ['turbot fish'],
  'two-string kite': ['turbot fish'],
  'empty rectangle': ['grouped X-chain'],
  'turbot fish': ['X-chain'],
  'X-wing': ['X-chain'],
  'X-chain': ['AIC'],
  'grouped X-chain': ['grouped AIC'],
  'XY-wing': ['XY-chain', 'ALS-XZ'],
  'XYZ-wing': ['ALS-XZ', 'aligned pair exclusion'],
  'W-wing': ['AIC'],
  'M-wing': ['AIC'],
  'S-wing': ['AIC'],
  'L-wing': ['AIC'],
  'H-wing': ['AIC'],
  'remote pair': ['XY-chain'],
  'XY-chain': ['AIC'],
  'continuous loop': ['AIC'],
  AIC: ['forcing chain'],
  'grouped AIC': ['forcing chain'],
  'ALS-XZ': ['ALS chain'],
  'ALS-XY-wing': ['ALS chain'],
  'unique rectangle type 1': ['unique rectangle'],
  'unique rectangle type 2': ['unique rectangle'],
  'unique rectangle type 3': ['unique rectangle'],
  'unique rectangle type 4': ['unique rectangle'],
  'unique rectangle type 5': ['unique rectangle'],
  'unique rectangle type 6': ['unique rectangle'],
  'hidden rectangle': ['unique rectangle'],
  'BUG+1': ['BUG+n'],
  'kraken fish': ['forcing net'],
  'forcing chain': ['forcing net'],
};

/** Names that stand for their kinds together: on an ordinary board there is no argument of theirs that is none of these. */
export const haveOnlyKinds: readonly string[] = ['locked candidates', 'box-line reduction'];

/** Every name that is judged, in its canonical spelling. */
export const judgedNames: readonly string[] = allTechniques.map((technique) => technique.name);

/** What the name is a kind of, the nearest alone. */
export function moreGeneral(name: string): readonly string[] {
  return kindsOf[name] ?? [];
}

/** The kinds of it, the nearest alone. */
export function moreSpecial(name: string): readonly string[] {
  return judgedNames.filter((other) => moreGeneral(other).includes(name));
}

/** All its kinds, near and far. */
export function allMoreSpecial(name: string): readonly string[] {
  return [...new Set(moreSpecial(name).flatMap((kind) => [kind, ...allMoreSpecial(kind)]))];
}

/** The same arguments seen otherwise: every one of the first bears the second, which comes before it. */
const seenOtherwise: Readonly<Record<string, readonly string[]>> = {
  AIC: ['discontinuous loop'],
  'grouped AIC': ['discontinuous loop'],
  'box-line reduction': ['claiming'],
};

/** Whether another name that fits the name's example may be more special: one of another family, or a kind of it. */
export function mayStandBefore(name: string, other: string): boolean {
  if (familyOf(name) !== familyOf(other)) return true;
  return allMoreSpecial(name).includes(other) || (seenOtherwise[name] ?? []).includes(other);
}

/** The family of the name; undefined where it has been put into none. */
export function familyOf(name: string): Family | undefined {
  return families.find((family) => family.names.includes(name));
}

/** The name of its files: `BUG+1` is `bug-plus-1`. */
export function slugOf(name: string): string {
  return name
    .toLowerCase()
    .replace('+', '-plus-')
    .replace(/[^a-z0-9]+/g, '-');
}
