/**
 * The definition of a technique: one record with its names, its place among the others, how it is taught, said and
 * shown, a way to recognise its shape in a given argument, and a way to find its instances in a position. Untrusted:
 * everything found goes through the kernel like any claim.
 */
import type { Chain, Conclusion, Deadly } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';

/** An argument as a recogniser gets it: all of it, or the part that some conclusions need. */
export interface Shape {
  readonly position: Position;
  readonly sets: readonly OneOf[];
  /** The chains as written, each with links that hold; empty where only sets were named. */
  readonly chains: readonly Chain[];
  readonly deadly: Deadly | undefined;
  /** The step's conclusions that it proves: never empty. */
  readonly conclusions: readonly Conclusion[];
}

/**
 * `fits`; or fits except for a detail that deserves a warning (a wrong count, a missing "grouped", ...); or does not.
 */
export type Recognition =
  | { readonly kind: 'fits' }
  | { readonly kind: 'loosely'; readonly warning: string }
  | undefined;

/** An instance found in a position: enough to rebuild and prove it. */
export interface Instance {
  readonly sets: readonly OneOf[];
  /** The chain in the order in which it is presented, if the technique is a chain. */
  readonly chain: Chain | undefined;
  readonly deadly: Deadly | undefined;
  readonly conclusions: readonly Conclusion[];
}

export type Recogniser = (shape: Shape) => Recognition;

/** Arguments with a set that none of their conclusions needs. */
export type Needless = 'left out' | 'kept';

/**
 * All instances, the simplest first, lazily. If `wanted` is given, instances that are irrelevant to these conclusions
 * may be left out. Arguments with a set that nothing needs bear their names too; finders that `needless` concerns
 * give them only if it says so.
 */
export type Finder = (position: Position, wanted?: readonly Conclusion[], needless?: Needless) => Iterable<Instance>;

/**
 * The families of techniques, in the order in which they are usually taught; a teacher's "no uniqueness" refers to one
 * of these.
 */
export const families = [
  'singles',
  'locked candidates',
  'subsets',
  'one digit',
  'wings',
  'chains',
  'almost locked sets',
  'uniqueness',
] as const;

export type Family = (typeof families)[number];

/** The headings under which `scenes/names/README.md` lists the pages, in its order. */
export const pageHeadings = [
  'Singles',
  'Locked candidates',
  'Subsets',
  'Fish',
  'Chains of one digit',
  'Wings',
  'Chains',
  'Almost locked sets',
  'Uniqueness',
] as const;

/**
 * The line of the technique in the table of teaching costs, `assets/teaching-costs.yaml`, which is generated from
 * these. `place`: ascending in teaching order; each thousand is a group of lines. No two techniques share a place.
 */
export type Teaching =
  /** Seen without being shown. */
  | { readonly place: number; readonly cost: 'free' }
  /**
   * `cost` for an argument of up to `sets` sets, and `each` for every further set; `note` is printed above the line.
   */
  | {
      readonly place: number;
      readonly cost: number;
      readonly sets?: number;
      readonly each?: number;
      readonly note?: string;
    }
  /** The table has no line for it: the same arguments have other names, and are taught under those. */
  | 'under other names';

/** How a draft words an argument of the technique; the phrases come from a file. */
export type Phrase =
  | 'locked'
  | 'naked subset'
  | 'hidden subset'
  | 'fish'
  | 'skyscraper'
  | 'kite'
  | 'XY-wing'
  /** No sentence of its own: along its chain, or by supposing the opposite. */
  | 'step by step';

/** Its page in `scenes/names/`, and what the example there must show. */
export interface NamePage<Other extends string> {
  readonly under: (typeof pageHeadings)[number];
  /** A placement, if the name is about one; otherwise removals, so that the picture still shows the argument. */
  readonly shows: 'placement' | 'removals';
  /** On an ordinary board, every argument of the name is one of its kinds. */
  readonly hasOnlyKinds?: true;
  /** The same arguments seen differently: these names fit every example too, and come before this one. */
  readonly seenAs?: readonly Other[];
}

/** Everything about a technique except its recogniser and its finder. */
export interface TechniqueAbout<Name extends string, Other extends string> {
  /** In canonical spelling. */
  readonly name: Name;
  readonly plural: string;
  /** Alternative names in use, each for this technique only. */
  readonly otherNames: readonly string[];
  readonly family: Family;
  /**
   * What it is a kind of, only the nearest names: if this name fits an argument, those do too, unless they differ in
   * whether there are groups.
   */
  readonly kindOf: readonly Other[];
  readonly teaching: Teaching;
  /** Whether the check offers it, as a simpler argument or for a conclusion that is not proved. */
  readonly isOffered: boolean;
  readonly phrase: Phrase;
  readonly page: NamePage<Other>;
}

/** All of a technique. `Other`: the names that it refers to. */
export interface TechniqueRecord<Name extends string, Other extends string> extends TechniqueAbout<Name, Other> {
  readonly recognise: Recogniser;
  readonly find: Finder;
  /** Where the name may be written with a number that counts (BUG+3): what is wrong with that number, if anything is. */
  readonly miscounted?: (shape: Shape, written: number) => string | undefined;
}

/** The record, with its name and the names that it refers to as literal types. */
export function technique<const Name extends string, const Other extends string = never>(
  record: TechniqueRecord<Name, Other>,
): TechniqueRecord<Name, Other> {
  return record;
}
