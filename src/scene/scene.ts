/**
 * A scene after reading: every name resolved, every notation parsed, every time typed, nothing proved. Each part that a
 * later stage may find a fault in carries the span of its text.
 */

import type { Candidate } from '../grid/candidates.ts';
import type { Cell, Digit, Grid, HouseShape } from '../grid/grid.ts';
import type { Chain, Conclusion, Deadly, OnlyPlaces, PencilList, SetName, Target } from '../grid/terms.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { AbsoluteTime, Timecode } from './anchor-absolute.ts';
import type { Time } from './anchors.ts';
import type { Span } from './diagnostic.ts';
import type { Fraction } from './fraction.ts';

/** A value with the place it was read from. */
export interface Located<T> {
  readonly value: T;
  readonly span: Span;
}

export interface Scene {
  readonly title: string | undefined;
  readonly puzzle: Puzzle;
  readonly video: Video;
  /** Other frames for the same lesson. */
  readonly versions: readonly Version[];
  /** The file of the look, as written; relative to the scene. */
  readonly look: Located<string> | undefined;
  readonly groups: readonly Group[];
  readonly advice: Advice;
  readonly steps: readonly Step[];
}

/** What the times of a scene depend on. */
export type TimedScene = Pick<Scene, 'video' | 'steps'> & { readonly puzzle: Pick<Puzzle, 'span'> };

/** What `check` remarks on in addition to proving. */
export interface Advice {
  /** A simpler named argument gives the same conclusions. */
  readonly simpler: boolean;
  /** A placement was open several steps earlier. */
  readonly open: boolean;
  /** A proof that needs more cases than this gets a warning. */
  readonly mostCases: number;
}

export interface Puzzle {
  readonly span: Span;
  readonly setter: string | undefined;
  readonly grid: Grid;
  /** By cell: the given, if there is one. */
  readonly givens: readonly (Digit | undefined)[];
  readonly givensSpan: Span;
  /** The video begins in mid-solve: placements and removals taken as read. */
  readonly start: readonly Located<Conclusion>[];
  readonly uniqueness: 'allowed' | 'barred';
}

/** Colours that a group may have; vermilion is kept for removals. */
export const groupColours = ['orange', 'sky', 'green', 'yellow', 'blue', 'purple'] as const;
export type GroupColour = (typeof groupColours)[number];

export interface Group {
  readonly name: string;
  readonly colour: GroupColour;
}

export interface Video {
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: Fraction;
  readonly length: Located<AbsoluteTime> | undefined;
  /** The label of the first frame. */
  readonly timecode: Located<Timecode> | undefined;
  /** In order of `at`; empty: the tool lays the frame out itself. The first one's `at` is undefined where it was given alone. */
  readonly board: readonly BoardPlacement[];
  readonly small: '123' | '789' | 'whole';
  readonly draw: 'overlay' | 'writing' | 'board';
  readonly candidates: 'all' | 'pencilled' | 'none';
  /** Whether rows and columns are numbered at the board's edges. */
  readonly coordinates: boolean;
  /** Whether each sentence is on the frame while it is spoken. */
  readonly subtitles: boolean;
  /** Kept free for a face camera. */
  readonly camera: FramePart | undefined;
  /** File names as written; relative to the scene. */
  readonly narration: Located<string> | undefined;
  readonly audio: Located<string> | undefined;
  readonly footage: { readonly file: Located<string>; readonly start: Located<AbsoluteTime> | undefined } | undefined;
}

/** Another frame for the same lesson: its size, and where the board is on it. */
export interface Version {
  readonly name: string;
  readonly span: Span;
  readonly width: number;
  readonly height: number;
  /** As in `Video`; empty: the tool lays the frame out itself. */
  readonly board: readonly BoardPlacement[];
  /** As in `Video`; undefined: as the video has it. */
  readonly coordinates: boolean | undefined;
  readonly subtitles: boolean | undefined;
  readonly camera: FramePart | undefined;
}

