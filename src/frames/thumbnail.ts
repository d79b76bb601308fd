/**
 * A thumbnail: the picture of a step next to a large title. It is seen only a few centimetres wide, so it has few
 * words, and the board takes the whole height; the lower right corner, where sites overlay a video's length (common
 * practice), stays free.
 */

import type { Context2D } from '../picture/context.ts';
import type { Drawing } from '../picture/ink.ts';
import { fitText, type SetText, type Setting, writeLines } from '../picture/type.ts';
import type { Look } from '../scene/look.ts';
import type { BoardShape } from '../scene/scene.ts';
import type { Film } from '../timeline/film.ts';
import { paint } from './paint.ts';

/** In pixels: the size video sites ask for (common practice). */
export const thumbnailSize = { width: 1280, height: 720 } as const;

export interface ThumbnailWords {
  readonly title: string;
  /** Above it, in quiet text: what the step is a part of. */
  readonly lesson: string | undefined;
  /** Below it: what it is an example of. */
  readonly argument: string | undefined;
}

const margin = 44;
const gap = 52;
/** The height of the corner that is left free. */
const cornerHeight = 76;
/** The height of the stamp on an unproved step, including its distance from other words. */
const stampHeight = 270;

/** The place of the board on a thumbnail, for a grid with that many cells across. */
export function thumbnailBoard(cells: number): BoardShape {
  const side = Math.floor((thumbnailSize.height - 2 * margin) / cells) * cells;
  return { kind: 'square', left: margin, top: (thumbnailSize.height - side) / 2, side };
}

/** Paints the drawing of a film of this size and board that has no words of its own, and the words next to it. */
export function paintThumbnail(
  context: Context2D,
  film: Film,
  look: Look,
  drawing: Drawing,
  words: ThumbnailWords,
): void {
  paint(context, film, look, drawing);
  const isStamped = drawing.marks.some(({ index }) => film.marks[index]?.shape.kind === 'stamp');
  const left = thumbnailSize.height + gap - margin + margin / 2;
  const box = {
    left,
    right: thumbnailSize.width - margin,
    top: margin,
    bottom: thumbnailSize.height - (isStamped ? stampHeight : cornerHeight),
  };
  const { colours } = look;
  const set = blocksIn(context, look, words, box.right - box.left, box.bottom - box.top);
  const { lesson, title, argument } = set;
  const height = heightOf(set);
  let top = box.top + Math.max(0, (box.bottom - box.top - height) / 2);
  if (lesson !== undefined) {
    writeLines(context, lesson, left, top, colours.quietText, 1);
    top += lesson.height + spaces.lesson;
  }
  writeLines(context, title, left, top, colours.text, 1);
  top += title.height + spaces.rule;
  if (argument === undefined) return;
  context.globalAlpha = 1;
  context.fillStyle = colours.placement;
  context.fillRect(left, top, ruleWidth, ruleHeight);
  writeLines(context, argument, left, top + ruleHeight + spaces.argument, colours.text, 1);
}

const spaces = { lesson: 34, rule: 18, argument: 32 };
const [ruleWidth, ruleHeight] = [96, 10];

interface Blocks {
  readonly lesson: SetText | undefined;
  readonly title: SetText;
  readonly argument: SetText | undefined;
}

/** The title, as large as possible in the room that the other words leave. */
function blocksIn(context: Context2D, look: Look, words: ThumbnailWords, width: number, height: number): Blocks {
  const { family } = look.type;
  const set = (
    text: string,
    setting: Omit<Setting, 'family'>,
    room: { height: number; lines: number; least: number },
  ) => fitText(context, text, { family, ...setting }, { width, ...room });
  const lesson =
    words.lesson === undefined
      ? undefined
      : set(words.lesson, { weight: 500, px: 38 }, { height: 100, lines: 2, least: 0.7 });
  const argument =
    words.argument === undefined
      ? undefined
      : set(words.argument, { weight: 600, px: 52 }, { height: 130, lines: 2, least: 0.6 });
  const others = heightOf({
    lesson,
    title: { lines: [], setting: { family, weight: 700, px: 0 }, leading: 0, height: 0 },
    argument,
  });
  const title = set(words.title, { weight: 700, px: 124 }, { height: height - others, lines: 3, least: 0.35 });
  return { lesson, title: tightened(title), argument };
}

/** Large text has tighter line spacing. */
function tightened(set: SetText): SetText {
  const leading = set.leading * 0.86;
  return { ...set, leading, height: set.height - Math.max(0, set.lines.length - 1) * (set.leading - leading) };
}

function heightOf({ lesson, title, argument }: Blocks): number {
  const above = lesson === undefined ? 0 : lesson.height + spaces.lesson;
  const below = argument === undefined ? 0 : spaces.rule + ruleHeight + spaces.argument + argument.height;
  return above + title.height + below;
}
