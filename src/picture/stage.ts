/**
 * What every mark's painting is given: the canvas, what is drawn on it, and where.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Look } from '../scene/look.ts';
import type { Film, Mark, ShapeKind } from '../timeline/film.ts';
import type { BoardPlace } from './board-place.ts';
import type { Context2D } from './context.ts';
import type { Drawing, Inked } from './ink.ts';
import type { PlannedLink } from './link-plan.ts';
import type { RingRoom } from './ring-room.ts';
import type { Layout } from './room-for-words.ts';

/** A mark that is on screen, with its ink. */
export interface Standing<Kind extends ShapeKind = ShapeKind> {
  readonly mark: Mark<Kind>;
  readonly ink: Inked;
}

/** Everything that the painting of one frame needs. */
export interface Stage {
  readonly context: Context2D;
  readonly film: Film;
  readonly look: Look;
  readonly drawing: Drawing;
  readonly layout: Layout;
  /** Frame pixels to one pixel of a frame whose shorter side is 1080. */
  readonly unit: number;
  /** The marks on screen, in the film's order. */
  readonly standing: readonly Standing[];
  /** The candidates involved in marks, and how far they have come forward, above 0 to 1. */
  readonly involved: ReadonlyMap<Candidate, number>;
  /** The candidates with a ring from any of these marks. */
  readonly ringed: RingedBy;
  /** The room of the rings of everything marked by the steps on screen. */
  readonly rooms: ReadonlyMap<Candidate, RingRoom>;
}

export type RingedBy = (marks: readonly Mark[]) => ReadonlySet<Candidate>;

/** A stage with a board on it. */
export interface BoardStage extends Stage {
  readonly place: BoardPlace;
  /** The routes of all links and reaches on screen; planned on first use. */
  readonly links: () => readonly PlannedLink[];
}

/** The colour of a mark: its group's, or the plain one. */
export function colourOf(stage: Stage, mark: Mark): string {
  const { colours } = stage.look;
  return mark.group === undefined ? colours.plain : colours.groups[mark.group.colour];
}
