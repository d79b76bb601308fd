/**
 * What is being presented: the lesson's title and progress, the step's title, its argument, its conclusions. With a
 * board drawn whole they are on the frame; over a recording only the step's title, on a card.
 */
import type { Heading } from '../timeline/film.ts';
import type { Box } from './board-place.ts';
import { falseStepTag, paintFalseStepTag } from './false-step-tag.ts';
import { isRightToLeft } from './line-breaks.ts';
import type { Stage } from './stage.ts';
import { paintTitleCard } from './title-card.ts';
import { fitText, type SetText, writeLines } from './type.ts';

/** Paints in the box, from the top down. */
export function paintHeading(stage: Stage, box: Box): void {
  if (stage.film.draw === 'board') paintWhole(stage, box);
  else paintTitleCard(stage, box);
}

interface Piece {
  readonly set: SetText;
  readonly colour: string;
  readonly alpha: number;
  /** Free space before it. */
  readonly before: number;
  /** Of a tag: the ground on each side of its words. */
  readonly tagPad?: number;
}

type LessonWords = 'title and credit' | 'title' | 'neither';

/**
 * What is tried in turn: on an upright frame, which is held in the hand, larger words if there is much room. If room is
 * short, the credit is dropped first, then everything gets a little smaller; only then the lesson's title is dropped.
 */
const attempts: readonly { readonly scale: number; readonly lesson: LessonWords }[] = [
  ...[1.5, 1.3, 1].map((scale) => ({ scale, lesson: 'title and credit' as const })),
  ...[1, 0.85].map((scale) => ({ scale, lesson: 'title' as const })),
  ...[1, 0.85, 0.7, 0.6, 0.5].map((scale) => ({ scale, lesson: 'neither' as const })),
];

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
      before: 14 * stage.unit * scale,
      alpha: 1,
    });
  }
  return pieces;
}

function stepPieces(stage: Stage, heading: Heading, box: Box, scale: number, alpha: number): Piece[] {
  const { type, colours } = stage.look;
  const gap = (part: number) => part * stage.unit * scale;
  const pieces: Piece[] = [];
  if (heading.isFalseStep) {
    const { set, pad } = falseStepTag(stage, box.right - box.left, scale);
    pieces.push({ set, colour: colours.text, before: gap(40), alpha, tagPad: pad });
  }
  if (heading.title !== undefined) {
    pieces.push({
      ...piece(stage, heading.title, type.headingPx * scale, 600, box, 2),
      colour: colours.text,
      before: gap(heading.isFalseStep ? 24 : 49),
      alpha,
    });
  }
  if (heading.argument !== undefined) {
    pieces.push({
      ...piece(stage, heading.argument, type.bodyPx * scale, 500, box, 2),
      colour: colours.quietText,
      before: gap(heading.title === undefined && !heading.isFalseStep ? 49 : 22),
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
  const room = { width: box.right - box.left, height: box.bottom - box.top, lines, least: 0.6 };
  const set = fitText(stage.context, text, setting, room);
  // In a right-to-left lesson, names and notation are on the right too.
  return { set: isRightToLeft(lessonText(stage)) ? { ...set, rightAt: room.width } : set };
}

function lessonText({ film, drawing }: Stage): string {
  return film.title ?? film.headings[drawing.headings[0]?.index ?? 0]?.title ?? '';
}

/** As many of the pieces, from the first, as fit. */
function within(pieces: readonly Piece[], height: number): Piece[] {
  let used = 0;
  const count = pieces.findIndex((piece) => {
    used += ownHeight(piece) + piece.before;
    return used > height;
  });
  return pieces.slice(0, count < 0 ? pieces.length : count);
}

function heightOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + ownHeight(piece) + piece.before, 0);
}

function paintPieces(stage: Stage, pieces: readonly Piece[], left: number, top: number): number {
  let y = top;
  for (const piece of pieces) {
    const { set, colour, alpha, before, tagPad } = piece;
    y += before;
    if (tagPad === undefined) writeLines(stage.context, set, left, y, colour, alpha);
    else paintFalseStepTag(stage, { set, pad: tagPad }, left, y, alpha);
    y += ownHeight(piece);
  }
  return y;
}

function ownHeight({ set, tagPad }: Piece): number {
  return set.height + 2 * (tagPad ?? 0);
}

/** In pixels of a frame whose shorter side is 1080. */
const ruleHeight = 5;

/** A rule under the lesson's title, one part per step, those reached in full ink; returns where it ends. */
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
