/**
 * A test recording as data: what a program on a screen shows, how that is filmed and encoded, and the truth about it.
 *
 * Times are frames at the take's rate until the truth is written, which has seconds. Lengths are pixels of the screen
 * before it is zoomed, tilted or scaled, unless a field says that they are parts of a cell.
 */
import type { Corners } from '../../../src/recording/corners.ts';

export type Colour = readonly [red: number, green: number, blue: number];

/** Where small digits stand: a row at the top, a row through the middle, or each in its own place, 1 2 3 at the top. */
export type SmallDigits = 'row' | 'middle' | 'places';

/** How the program draws. */
export interface TakeLook {
  readonly background: Colour;
  readonly cell: Colour;
  /** Of every second box; undefined: as the others. */
  readonly otherBox: Colour | undefined;
  readonly line: Colour;
  readonly boxLine: Colour;
  readonly linePx: number;
  readonly boxLinePx: number;
  /**
   * `on`: a line as thick as those of the boxes, on the square's edge; `outside`: a heavy frame around the square;
   * `none`: the square's edge has no line of its own.
   */
  readonly frame: 'on' | 'outside' | 'none';
  /** Of a frame outside, in parts of a cell. */
  readonly frameCells: number;
  /** Of the square's corners, in parts of a cell. */
  readonly roundCells: number;
  /** Cells as tiles with a gap between them, in parts of a cell; 0: lines. */
  readonly gapCells: number;
  readonly given: Colour;
  readonly written: Colour;
  readonly small: Colour;
  /** Of the cell that is selected, and of the houses that are lit with it; undefined: none are. */
  readonly selected: Colour;
  readonly lit: Colour | undefined;
  readonly font: string;
  readonly isBold: boolean;
  /** Of a digit, in parts of a cell. */
  readonly digitCells: number;
  readonly smallDigits: SmallDigits;
  /** Frames that a digit takes to come up; 0: at once. */
  readonly fadeFrames: number;
}

/** A frame of the screen into which it moves: `zoom` times as large, the screen's point `[x, y]` in the middle. */
export interface View {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}

/** From frame `from` on the view moves, and at frame `until` it has come to rest at `to`. */
export interface CameraMove {
  readonly from: number;
  readonly until: number;
  readonly to: View;
  readonly eased: boolean;
}

/** Something that hides all: at `from` it begins to fade in, at `until` it has gone. `fadeFrames` 0: it comes and goes at once. */
export interface Cover {
  readonly kind: 'title' | 'cutaway';
  readonly from: number;
  readonly until: number;
  readonly fadeFrames: number;
}

/** What is done on the board from a frame on. Cells are numbers from 0, row by row. */
export type Deed =
  | { readonly frame: number; readonly kind: 'select'; readonly cell: number }
  | { readonly frame: number; readonly kind: 'write'; readonly cell: number; readonly digit: number }
  | { readonly frame: number; readonly kind: 'erase'; readonly cell: number }
  | { readonly frame: number; readonly kind: 'pencil' | 'unpencil'; readonly cell: number; readonly digit: number }
  | { readonly frame: number; readonly kind: 'tint'; readonly cell: number; readonly colour: Colour | undefined };

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Take {
  readonly name: string;
  readonly seed: number;
  readonly width: number;
  readonly height: number;
  /** Frames a second. */
  readonly rate: number;
  readonly frames: number;
  /** Cells in a row, and the shape of a box. */
  readonly size: number;
  readonly boxRows: number;
  readonly boxColumns: number;
  /** By cell; 0: blank. */
  readonly givens: readonly number[];
  readonly solution: readonly number[];
  readonly look: TakeLook;
  readonly board: { readonly left: number; readonly top: number; readonly side: number };
  readonly moves: readonly CameraMove[];
  readonly covers: readonly Cover[];
  readonly deeds: readonly Deed[];
  /** A pad of buttons with the digits. */
  readonly pad: Box | undefined;
  /** A second, smaller board of so many cells a row. */
  readonly second: (Box & { readonly size: number }) | undefined;
  readonly webcam: Box | undefined;
  readonly hasCursor: boolean;
  /** Where the corners of the whole screen come to lie, where it is filmed at an angle. */
  readonly tilt: Corners | undefined;
  readonly encoding: Encoding;
}

export interface Encoding {
  /** Of libx264. */
  readonly crf: number;
  /** Strength of ffmpeg's `noise`; 0: none. */
  readonly noise: number;
  /** The frame that the take is scaled up to; undefined: as it is. */
  readonly scaledTo: { readonly width: number; readonly height: number } | undefined;
  /** Whether pictures come at no fixed rate. */
  readonly isVariable: boolean;
}

/** Of a board over time: seconds from `from` to `to`, `to` not included. */
export type TrueStretch =
  | { readonly from: number; readonly to: number; readonly corners: Corners }
  | { readonly from: number; readonly to: number; readonly hidden: true }
  | {
      readonly from: number;
      readonly to: number;
      readonly moving: true;
      readonly path: readonly { readonly t: number; readonly corners: Corners }[];
    };

/** `t`: the first frame on which the change stands whole. */
export interface TrueEvent {
  readonly t: number;
  readonly cell: string;
  readonly kind: 'place' | 'erase' | 'pencil' | 'unpencil' | 'tint';
  readonly digit?: number;
  /** Small digits that go because a digit is written over them. */
  readonly implied?: true;
}

export interface Truth {
  readonly board: readonly TrueStretch[];
  readonly boxes: string;
  /** Row by row, `.` for a blank. */
  readonly givens: string;
  readonly solution: string;
  readonly events: readonly TrueEvent[];
  /** The times of all pictures. */
  readonly times: readonly number[];
}
