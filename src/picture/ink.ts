/**
 * How far each thing of a film is drawn at a frame: plain data. Two equal drawings of one film in one look are the same
 * picture, so that a still span is painted once.
 */

/** How far a thing is drawn, and how opaque it is, both 0 to 1; `progress` continues up to 2 when it swells. */
export interface Ink {
  readonly progress: number;
  readonly alpha: number;
}

/** A thing on screen: its place in its list of the film, and its ink. */
export interface Inked extends Ink {
  readonly index: number;
}

/** Everything that differs between two frames of one film in one look. */
export interface Drawing {
  /** The placement in force, as an index of `film.board`; undefined if the picture lays out the frame itself. */
  readonly board: number | undefined;
  readonly headings: readonly Inked[];
  readonly said: readonly Inked[];
  readonly written: readonly Inked[];
  readonly candidates: readonly Inked[];
  readonly marks: readonly Inked[];
}
