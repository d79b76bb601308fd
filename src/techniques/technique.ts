/**
 * What a technique is to this project: a name of the trade, a way to see its shape in a given argument, and a way to
 * find its instances in a position. Untrusted: whatever is found goes through the kernel like any claim.
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

export interface Technique {
  /** In canonical spelling, as `canonicalName` gives it. */
  readonly name: string;
  readonly recognise: (shape: Shape) => Recognition;
  /**
   * All instances, the simplest first, lazily; absent where the tool cannot look for it yet. Where `wanted` is given,
   * instances that do not bear on these conclusions may be left out.
   */
  readonly find: ((position: Position, wanted?: readonly Conclusion[]) => Iterable<Instance>) | undefined;
}
