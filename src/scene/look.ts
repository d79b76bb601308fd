/**
 * A look: colours, widths, type and motion. Lengths are relative to a cell's side unless their name says otherwise
 * (`Px`: pixels of a frame whose shorter side is 1080); times are seconds; colours are `#rrggbb`.
 */
import type { GroupColour } from './scene.ts';

export interface Look {
  readonly name: string;
  readonly colours: LookColours;
  readonly inks: LookInks;
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
  /** Words that matter less: the title above, the credit. */
  readonly quietText: string;
  /** The background of callouts and labels, under `text`. */
  readonly card: string;
  /** What covers all but the cells in focus. */
  readonly veil: string;
  /** Around strokes and words that are lighter than it. Of the two casings the one with more contrast is used. */
  readonly casing: string;
  /** Around strokes and words that are darker than it. */
  readonly casingLight: string;
  readonly strong: string;
  readonly weak: string;
  /** Only of removals: vermilion. */
  readonly removal: string;
  readonly placement: string;
  /** For marks without a group. */
  readonly plain: string;
  readonly groups: Readonly<Record<GroupColour, string>>;
}

/** The strength of a colour, 0 (none) to 1 (opaque). */
export interface LookInks {
  /** Of a tinted cell. */
  readonly fill: number;
  /** Within a circle. */
  readonly disc: number;
  /** Of the veil over everything that is not in focus. */
  readonly veil: number;
  /** Of small digits while nothing is marked. */
  readonly candidate: number;
  /** Of small digits that are not involved in what is marked. */
  readonly quiet: number;
}

export interface LookStrokes {
  readonly line: number;
  readonly houseLine: number;
  readonly link: number;
  readonly weakLink: number;
  readonly circle: number;
  readonly strike: number;
  readonly outline: number;
  readonly casing: number;
  readonly cornerRadius: number;
  /** The least stroke of a mark. */
  readonly leastPx: number;
  /** The least length of an arrowhead. */
  readonly leastHeadPx: number;
}

export interface LookType {
  readonly family: string;
  /** Capital heights relative to a cell. */
  readonly digit: number;
  readonly candidate: number;
  /** How much larger small digits are drawn that are involved in what is marked. */
  readonly emphasis: number;
  /** Font sizes. */
  readonly titlePx: number;
  readonly headingPx: number;
  readonly bodyPx: number;
  readonly notePx: number;
  readonly labelPx: number;
}

export interface LookMotion {
  /** Whether marks are drawn on, or are whole from their first frame and fade in, without motion. */
  readonly come: 'drawn' | 'faded';
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
  /** Of anything that disappears, and of words that appear. */
  readonly fade: number;
  readonly place: number;
  readonly outline: number;
  readonly sight: number;
  readonly focus: number;
}