/** An upright rectangle of the frame, in pixels, the origin at the top left. */
export interface FramePart {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where the grid's outer square is, in frame pixels, the origin at the top left. */
export type BoardShape =
  | { readonly kind: 'square'; readonly left: number; readonly top: number; readonly side: number }
  /** Four `[x, y]`, clockwise from the top left. */
  | { readonly kind: 'corners'; readonly corners: readonly [Point, Point, Point, Point] }
  | { readonly kind: 'hidden' };
export type Point = readonly [x: number, y: number];
export interface BoardPlacement {
  readonly shape: BoardShape;
  readonly at: Located<Time> | undefined;
}

export interface Step {
  readonly id: string;
  /** The whole step, from its first key to its last character. */
  readonly span: Span;
  readonly idSpan: Span;
  readonly at: Located<Time> | undefined;
  readonly until: Located<Time> | undefined;
  readonly title: string | undefined;
  readonly say: Located<string> | undefined;
  readonly chapter: string | undefined;
  /** The argument's name in its canonical spelling (`ArgumentName`), and as it was written. */
  readonly because: { readonly name: ArgumentName; readonly written: string; readonly span: Span } | undefined;
  readonly called: string | undefined;
  readonly from: readonly Located<SetName>[];
  readonly chains: readonly Located<Chain>[];
  readonly deadly: Located<Deadly> | undefined;
  /** Undefined: no `so`, or one that could not be read. */
  readonly so: So | undefined;
  readonly soSpan: Span | undefined;
  readonly only: readonly OnlyItem[];
  readonly pencil: readonly PencilItem[];
  readonly cascade: readonly CascadeItem[];
  readonly fails: boolean;
  /** Undefined: no `show`, the claim draws itself. */
  readonly show: readonly Beat[] | undefined;
}

/** What `so` says: conclusions, each with its place, or `all`: every removal that the argument proves. */
export type So =
  | { readonly kind: 'listed'; readonly conclusions: readonly Located<Conclusion>[] }
  | { readonly kind: 'all' };

export interface OnlyItem {
  readonly places: readonly OnlyPlaces[];
  readonly at: Located<Time> | undefined;
  readonly span: Span;
}

export interface PencilItem {
  readonly lists: readonly PencilList[];
  readonly at: Located<Time> | undefined;
  readonly span: Span;
}

/** One text of a cascade: its conclusions come one after the other. */
export interface CascadeItem {
  readonly conclusions: readonly Located<Conclusion>[];
  readonly at: Located<Time> | undefined;
  readonly because: { readonly name: ArgumentName; readonly written: string; readonly span: Span } | undefined;
  readonly from: readonly Located<SetName>[];
  readonly chains: readonly Located<Chain>[];
  readonly span: Span;
}

export interface Beat {
  readonly span: Span;
  readonly at: Located<Time> | undefined;
  /** The name of a group of the scene. */
  readonly group: string | undefined;
  readonly keep: boolean;
  readonly mark: BeatMark;
}

export interface LinkRange {
  /** Counted from 1. */
  readonly chain: number;
  readonly first: number;
  readonly last: number;
}

export type BeatMark =
  | { readonly kind: 'fill'; readonly targets: readonly Target[] }
  | { readonly kind: 'circle'; readonly targets: readonly Target[] }
  | { readonly kind: 'link'; readonly links: 'all' | readonly LinkRange[] }
  | {
      readonly kind: 'strike';
      readonly candidates: 'all' | readonly Candidate[];
      readonly gone: Located<Time> | undefined;
    }
  | { readonly kind: 'place'; readonly cells: 'all' | readonly Cell[] }
  | { readonly kind: 'outline'; readonly targets: readonly Target[] }
  | { readonly kind: 'label'; readonly target: Target; readonly text: string }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'focus'; readonly targets: readonly Target[] }
  | { readonly kind: 'sight'; readonly sights: readonly Sight[] }
  | {
      readonly kind: 'sides';
      readonly candidate: Located<Candidate>;
      /** Undefined: the scene's first two. */
      readonly groups: readonly [string, string] | undefined;
    }
  | { readonly kind: 'suppose'; readonly suppose: Supposed; readonly span: Span }
  | { readonly kind: 'ask'; readonly text: string; readonly hold: Fraction }
  | { readonly kind: 'clear'; readonly what: 'all' | readonly string[] };

/** By kind. */
export type BeatMarks = { readonly [Mark in BeatMark as Mark['kind']]: Mark };

/** What a proof is played out from: a candidate as true, as not true, or each member of a set in turn as true. */
export type Supposed =
  | { readonly kind: 'true' | 'not'; readonly candidate: Candidate }
  | { readonly kind: 'each'; readonly set: SetName };

/** The lines along which a written digit rules out its copies. `digit` is undefined if only the cell was named. */
export interface Sight {
  readonly cell: Cell;
  readonly digit: Digit | undefined;
  /** Where the lines go: everywhere it sees, into a house, or along one. */
  readonly way: { readonly kind: 'everywhere' } | { readonly kind: 'into' | 'along'; readonly house: HouseShape };
}
