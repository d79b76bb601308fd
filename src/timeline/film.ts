/**
 * A film: everything on screen, resolved to frames, cells and candidates. The picture of a frame is a function of the
 * film and the frame number only. Nothing in it remains to be looked up, proved or timed.
 */
import { Bug } from '../grid/bug.ts';
import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import type { LinkKind } from '../grid/terms.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { BoardShape, FramePart, GroupColour } from '../scene/scene.ts';

declare const frameBrand: unique symbol;

/** A frame's number, from 0; frame n is shown from n/rate to (n+1)/rate seconds. Made by `frameAt`. */
export type Frame = number & { readonly [frameBrand]: true };

/**
 * The whole number as a frame. A number below 0, or one that is not whole, is a `Bug`: rounding is done by
 * `nearestFrame`, in `seconds.ts`, and nowhere else.
 */
export function frameAt(number: number): Frame {
  if (!Number.isSafeInteger(number) || number < 0) throw new Bug(`frame ${number}`);
  return number as Frame;
}

/**
 * On screen from frame `from` to frame `until`, `until` excluded. `from` is the first frame on which any of it is
 * visible.
 */
export interface Shown {
  readonly from: Frame;
  readonly until: Frame;
}

export interface Film {
  readonly grid: Grid;
  /** The frame's size in pixels. */
  readonly width: number;
  readonly height: number;
  readonly rate: Fraction;
  readonly frameCount: number;
  readonly draw: 'overlay' | 'writing' | 'board';
  readonly small: '123' | '789' | 'whole';
  /** Where the board is on the frame, in order of `from`; if empty, the picture lays the frame out itself. */
  readonly board: readonly { readonly from: Frame; readonly shape: BoardShape }[];
  /** Whether rows and columns are numbered at the board's edges. */
  readonly coordinates: boolean;
  /** A part of the frame, in pixels, on which nothing is drawn. */
  readonly camera: FramePart | undefined;
  readonly title: string | undefined;
  /** The setter's name. */
  readonly credit: string | undefined;
  /** Digits on the board from the first frame on: the givens, and what was placed before the video begins. */
  readonly standing: readonly { readonly cell: Cell; readonly digit: Digit; readonly given: boolean }[];
  /** Digits written during the video (drawn with `writing` and `board`). */
  readonly written: readonly (Shown & { readonly cell: Cell; readonly digit: Digit })[];
  /** Small digits on the board (drawn with `writing` and `board`); empty with `candidates: none`. */
  readonly candidates: readonly (Shown & { readonly candidate: Candidate })[];
  /** With `overlay`: the small digits that a recording may show; they are not drawn, and marks keep clear of them. */
  readonly recorded: readonly (Shown & { readonly candidate: Candidate })[];
  readonly headings: readonly (Shown & Heading)[];
  /** The subtitles, sentence by sentence; empty without `subtitles: on`. */
  readonly said: readonly Said[];
  /** In order of `from`; of two in one place, the later covers the earlier. */
  readonly marks: readonly Mark[];
}

/** A sentence while it is said. */
export type Said = Shown & { readonly text: string };

export interface Heading {
  readonly step: string;
  /** Counted from 1. */
  readonly number: number;
  readonly count: number;
  /** Whether the step is meant to fail. */
  readonly isFalseStep: boolean;
  readonly title: string | undefined;
  /** The argument's name (or the author's own name for it), as written. */
  readonly argument: string | undefined;
  /** The conclusions that are proved and drawn, in notation. */
  readonly conclusions: string | undefined;
}

/** A colour group of the scene: its colour, and its number from 0, which selects its own circle style. */
export interface MarkGroup {
  readonly colour: GroupColour;
  readonly index: number;
}

/** A mark, of any kind or of the kinds named. */
export type Mark<Kind extends ShapeKind = ShapeKind> = Shown & {
  /** The step that drew it. */
  readonly step: string;
  readonly group: MarkGroup | undefined;
  readonly shape: Shapes[Kind];
};

export type ShapeKind = MarkShape['kind'];

/** By kind. */
export type Shapes = { readonly [Shape in MarkShape as Shape['kind']]: Shape };

/** What a mark is, by its kind. Each kind is a record of a file of its own in `src/marks`. */
export type MarkShape =
  | { readonly kind: 'fill'; readonly cells: readonly Cell[] }
  | { readonly kind: 'circle'; readonly candidate: Candidate }
  /** The circle of a candidate whose digit has since been written: the ring is around that digit. */
  | { readonly kind: 'ring'; readonly cell: Cell; readonly digit: Digit }
  /** `from` and `to`: the candidates of the node, one, or several for a grouped or almost locked node. */
  | {
      readonly kind: 'link';
      readonly link: LinkKind;
      readonly from: readonly Candidate[];
      readonly to: readonly Candidate[];
    }
  | { readonly kind: 'strike'; readonly candidate: Candidate }
  /** A thin line from a candidate of the argument to one that it rules out: the two conflict. */
  | { readonly kind: 'reach'; readonly from: Candidate; readonly to: Candidate }
  /** A single that has become available: the only digit left in its cell, or its only place left in a house. */
  | { readonly kind: 'opens'; readonly candidate: Candidate }
  /** A placement: with `overlay` it marks the cell, else it draws attention to the digit being written. */
  | { readonly kind: 'place'; readonly cell: Cell; readonly digit: Digit }
  /** `line`: the houses that an argument starts from solid, those that cover them dashed; else by the group. */
  | { readonly kind: 'outline'; readonly cells: readonly Cell[]; readonly line?: 'solid' | 'dashed' }
  | { readonly kind: 'label'; readonly cell: Cell; readonly candidate: Candidate | undefined; readonly text: string }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'ask'; readonly text: string }
  /** Everything else dims. */
  | { readonly kind: 'focus'; readonly cells: readonly Cell[] }
  /** What a supposition says of a node, of one candidate or several: true, or not true. */
  | { readonly kind: 'ghost'; readonly candidates: readonly Candidate[]; readonly isTrue: boolean }
  /** Nodes that contradict the supposition, in order; a single one is both true and not true. */
  | { readonly kind: 'clash'; readonly between: readonly (readonly Candidate[])[] }
  /** A line of sight from a written digit over `cells`, in order from the digit outwards. */
  | {
      readonly kind: 'sight';
      readonly of: Cell;
      readonly cells: readonly Cell[];
      readonly house: HouseShape | undefined;
    }
  /** Over the whole frame, in words: this step is not proved. */
  | { readonly kind: 'stamp'; readonly text: string };
