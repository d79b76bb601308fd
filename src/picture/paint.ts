/**
 * Paints a drawing: one picture on the canvas that it is handed. The canvas is cleared first; with `overlay` and
 * `writing` what is not marked stays transparent.
 *
 * Order, from below: tints, grid, outlines, digits, the veil of a focus, marks, links, ghosts, strikes, words, the stamp.
 */
import { Bug } from '../grid/bug.ts';
import type { Candidate } from '../grid/candidates.ts';
import type { Look } from '../scene/look.ts';
import type { Film } from '../timeline/film.ts';
import { candidatesOfMark } from '../timeline/mark-candidates.ts';
import { roomBesideCallouts } from './callout-plan.ts';
import type { Context2D } from './context.ts';
import { paintCoordinates } from './coordinates.ts';
import { paintForwardDigits, paintInvolvedDigits, paintSmallDigits, paintStanding, paintWritten } from './digits.ts';
import type { Drawing } from './drawing.ts';
import { paintGround, paintLines } from './grid-lines.ts';
import { layoutOf } from './layout.ts';
import { planLinks } from './link-plan.ts';
import { paintCallouts } from './marks/callout.ts';
import { paintCircles, paintDigitRings } from './marks/circle.ts';
import { paintClash } from './marks/clash.ts';
import { paintFills } from './marks/fill.ts';
import { paintVeil } from './marks/focus.ts';
import { paintGhost } from './marks/ghost.ts';
import { paintTelling } from './marks/heading.ts';
import { paintLabels } from './marks/label.ts';
import { paintLink, paintNodes } from './marks/link.ts';
import { paintOpens } from './marks/opens.ts';
import { paintOutline } from './marks/outline.ts';
import { paintPlacement } from './marks/place.ts';
import { paintReach } from './marks/reach.ts';
import { paintSaid } from './marks/said.ts';
import { paintSight } from './marks/sight.ts';
import { paintStamp, stageBesidesStamp } from './marks/stamp.ts';
import { paintStrike } from './marks/strike.ts';
import { roomsOf } from './ring-room.ts';
import { unitOf } from './safe-area.ts';
import type { BoardStage, Stage, Standing } from './stage.ts';

/** Paints the drawing over the whole canvas, which must be of the film's size. */
export function paint(context: Context2D, film: Film, look: Look, drawing: Drawing): void {
  const stage = stageOf(context, film, look, drawing);
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.globalAlpha = 1;
  // In two parts: Cairo takes note of a canvas that was cleared at one go, and rounds the first thing laid on it otherwise.
  const half = Math.floor(film.height / 2);
  context.clearRect(0, 0, film.width, half);
  context.clearRect(0, half, film.width, film.height - half);
  if (film.draw === 'board') {
    context.fillStyle = look.colours.frame;
    context.fillRect(0, 0, film.width, film.height);
  }
  const { place } = stage.layout;
  if (place !== undefined) paintBoard({ ...stage, place });
  paintWords(stageBesidesStamp(stage));
  for (const standing of stage.standing) paintStamp(stage, standing);
  context.restore();
}

function stageOf(context: Context2D, film: Film, look: Look, drawing: Drawing): Stage {
  const standing = drawing.marks.map((ink): Standing => {
    const mark = film.marks[ink.index];
    if (mark === undefined) throw new Bug(`the film has no mark ${ink.index}`);
    return { mark, ink };
  });
  const layout = layoutOf(film, drawing.board);
  const rooms = roomsOf(film, look, standing);
  return { context, film, look, drawing, layout, unit: unitOf(film), standing, involved: involvedIn(standing), rooms };
}

function paintBoard(stage: BoardStage): void {
  const { film, standing } = stage;
  const each = (paintMark: (stage: BoardStage, standing: Standing) => void) => {
    for (const one of standing) paintMark(stage, one);
  };
  const whole = film.draw === 'board';
  if (film.coordinates) paintCoordinates(stage);
  if (whole) paintGround(stage);
  paintFills(stage);
  each((on, one) => paintSight(on, one, 'band'));
  each((on, one) => paintPlacement(on, one, 'tint'));
  paintCircles(stage, 'discs');
  paintDigitRings(stage, 'discs');
  each((on, one) => paintStrike(on, one, 'disc'));
  if (whole) paintLines(stage);
  each(paintOutline);
  // Under the digits: a neck may have to pass some.
  paintNodes(stage, 'hulls');
  if (whole) paintStanding(stage);
  if (film.draw !== 'overlay') {
    paintSmallDigits(stage);
    paintWritten(stage);
  }
  paintVeil(stage);
  if (film.small === 'whole') paintInvolvedDigits(stage);
  each((on, one) => paintSight(on, one, 'arrows'));
  each((on, one) => paintPlacement(on, one, 'frame'));
  each(paintOpens);
  paintCircles(stage, 'rings');
  paintDigitRings(stage, 'rings');
  paintNodes(stage, 'rims');
  const planned = planLinks(stage);
  each((on, one) => paintReach(on, one, planned));
  each((on, one) => paintLink(on, one, planned));
  each(paintGhost);
  if (film.draw !== 'overlay') paintForwardDigits(stage);
  each(paintClash);
  each((on, one) => paintStrike(on, one, 'slash'));
  paintLabels(stage);
}

function paintWords(stage: Stage): void {
  const { telling, callout } = stage.layout;
  paintSaid(stage);
  paintCallouts(stage);
  if (telling !== undefined) paintTelling(stage, telling === callout ? roomBesideCallouts(stage) : telling);
}

/** The candidates that bear marks, and how far each has come forward. */
function involvedIn(standing: readonly Standing[]): Map<Candidate, number> {
  const involved = new Map<Candidate, number>();
  for (const { mark, ink } of standing) {
    for (const candidate of candidatesOfMark(mark.shape)) {
      involved.set(candidate, Math.max(involved.get(candidate) ?? 0, Math.min(1, ink.progress) * ink.alpha));
    }
  }
  return involved;
}
