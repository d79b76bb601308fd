/**
 * What the picture must know of a kind of mark: how long it takes to come, what it lies on, and its painting, layer by
 * layer. Which layers lie over which others is said in one place for all marks: `src/frames/layers.ts`.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell } from '../grid/grid.ts';
import type { LookMotion } from '../scene/look.ts';
import type { Film, ShapeKind, Shapes } from '../timeline/film.ts';
import type { BoardStage, Stage, Standing } from './stage.ts';

export interface MarkPainting<Kind extends ShapeKind> {
  /** Seconds from its first ink until all of it has come; 0: it stands whole on its first frame, and goes at once. */
  readonly comesIn: (shape: Shapes[Kind], motion: LookMotion, film: Film) => number;
  /** Whether it swells and shrinks again, once it has come. */
  readonly pulses?: true;
  /** The candidates that it lies on, in no order: their small digits come forward, and stand as long as the mark does. */
  readonly candidates: (shape: Shapes[Kind]) => readonly Candidate[];
  /** Whether these have a ring about them, so that each needs room and links keep off it. */
  readonly isRinged: boolean;
  /** What changes colour as it comes and goes: whole cells, a card of words, or all of the board; none for mere strokes. */
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

/** For marks that lie on no candidate, or change the colour of no cell. */
export function none(): readonly [] {
  return [];
}
