/**
 * Paints a drawing: one picture on the canvas that it is given. The canvas is cleared first; with `overlay` and
 * `writing` what is not marked stays transparent. The order of layers is in `layers.ts`.
 */
import { Bug } from '../grid/bug.ts';
import type { Candidate } from '../grid/candidates.ts';
import { candidatesOfMark, ringedBy } from '../marks/paintings.ts';
import { stageBesidesStamp } from '../marks/stamp.ts';
import type { Context2D } from '../picture/context.ts';
import type { Drawing } from '../picture/ink.ts';
import { layoutOf } from '../picture/layout.ts';
import { type PlannedLink, planLinks } from '../picture/link-plan.ts';
import { roomsOf } from '../picture/ring-room.ts';
import { unitOf } from '../picture/safe-area.ts';
import type { BoardStage, Stage, Standing } from '../picture/stage.ts';
import type { Look } from '../scene/look.ts';
import type { Film } from '../timeline/film.ts';
import { paintBoardLayers, paintFrameLayers } from './layers.ts';

/** Paints the drawing over the whole canvas, which must be of the film's size. */
export function paint(context: Context2D, film: Film, look: Look, drawing: Drawing): void {
  const stage = stageOf(context, film, look, drawing);
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.globalAlpha = 1;
  // In two parts: Cairo remembers a canvas that was cleared in one call, and rounds the first shape drawn on it
  // differently.
  const half = Math.floor(film.height / 2);
  context.clearRect(0, 0, film.width, half);
  context.clearRect(0, half, film.width, film.height - half);
  if (film.draw === 'board') {
    context.fillStyle = look.colours.frame;
    context.fillRect(0, 0, film.width, film.height);
  }
  const board = boardStageOf(stage);
  if (board !== undefined) paintBoardLayers(board);
  paintFrameLayers(stage, stageBesidesStamp(stage));
  context.restore();
}

function stageOf(context: Context2D, film: Film, look: Look, drawing: Drawing): Stage {
  const standing = drawing.marks.map((ink): Standing => {
    const mark = film.marks[ink.index];
    if (mark === undefined) throw new Bug(`the film has no mark ${ink.index}`);
    return { mark, ink };
  });
  const layout = layoutOf(film, drawing.board);
  const rooms = roomsOf(film, look, standing, ringedBy);
  const involved = involvedIn(standing);
  return { context, film, look, drawing, layout, unit: unitOf(film), standing, involved, ringed: ringedBy, rooms };
}

function boardStageOf(stage: Stage): BoardStage | undefined {
  const { place } = stage.layout;
  if (place === undefined) return undefined;
  let planned: readonly PlannedLink[] | undefined;
  const board: BoardStage = {
    ...stage,
    place,
    links() {
      planned ??= planLinks(board);
      return planned;
    },
  };
  return board;
}

/** The candidates with marks, and how far each has come forward. */
function involvedIn(standing: readonly Standing[]): Map<Candidate, number> {
  const involved = new Map<Candidate, number>();
  for (const { mark, ink } of standing) {
    for (const candidate of candidatesOfMark(mark.shape)) {
      involved.set(candidate, Math.max(involved.get(candidate) ?? 0, Math.min(1, ink.progress) * ink.alpha));
    }
  }
  return involved;
}
