/**
 * What the picture must know about a kind of mark: how long it takes to come, what it is on, and its painting, layer by
 * layer. The order of layers is in one place for all marks: `src/frames/layers.ts`.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell } from '../grid/grid.ts';
import type { LookMotion } from '../scene/look.ts';
import type { Film, ShapeKind, Shapes } from '../timeline/film.ts';
import type { BoardStage, Stage, Standing } from './stage.ts';

export interface MarkPainting<Kind extends ShapeKind> {
  /**
   * Seconds from its first ink until it is complete; 0: it is complete on its first frame, and disappears without a
   * fade.
   */
  readonly comesIn: (shape: Shapes[Kind], motion: LookMotion, film: Film) => number;
  /** Whether it swells and shrinks again, once it has come. */
  readonly pulses?: true;
  /**
   * The candidates that it is on, in no order: their small digits come forward, and are shown as long as the mark is.
   */
  readonly candidates: (shape: Shapes[Kind]) => readonly Candidate[];
  /** Whether these have a ring around them, so that each needs room and links avoid it. */
  readonly isRinged: boolean;
  /**
   * What changes colour as it comes and goes: whole cells, a card of words, or all of the board; nothing for mere
   * strokes.
   */
  readonly covers: (shape: Shapes[Kind]) => readonly Cell[] | 'card' | 'board';
  /** By layer; each paints all marks of the kind that are on screen. */
  readonly onBoard: Layers<BoardStage, Kind>;
  /** Over the frame, whether or not there is a board on it. */
  readonly onFrame: Layers<Stage, Kind>;
}

export type Layers<On extends Stage, Kind extends ShapeKind> = Readonly<
  Record<string, (stage: On, standing: readonly Standing<Kind>[]) => void>
>;

/** A layer that paints one mark after another, in the film's order. */
export function each<On extends Stage, Kind extends ShapeKind>(
  paintOne: (stage: On, standing: Standing<Kind>) => void,
): (stage: On, standing: readonly Standing<Kind>[]) => void {
  return (stage, standing) => {
    for (const one of standing) paintOne(stage, one);
  };
}

/** For marks that are not on candidates, or do not change the colour of cells. */
export function none(): readonly [] {
  return [];
}
