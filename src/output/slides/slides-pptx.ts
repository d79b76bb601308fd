/**
 * Slides for office programs (Office Open XML, ECMA-376): editable text, pictures as PNG, narration as speaker notes.
 */
import { open } from 'node:fs/promises';
import { createCanvas } from 'canvas';
import pptxgenjs from 'pptxgenjs';
import { isRightToLeft } from '../../picture/line-breaks.ts';
import { answerPages } from '../../slides/answer-page.ts';
import { type Deck, inWordsOf, type Slide } from '../../slides/deck.ts';
import { answersOn } from '../../slides/html-page.ts';
import { layoutSize, type PageSize } from '../../slides/page-size.ts';
import { paintPicture, slideLayout, textBlocks } from '../../slides/slide-page.ts';
import { type Block, setColumn } from '../../slides/words.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import { registerFonts } from '../pixels/canvas.ts';
import { repacked } from './pptx-package.ts';
import { breathe, type SlidesOptions } from './slides-pdf.ts';

// Its types are those of a CommonJS module, but an ES module is loaded.
const Package = pptxgenjs as unknown as typeof pptxgenjs.default;
type Package = InstanceType<typeof Package>;

/** Found on every machine with an office program, or replaced by a typeface of the same widths (common practice). */
const family = 'Arial';
/** Pixels of a picture: about 250 per inch on a slide 7.5 in high. */
const pictureSide = 1600;
const pointsPerInch = 72;

/** Writes the file at `path` (absolute); returns how many slides it has. Throws a `MachineFailure`. */
export async function writeSlidesPptx(deck: Deck, path: string, options: SlidesOptions): Promise<number> {
  const { language, meter, signal } = options;
  return writeAtomically(path, async (temp) => {
    registerFonts();
    const { pptx, count } = packageOf(deck, options);
    const archive = (await pptx.write({ outputType: 'nodebuffer' })) as Buffer;
    const counted = meter(deck.slides.length);
    const canvas = createCanvas(pictureSide, pictureSide);
    const file = await open(temp, 'w');
    try {
      // The pictures are drawn as they are written, one at a time: a long lesson needs no more memory than a short one.
      await repacked(archive, file, {
        language,
        pictureOf: async (number) => {
          signal?.throwIfAborted();
          const slide = deck.slides[number - 1];
          if (slide === undefined) return undefined;
          const place = { left: 0, top: 0, side: pictureSide };
          paintPicture(canvas.getContext('2d'), deck, slide, place, deck.look);
          counted.count(number);
          await breathe();
          return canvas.toBuffer('image/png');
        },
      });
    } finally {
      await file.close();
    }
    return count;
  });
}

/** Everything except the pictures, which are placeholder pixels. */
function packageOf(deck: Deck, { size, language }: SlidesOptions): { readonly pptx: Package; readonly count: number } {
  const pptx = new Package();
  const layout = { name: size.name, width: size.width / pointsPerInch, height: size.height / pointsPerInch };
  pptx.defineLayout(layout);
  pptx.layout = layout.name;
  pptx.theme = { headFontFace: family, bodyFontFace: family };
  pptx.title = deck.title ?? 'Slides';
  pptx.author = deck.credit ?? 'proofreel';
  pptx.company = '';
  pptx.subject = '';
  const { words } = slideLayout(size);
  defineMaster(pptx, deck, 'Step', placeOf(size, { ...words, top: titleTop(words), height: 210 }));
  defineMaster(pptx, deck, 'Answers', placeOf(size, answersTitle(size)));
  const measure = createCanvas(16, 16).getContext('2d');
  for (const slide of deck.slides) addSlide(pptx, deck, slide, { size, language, measure });
  const answers = answersOn(deck, answerPages(measure, deck, size));
  for (const page of answers) addAnswers(pptx, deck, page, { size, language, measure });
  return { pptx, count: deck.slides.length + answers.length };
}

/** A title is positioned by the master, whatever a slide says. */
function defineMaster(pptx: Package, { look }: Deck, name: string, place: ReturnType<typeof placeOf>): void {
  const options = { name: 'title', type: 'title', ...place, margin: 0, valign: 'top' } as const;
  const background = { color: bare(look.colours.frame) };
  pptx.defineSlideMaster({ title: name, background, objects: [{ placeholder: { options, text: '' } }] });
}

/** Where the text under the head begins; the first line of a text box is a little below its edge. */
function titleTop({ top }: { readonly top: number }): number {
  return top + 88;
}

function answersTitle(size: PageSize): Area {
  return { left: answersMargin, right: layoutSize(size).width - answersMargin, top: answersMargin - 20, height: 64 };
}

const answersMargin = 76;

interface Making {
  readonly size: PageSize;
  readonly language: string;
  readonly measure: ReturnType<ReturnType<typeof createCanvas>['getContext']>;
}

