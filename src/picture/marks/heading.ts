/**
 * What is told now: the lesson's title and how far it has come, the step's title, its argument, its conclusions.
 * On a board drawn whole they stand on the frame; over a recording the step's title alone, on a card.
 */
import type { Heading } from '../../timeline/film.ts';
import type { Box } from '../board-place.ts';
import { paintCard } from '../card.ts';
import type { Stage } from '../stage.ts';
import { fitText, type SetText, widest, writeLines } from '../type.ts';

/** Paints within the box, from its top down. */
export function paintTelling(stage: Stage, box: Box): void {
  if (stage.film.draw === 'board') paintWhole(stage, box);
  else paintTitleCard(stage, box);
}

interface Piece {
  readonly set: SetText;
  readonly colour: string;
  readonly alpha: number;
  /** Free space before it. */
  readonly before: number;
}

type LessonWords = 'title and credit' | 'title' | 'neither';
const wholeLesson: readonly LessonWords[] = ['title and credit'];

/**
 * What is tried in turn: on an upright frame, which is looked at in the hand, larger words where they have much room.
 * Where room is short the credit goes first, then the lesson's title, then all gets smaller.
 */
const attempts = [1.5, 1.3, 1, 0.85, 0.7, 0.6, 0.5].flatMap((scale) =>
  (scale > 1 ? wholeLesson : [...wholeLesson, 'title' as const, 'neither' as const]).map((lesson) => ({
    scale,
    lesson,
  })),
);

function paintWhole(stage: Stage, box: Box): void {
  const isUpright = stage.film.height > stage.film.width;
  const fitting = isUpright ? (box.bottom - box.top) / (390 * stage.unit) : 1;
  const tried = attempts
    .filter(({ scale }) => scale <= Math.max(1, fitting))
    .map(({ scale, lesson }) => ({ scale, ...piecesOf(stage, box, scale, lesson) }));
  const fits = tried.find(({ height }) => height <= box.bottom - box.top) ?? tried.at(-1);
  if (fits === undefined) return;
  const below = paintPieces(stage, fits.lesson, box.left, box.top);
  const progress = paintProgress(stage, box, fits.lesson.length === 0 ? below : below + 22 * stage.unit * fits.scale);
  for (const pieces of fits.steps) paintPieces(stage, within(pieces, box.bottom - progress), box.left, progress);
}

function piecesOf(stage: Stage, box: Box, scale: number, wanted: LessonWords) {
  const lesson = lessonPieces(stage, box, scale, wanted);
  const steps = stage.drawing.headings.map(({ index, alpha, progress }) => {
    const heading = stage.film.headings[index];
    return heading === undefined ? [] : stepPieces(stage, heading, box, scale, alpha * progress);
  });
  const rule = ruleHeight + (lesson.length === 0 ? 0 : 22 * scale);
  return { lesson, steps, height: heightOf(lesson) + Math.max(0, ...steps.map(heightOf)) + rule * stage.unit };
}

function lessonPieces(stage: Stage, box: Box, scale: number, wanted: LessonWords): Piece[] {
  const { film } = stage;
  const { type, colours } = stage.look;
  const pieces: Piece[] = [];
  if (film.title !== undefined && wanted !== 'neither') {
    pieces.push({
      ...piece(stage, film.title, type.titlePx * scale, 500, box, 2),
      colour: colours.quietText,
      before: 0,
      alpha: 1,
    });
  }
  if (film.credit !== undefined && wanted === 'title and credit') {
    pieces.push({
      ...piece(stage, film.credit, type.labelPx * 0.95 * scale, 400, box, 1),
      colour: colours.quietText,
      before: 4 * stage.unit,
      alpha: 1,
    });
  }
  return pieces;
}

function stepPieces(stage: Stage, heading: Heading, box: Box, scale: number, alpha: number): Piece[] {
  const { type, colours } = stage.look;
  const gap = (part: number) => part * stage.unit * scale;
  const pieces: Piece[] = [];
  if (heading.title !== undefined) {
    pieces.push({
      ...piece(stage, heading.title, type.headingPx * scale, 600, box, 2),
      colour: colours.text,
      before: gap(49),
      alpha,
    });
  }
  if (heading.argument !== undefined) {
    pieces.push({
      ...piece(stage, heading.argument, type.bodyPx * scale, 500, box, 2),
      colour: colours.quietText,
      before: gap(heading.title === undefined ? 49 : 22),
      alpha,
    });
  }
  if (heading.conclusions !== undefined) {
    pieces.push({
      ...piece(stage, heading.conclusions, type.bodyPx * scale, 500, box, 3),
      colour: colours.text,
      before: gap(30),
      alpha,
    });
  }
  return pieces;
}

function piece(
  stage: Stage,
  text: string,
  px: number,
  weight: number,
  box: Box,
  lines: number,
): { readonly set: SetText } {
  const setting = { family: stage.look.type.family, weight, px: px * stage.unit };
  return {
    set: fitText(stage.context, text, setting, {
      width: box.right - box.left,
      height: box.bottom - box.top,
      lines,
      least: 0.6,
    }),
  };
}

/** As many of the pieces, from the first, as have room. */
function within(pieces: readonly Piece[], height: number): Piece[] {
  let used = 0;
  const count = pieces.findIndex(({ set, before }) => {
    used += set.height + before;
    return used > height;
  });
  return pieces.slice(0, count < 0 ? pieces.length : count);
}

function heightOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { set, before }) => sum + set.height + before, 0);
}

function paintPieces(stage: Stage, pieces: readonly Piece[], left: number, top: number): number {
  let y = top;
  for (const { set, colour, alpha, before } of pieces) {
    y += before;
    writeLines(stage.context, set, left, y, colour, alpha);
    y += set.height;
  }
  return y;
}

/** In pixels of a frame whose shorter side is 1080. */
const ruleHeight = 5;

/** A rule under the lesson's title, one part a step, those reached in full ink; returns where it ends. */
function paintProgress(stage: Stage, box: Box, top: number): number {
  const { context, film, drawing, look, unit } = stage;
  const current = drawing.headings.map(({ index }) => film.headings[index]).findLast((each) => each !== undefined);
  if (current === undefined || current.count < 2) return top;
  const width = box.right - box.left;
  const gap = Math.min(6 * unit, (width / current.count) * 0.3);
  const part = (width + gap) / current.count;
  for (let step = 0; step < current.count; step++) {
    context.globalAlpha = step < current.number ? 1 : 0.25;
    context.fillStyle = look.colours.houseLine;
    context.fillRect(box.left + step * part, top, part - gap, ruleHeight * unit);
  }
  context.globalAlpha = 1;
  return top + ruleHeight * unit;
}

function paintTitleCard(stage: Stage, box: Box): void {
  const { look, unit, film, context } = stage;
  const pad = 24 * unit;
  for (const { index, alpha, progress } of stage.drawing.headings) {
    const title = film.headings[index]?.title;
    if (title === undefined) continue;
    const width = Math.min(box.right - box.left, 900 * unit);
    const height = box.bottom - box.top - 2 * pad;
    const setting = { family: look.type.family, weight: 600, px: look.type.titlePx * unit };
    if (height < setting.px) continue;
    const set = fitText(context, title, setting, { width: width - 2 * pad, height, lines: 2, least: 0.6 });
    const right = box.left + widest(context, set) + 2 * pad;
    paintCard(stage, { left: box.left, top: box.top, right, bottom: box.top + set.height + 2 * pad }, alpha * progress);
    writeLines(context, set, box.left + pad, box.top + pad, look.colours.text, alpha * progress);
  }
}
