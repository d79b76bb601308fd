/**
 * A slide as a page: the board on the left, the words next to it, the spoken sentence below them.
 */

import { paint } from '../frames/paint.ts';
import type { Context2D } from '../picture/context.ts';
import type { Look } from '../scene/look.ts';
import { type Deck, drawingOf, type Slide } from './deck.ts';
import { layoutSize, type PageSize } from './page-size.ts';
import { pictureSide } from './picture-side.ts';
import { drawWithin } from './placed-context.ts';
import { type Block, paintColumn, paintLine, setColumn } from './words.ts';

/** Where things are, in units of the layout. */
export interface SlideLayout {
  readonly width: number;
  readonly height: number;
  readonly picture: { readonly left: number; readonly top: number; readonly side: number };
  readonly words: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
}

const margin = 66;
const gap = 54;
/** The least width of the words. */
const narrowest = 430;

/** The layout of a slide of this size, which is landscape. */
export function slideLayout(size: PageSize): SlideLayout {
  const { width, height } = layoutSize(size);
  const side = Math.min(height - 2 * margin, width - 2 * margin - gap - narrowest);
  const top = (height - side) / 2;
  const left = margin;
  // The board begins a little inside the picture; words are aligned with the board.
  const inset = side * 0.025;
  return {
    width,
    height,
    picture: { left, top, side },
    words: { left: left + side + gap, top: top + inset, right: width - margin, bottom: top + side - inset },
  };
}

/** Paints the slide over the page, one unit of the context being one of the layout. */
export function paintSlide(context: Context2D, deck: Deck, slide: Slide, size: PageSize): void {
  const layout = slideLayout(size);
  const { look } = deck;
  context.globalAlpha = 1;
  context.fillStyle = look.colours.frame;
  context.fillRect(0, 0, layout.width, layout.height);
  paintPicture(context, deck, slide, layout.picture, look);
  const { left, right, bottom } = layout.words;
  const width = right - left;
  const above = paintHead(context, deck, slide, layout.words);
  const said = setColumn(context, look.type.family, saidBlocks(deck, slide), {
    width,
    height: (bottom - above) * 0.45,
  });
  const beneath = said.blocks.length === 0 ? bottom : bottom - said.height - 36;
  const column = setColumn(context, look.type.family, textBlocks(deck, slide), { width, height: beneath - above });
  paintColumn(context, column, left, above);
  if (said.blocks.length > 0) {
    context.fillStyle = look.colours.line;
    context.fillRect(left, bottom - said.height - 24, width, 2);
    paintColumn(context, said, left, bottom - said.height);
  }
}

/** The picture of a slide at its place. */
export function paintPicture(
  context: Context2D,
  deck: Deck,
  slide: Slide,
  { left, top, side }: SlideLayout['picture'],
  look: Look,
): void {
  drawWithin(context, { left, top, scale: side / pictureSide }, (inner) =>
    paint(inner, deck.film, look, drawingOf(deck, slide)),
  );
}

/** The lesson's title, the slide's number and how far the lesson has come; returns where the words continue. */
function paintHead(context: Context2D, deck: Deck, slide: Slide, words: SlideLayout['words']): number {
  const { colours, type } = deck.look;
  const { left, right, top } = words;
  const setting = { family: type.family, weight: 500, px: 27 };
  const number = `${slide.number} / ${slide.count}`;
  paintLine(context, number, setting, { left: right - 150, right, top, align: 'right' }, colours.quietText);
  paintLine(context, deck.title ?? deck.credit ?? '', setting, { left, right: right - 160, top }, colours.quietText);
  const rule = top + 42;
  const space = Math.min(5, ((right - left) / slide.count) * 0.3);
  const part = (right - left + space) / slide.count;
  context.fillStyle = colours.houseLine;
  for (let step = 0; step < slide.count; step++) {
    context.globalAlpha = step < slide.number ? 1 : 0.22;
    context.fillRect(left + step * part, rule, part - space, 4);
  }
  context.globalAlpha = 1;
  return rule + 56;
}

/** The heading, the argument, the conclusions or the question, and the notes. */
export function textBlocks({ look }: Deck, slide: Slide): Block[] {
  const { colours } = look;
  const blocks: Block[] = [{ text: slide.heading, px: 60, weight: 600, colour: colours.text, before: 0, lines: 3 }];
  if (slide.argument !== undefined)
    blocks.push({ text: slide.argument, px: 36, weight: 500, colour: colours.quietText, before: 22, lines: 2 });
  if (slide.question !== undefined)
    blocks.push({
      text: slide.question,
      px: 46,
      weight: 500,
      colour: colours.text,
      before: 54,
      bar: colours.placement,
      lines: 5,
      notation: true,
    });
  blocks.push(
    ...conclusionLines(slide).map((text, line) => ({
      text,
      px: 44,
      weight: 600,
      colour: colours.text,
      before: line === 0 ? 46 : 18,
      lines: 4,
    })),
  );
  if (slide.remark !== undefined)
    blocks.push({ text: slide.remark, px: 27, weight: 500, colour: colours.quietText, before: 28, lines: 3 });
  for (const { text, group } of slide.notes) {
    const bar = group === undefined ? colours.plain : colours.groups[group.colour];
    blocks.push({ text, px: 32, weight: 500, colour: colours.text, before: 40, bar, lines: 4, notation: true });
  }
  return blocks;
}

/** A few conclusions get a line each; many are set one after the other. */
export function conclusionLines({ conclusions }: Slide): readonly string[] {
  return conclusions.length <= 4 ? conclusions : [conclusions.join(' ')];
}

function saidBlocks({ look }: Deck, { says }: Slide): Block[] {
  if (says === undefined) return [];
  return [{ text: says, px: 29, weight: 400, colour: look.colours.text, before: 0, lines: 7, notation: true }];
}
