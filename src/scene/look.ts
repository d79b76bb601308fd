/**
 * A look: colours, widths, type and motion. Lengths are parts of a cell's side unless their name says otherwise;
 * times are seconds; colours are `#rrggbb`.
 */
import type { GroupColour } from './scene.ts';

export interface Look {
  readonly name: string;
  readonly colours: LookColours;
  readonly strokes: LookStrokes;
  readonly type: LookType;
  readonly motion: LookMotion;
}

export interface LookColours {
  /** The frame around the board (with `draw: board`). */
  readonly frame: string;
  readonly cell: string;
  readonly line: string;
  readonly houseLine: string;
  readonly given: string;
  readonly written: string;
  readonly candidate: string;
  readonly text: string;
  /** Around every stroke and word, of opposite luminance. */
  readonly casing: string;
  readonly strong: string;
  readonly weak: string;
  /** Of removals, and of nothing else: vermilion. */
  readonly removal: string;
  readonly placement: string;
  /** Where a mark has no group. */
  readonly plain: string;
  readonly groups: Readonly<Record<GroupColour, string>>;
}

export interface LookStrokes {
  readonly line: number;
  readonly houseLine: number;
  readonly link: number;
  readonly circle: number;
  readonly strike: number;
  readonly outline: number;
  readonly casing: number;
  readonly cornerRadius: number;
  /** The least stroke, in pixels at a frame height of 1080. */
  readonly leastPx: number;
}

export interface LookType {
  readonly family: string;
  /** Capital heights as parts of a cell. */
  readonly digit: number;
  readonly candidate: number;
}

export interface LookMotion {
  readonly fill: number;
  /** Between one place of a digit and the next, and for all of them at most. */
  readonly apart: number;
  readonly apartInAll: number;
  readonly circle: number;
  readonly linkShortest: number;
  readonly linkLongest: number;
  readonly strike: number;
  /** How long a struck candidate stays before it fades. */
  readonly strikeHold: number;
  readonly fade: number;
  readonly place: number;
  readonly sight: number;
  readonly focus: number;
}