/** A placeholder pixel, replaced by the picture when the package is written. */
const pixel =
  'image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

function addSlide(pptx: Package, deck: Deck, slide: Slide, making: Making): void {
  const { size, measure } = making;
  const { look } = deck;
  const { picture, words } = slideLayout(size);
  const page = pptx.addSlide({ masterName: 'Step' });
  const { quietText, houseLine } = look.colours;
  const head = { ...words, height: 32 };
  const way = words.right - words.left;
  const top = titleTop(words) + 8;
  const column = setColumn(measure, look.type.family, textBlocks(deck, slide), {
    width: way,
    height: words.bottom - top,
  });
  const [heading, ...others] = column.blocks;
  // A screen reader reads the title first, and the picture last.
  const titleStyle = heading === undefined ? {} : textStyle(making, { ...heading, px: heading.set.setting.px });
  page.addText(slide.heading, { placeholder: 'title', ...titleStyle });
  const small = (text: string, align: 'left' | 'right') =>
    page.addText(text, { ...textStyle(making, { px: 27, colour: quietText }), ...placeOf(size, head), align });
  small(deck.title ?? deck.credit ?? '', 'left');
  small(`${slide.number} / ${slide.count}`, 'right');
  const rule = (right: number, transparency: number) =>
    page.addShape('rect', {
      ...placeOf(size, { left: words.left, right, top: words.top + 44, height: 4 }),
      fill: { color: bare(houseLine), transparency },
      line: { type: 'none' },
      objectName: 'How far the lesson has come',
    });
  rule(words.right, 78);
  rule(words.left + (way * slide.number) / slide.count, 0);
  for (const block of others) {
    const indent = block.bar === undefined ? 0 : 30;
    const box = {
      left: words.left + indent,
      right: words.right,
      top: top + block.top - 8,
      height: block.set.height + 16,
    };
    const style = textStyle(making, { ...block, px: block.set.setting.px });
    if (block.bar !== undefined)
      page.addShape('rect', {
        ...placeOf(size, { ...box, left: words.left, right: words.left + 8 }),
        fill: { color: bare(block.bar) },
        line: { type: 'none' },
        objectName: 'Bar',
      });
    page.addText(block.text, { ...style, ...placeOf(size, box) });
  }
  const altText = inWordsOf(deck, slide).marks;
  const square = { left: picture.left, top: picture.top, right: picture.left + picture.side, height: picture.side };
  page.addImage({ data: pixel, ...placeOf(size, square), altText, objectName: 'Board' });
  if (slide.says !== undefined) page.addNotes(slide.says);
}

function addAnswers(pptx: Package, deck: Deck, answers: Deck['answers'], making: Making): void {
  const { size, measure } = making;
  const { width, height } = layoutSize(size);
  const { text, quietText } = deck.look.colours;
  const page = pptx.addSlide({ masterName: 'Answers' });
  page.addText('Answers', { placeholder: 'title', ...textStyle(making, { px: 44, colour: text, weight: 600 }) });
  const laidOut = answerPages(measure, { ...deck, answers }, size)[0]?.entries ?? [];
  const columnWidth = (width - 2 * answersMargin - 64) / 2;
  for (const { column, left, top } of laidOut) {
    const runs = column.blocks.map((block) => ({
      text: block.text,
      options: { ...textStyle(making, { ...block, px: block.set.setting.px }), breakLine: true },
    }));
    const box = { left, right: left + columnWidth, top, height: Math.min(column.height + 16, height - top) };
    page.addText(runs, { ...placeOf(size, box), margin: 0, valign: 'top', color: bare(quietText) });
  }
}

/** A block's text is used only for its direction. */
type Styled = Pick<Block, 'px' | 'colour'> & { readonly weight?: number; readonly text?: string };

function textStyle({ size, language }: Making, block: Styled) {
  const { points } = layoutSize(size);
  const isReversed = isRightToLeft(block.text ?? '');
  return {
    fontFace: family,
    // Arial's letters are a little wider.
    fontSize: Math.floor(block.px * points * 0.97 * 2) / 2,
    bold: (block.weight ?? 400) >= 600,
    color: bare(block.colour),
    margin: 0,
    align: isReversed ? ('right' as const) : ('left' as const),
    valign: 'top' as const,
    ...(isReversed ? { rtlMode: true } : {}),
    ...(language === 'en' ? {} : { lang: language }),
  };
}

interface Area {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly height: number;
}

/** In inches. */
function placeOf(size: PageSize, { left, right, top, height }: Area) {
  const inches = (value: number) => Math.round((value * layoutSize(size).points * 1e4) / pointsPerInch) / 1e4;
  return { x: inches(left), y: inches(top), w: inches(right - left), h: inches(height) };
}

/** `RRGGBB`, this format's notation for colours. */
function bare(colour: string): string {
  return colour.slice(1).toUpperCase();
}
