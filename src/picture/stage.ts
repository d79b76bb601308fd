/**
 * What every mark is handed: the canvas, what is drawn on it, and where.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Look } from '../scene/look.ts';
import type { Film, Mark } from '../timeline/film.ts';
import type { BoardPlace } from './board-place.ts';
import type { Context2D } from './context.ts';
import type { Drawing, Inked } from './drawing.ts';
import type { RingRoom } from './ring-room.ts';
import type { Layout } from './room-for-words.ts';

/** A mark that is on screen, with its ink; `M` narrows the kind of mark. */
export interface Standing {
  readonly mark: Mark;
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
  /** The candidates that take part in what is marked, and how far they have come forward, above 0 to 1. */
  readonly involved: ReadonlyMap<Candidate, number>;
  /** The room that the rings have of all that is marked by the steps on screen. */
  readonly rooms: ReadonlyMap<Candidate, RingRoom>;
}

/** A stage with a board on it. */
export interface BoardStage extends Stage {
  readonly place: BoardPlace;
}

/** The colour of a mark: its group's, or the plain one. */
export function colourOf(stage: Stage, mark: Mark): string {
  const { colours } = stage.look;
  return mark.group === undefined ? colours.plain : colours.groups[mark.group.colour];
}
