/**
 * The things that notation names: sets, conclusions, chains. Plain data; nothing here is proved.
 */
import type { Candidate } from './candidates.ts';
import type { Conclusion, Deadly, PatternPart } from './conclusion.ts';
import type { Cell, Digit, HouseShape } from './grid.ts';

export type { Conclusion, Deadly, PatternPart };

/** A set as named after `from`: `r9c1`, `7c5`, `step towers`. */
export type SetName =
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'places'; readonly digit: Digit; readonly house: HouseShape }
  | { readonly kind: 'step'; readonly id: string };

/**
 * A node of a chain: k digits in m cells. For k up to m: each of the digits stands in one of the cells;
 * for k above m: the cells hold no other digits than these. Both lists are ascending, none empty.
 */
export interface ChainNode {
  readonly digits: readonly Digit[];
  readonly cells: readonly Cell[];
}

export type LinkKind = 'strong' | 'weak';

/** A link as written: `=` is strong, `-` is weak. `from` and `to` are indices into the chain's nodes. */
export interface ChainLink {
  readonly kind: LinkKind;
  readonly from: number;
  readonly to: number;
}

/** A chain as written. In a loop the last link leads back to node 0, which is not listed twice. */
export interface Chain {
  readonly nodes: readonly ChainNode[];
  readonly links: readonly ChainLink[];
  readonly loop: boolean;
  /** What stands after `=>`; empty where nothing does. */
  readonly concludes: readonly Conclusion[];
}

/** One text of `only`: the digit of the house can stand in these cells alone. */
export interface OnlyPlaces {
  readonly digit: Digit;
  readonly house: HouseShape;
  readonly cells: readonly Cell[];
}

/** One cell of a `pencil` text: these are all the digits still possible there. */
export interface PencilList {
  readonly cell: Cell;
  readonly digits: readonly Digit[];
}

/** A cell, a house or candidates, as a mark names them. */
export type Target =
  | { readonly kind: 'cells'; readonly cells: readonly Cell[] }
  | { readonly kind: 'house'; readonly house: HouseShape }
  | { readonly kind: 'candidates'; readonly candidates: readonly Candidate[] }
  /** A bare digit: live, every place still open to it. */
  | { readonly kind: 'digit'; readonly digit: Digit };

/** A fault in a notation text: where it lies in the text (`at`, `length`, in UTF-16 units), what is there, what would be right. */
export interface NotationFault {
  readonly at: number;
  readonly length: number;
  readonly message: string;
}

/** What could be read, or all that is wrong with it (then at least one fault). */
export type Reading<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly NotationFault[] };
