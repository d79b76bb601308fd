/**
 * Handout pages: several slides on a sheet of paper, each with ruled room for writing next to or below it.
 */
import type { Box } from '../picture/board-place.ts';
import type { Context2D } from '../picture/context.ts';
import type { Look } from '../scene/look.ts';
import type { Deck, Slide } from './deck.ts';
import { layoutSize, type PageSize } from './page-size.ts';
import { paintPicture } from './slide-page.ts';
import { type Block, paintColumn, paintLine, setColumn } from './words.ts';

/** How many slides a sheet may have. */
export const handoutCounts = [2, 4, 6] as const;
export type HandoutCount = (typeof handoutCounts)[number];

const margin = 76;
const gap = 40;
const paper = '#ffffff';
const ink = '#17202a';
const quietInk = '#545c63';
/** Rules to write on: 8 mm apart on A4 (common practice), in units of the layout. */
const ruling = 41;
const ruleColour = '#b9bec4';

/** The slides of each sheet, in order. */
export function sheetsOf(slides: readonly Slide[], count: HandoutCount): (readonly Slide[])[] {
  return Array.from({ length: Math.ceil(slides.length / count) }, (_, sheet) =>
    slides.slice(sheet * count, (sheet + 1) * count),
  );
}

export interface Sheet {
  readonly slides: readonly Slide[];
  readonly number: number;
  readonly count: number;
  readonly perSheet: HandoutCount;
}

/** Paints the sheet over the page, one unit of the context being one of the layout. */
export function paintSheet(context: Context2D, deck: Deck, sheet: Sheet, size: PageSize): void {
  const { width, height } = layoutSize(size);
  context.globalAlpha = 1;
  context.fillStyle = paper;
  context.fillRect(0, 0, width, height);
  const top = paintSheetHead(context, deck, sheet, width);
  const columns = sheet.perSheet === 6 ? 2 : 1;
  const rows = sheet.perSheet / columns;
  const cellWidth = (width - 2 * margin - (columns - 1) * gap) / columns;
  const cellHeight = (height - margin - top - (rows - 1) * gap) / rows;
  sheet.slides.forEach((slide, index) => {
    const left = margin + (index % columns) * (cellWidth + gap);
    const above = top + Math.floor(index / columns) * (cellHeight + gap);
    const box = { left, top: above, right: left + cellWidth, bottom: above + cellHeight };
    if (columns === 1) paintBeside(context, deck, slide, box);
    else paintBelow(context, deck, slide, box);
  });
}

function paintSheetHead(context: Context2D, deck: Deck, { number, count }: Sheet, width: number): number {
  const family = deck.look.type.family;
  const right = width - margin;
  const title = { family, weight: 600, px: 30 };
  paintLine(context, deck.title ?? 'Handout', title, { left: margin, right: right - 330, top: margin - 8 }, ink);
  const page = [deck.credit, `${number} / ${count}`].filter((text) => text !== undefined).join(' · ');
  const quiet = { family, weight: 400, px: 22 };
  paintLine(context, page, quiet, { left: right - 320, right, top: margin - 4, align: 'right' }, quietInk);
  context.fillStyle = ink;
  context.fillRect(margin, margin + 34, width - 2 * margin, 2);
  return margin + 66;
}

/** The board on the left, words and rules next to it. */
function paintBeside(context: Context2D, deck: Deck, slide: Slide, box: Box): void {
  const side = Math.min(box.bottom - box.top, (box.right - box.left) * 0.58);
  paintPicture(context, deck, slide, { left: box.left, top: box.top, side }, onPaper(deck.look));
  const inset = side * 0.025;
  const words = { ...box, left: box.left + side + 30, top: box.top + inset };
  const below = paintSlideWords(context, deck, slide, { ...words, bottom: words.top + side * 0.66 }, 'all');
  paintRules(context, { ...words, top: below + 10, bottom: box.top + side - inset });
  paintRules(context, { ...box, top: box.top + side + 6 });
}

/** Words, the board below them, and rules at the bottom. */
function paintBelow(context: Context2D, deck: Deck, slide: Slide, box: Box): void {
  const side = Math.min(box.right - box.left, (box.bottom - box.top) * 0.6);
  const bottom = box.bottom - 2 * ruling - side;
  paintSlideWords(context, deck, slide, { ...box, bottom: bottom - 6 }, 'brief');
  const left = box.left - side * 0.025;
  const picture = { left, top: bottom + 4, side };
  paintPicture(context, deck, slide, picture, onPaper(deck.look));
  const beside = { ...box, left: left + side + 12, top: bottom + 4 };
  if (beside.right - beside.left > 60) paintRules(context, { ...beside, bottom: bottom + side });
  paintRules(context, { ...box, top: bottom + side });
}

/** Returns where the words end. */
function paintSlideWords(context: Context2D, deck: Deck, slide: Slide, box: Box, words: Words): number {
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const column = setColumn(context, deck.look.type.family, blocksOf(slide, words), { width, height });
  paintColumn(context, column, box.left, box.top);
  return box.top + column.height;
}

/** With small boards, there are few words, and they are small. */
type Words = 'all' | 'brief';

function blocksOf(slide: Slide, words: Words): Block[] {
  const [isSaid, scale] = words === 'all' ? [true, 1] : [false, 0.8];
  const block = (text: string, px: number, weight: number, before: number, lines: number, colour = ink): Block => ({
    text,
    px: px * scale,
    weight,
    before,
    lines,
    colour,
    // Conclusions are entirely notation.
    notation: weight < 600,
  });
  const blocks = [block(`${slide.number}. ${slide.heading}`, 31, 600, 0, 2)];
  if (slide.argument !== undefined) blocks.push(block(slide.argument, 24, 500, 10, 1, quietInk));
  if (slide.question !== undefined) blocks.push(block(slide.question, 27, 500, 14, 3));
  if (slide.conclusions.length > 0) blocks.push(block(slide.conclusions.join(' '), 27, 600, 16, 3));
  if (isSaid && slide.says !== undefined) blocks.push(block(slide.says, 22, 400, 16, 6, ink));
  for (const note of isSaid ? slide.notes : []) blocks.push(block(note.text, 22, 500, 14, 3));
  if (isSaid && slide.remark !== undefined) blocks.push(block(slide.remark, 20, 400, 12, 2, quietInk));
  return blocks;
}

function paintRules(context: Context2D, { left, right, top, bottom }: Box): void {
  context.fillStyle = ruleColour;
  const count = Math.floor((bottom - top) / ruling + 1e-6);
  for (let rule = 0; rule < count; rule++) context.fillRect(left, bottom - 1 - rule * ruling, right - left, 1.5);
}

/** A light look has no background on paper. */
function onPaper(look: Look): Look {
  const { frame } = look.colours;
  const light = [1, 3, 5].every((at) => Number.parseInt(frame.slice(at, at + 2), 16) > 150);
  return light ? { ...look, colours: { ...look.colours, frame: paper } } : look;
}
