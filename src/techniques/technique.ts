/**
 * What a technique is to this project: one record with its names, its place among the others, how it is taught, said and
 * shown, a way to see its shape in a given argument, and a way to find its instances in a position. Untrusted: whatever
 * is found goes through the kernel like any claim.
 */
import type { Chain, Conclusion, Deadly } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';

/** An argument as it lies before a recogniser: the whole of it, or the part that some conclusions need. */
export interface Shape {
  readonly position: Position;
  readonly sets: readonly OneOf[];
  /** The chains as written, each with links that hold; empty where only sets were named. */
  readonly chains: readonly Chain[];
  readonly deadly: Deadly | undefined;
  /** What it proves of the step: never empty. */
  readonly conclusions: readonly Conclusion[];
}

/** `fits`, or fits but for a detail that deserves a warning (a wrong count, grouped left unsaid, ...), or does not. */
export type Recognition =
  | { readonly kind: 'fits' }
  | { readonly kind: 'loosely'; readonly warning: string }
  | undefined;

/** An instance found in a position: enough to be built again and proved. */
export interface Instance {
  readonly sets: readonly OneOf[];
  /** The chain in its telling order, where the technique is one. */
  readonly chain: Chain | undefined;
  readonly deadly: Deadly | undefined;
  readonly conclusions: readonly Conclusion[];
}

export type Recogniser = (shape: Shape) => Recognition;

/**
 * All instances, the simplest first, lazily. Where `wanted` is given, instances that do not bear on these conclusions may
 * be left out.
 */
export type Finder = (position: Position, wanted?: readonly Conclusion[]) => Iterable<Instance>;

/** The families of techniques, in the order in which they are usually taught: what a teacher means by "no uniqueness". */
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
 * The line of the technique in the table of teaching costs, `assets/teaching-costs.yaml`, which is made of these.
 * `place`: from low to high in the order of teaching; each thousand is a group of lines. No two techniques share one.
 */
export type Teaching =
  /** Seen without being shown. */
  | { readonly place: number; readonly cost: 'free' }
  /** `cost` for an argument of up to `sets` sets, and `each` for every set more; `note` stands above the line. */
  | {
      readonly place: number;
      readonly cost: number;
      readonly sets?: number;
      readonly each?: number;
      readonly note?: string;
    }
  /** The table has no line for it: the same arguments have other names, and are taught under these. */
  | 'under other names';

/** How a draft says an argument of the technique; the words come from a file of phrases. */
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

/** Its page of `scenes/names/`, and what the example there must be. */
export interface NamePage<Other extends string> {
  readonly under: (typeof pageHeadings)[number];
  /** A placement, where the name is about one; else removals, so that the picture holds the argument still. */
  readonly shows: 'placement' | 'removals';
  /** On an ordinary board there is no argument of the name that is none of its kinds. */
  readonly hasOnlyKinds?: true;
  /** The same arguments seen otherwise: every example bears these names too, and they stand before it. */
  readonly seenAs?: readonly Other[];
}

/** Everything about a technique but what recognises it and finds it. */
export interface TechniqueAbout<Name extends string, Other extends string> {
  /** In canonical spelling. */
  readonly name: Name;
  readonly plural: string;
  /** Second names in use, each of this technique alone. */
  readonly otherNames: readonly string[];
  readonly family: Family;
  /**
   * What it is a kind of, the nearest names alone: an argument that bears this name bears those too, unless they are told
   * apart by the lack of groups, or by having some.
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
}

/** The record, with its name and the names that it refers to as types of their own. */
export function technique<const Name extends string, const Other extends string = never>(
  record: TechniqueRecord<Name, Other>,
): TechniqueRecord<Name, Other> {
  return record;
}
