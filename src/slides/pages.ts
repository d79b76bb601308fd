/**
 * The pages of a deck, in order, each painted on request: the contents of a PDF or a folder of pictures.
 */
import type { Context2D } from '../picture/context.ts';
import { answerPages, paintAnswers } from './answer-page.ts';
import type { Deck } from './deck.ts';
import { type HandoutCount, paintSheet, sheetsOf } from './handout.ts';
import type { PageSize } from './page-size.ts';
import { paintSlide } from './slide-page.ts';

export interface Page {
  /** A name for its file, without an extension: `03-kite`, `answers-1`. */
  readonly name: string;
  /** Paints over the whole page; one unit of the context is one of the layout. */
  readonly paint: (context: Context2D) => void;
}

/** `measure` is a context that measures text as on the pages. */
export function pagesOf(
  measure: Context2D,
  deck: Deck,
  { size, handout }: { readonly size: PageSize; readonly handout: HandoutCount | undefined },
): Page[] {
  const answers = answerPages(measure, deck, size);
  const front = handout === undefined ? slidePages(deck, size) : sheetPages(deck, size, handout);
  return [
    ...front,
    ...answers.map((page, index) => ({
      name: `answers-${index + 1}`,
      paint: (context: Context2D) => paintAnswers(context, deck, page, { size, onPaper: handout !== undefined }),
    })),
  ];
}

function slidePages(deck: Deck, size: PageSize): Page[] {
  return deck.slides.map((slide, index) => ({
    name: `${numbered(index, deck.slides.length)}-${slide.id}`,
    paint: (context) => paintSlide(context, deck, slide, size),
  }));
}

function sheetPages(deck: Deck, size: PageSize, perSheet: HandoutCount): Page[] {
  const sheets = sheetsOf(deck.slides, perSheet);
  return sheets.map((slides, index) => ({
    name: `sheet-${numbered(index, sheets.length)}`,
    paint: (context) => paintSheet(context, deck, { slides, number: index + 1, count: sheets.length, perSheet }, size),
  }));
}

/** From 1, with as many digits as the last needs, but at least two. */
export function numbered(index: number, count: number): string {
  return String(index + 1).padStart(Math.max(2, String(count).length), '0');
}
