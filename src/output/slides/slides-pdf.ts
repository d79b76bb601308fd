/**
 * Slides and handouts as a PDF: vectors, embedded fonts, text that can be selected and searched.
 */
import { writeFile } from 'node:fs/promises';
import { createCanvas } from 'canvas';
import type { Deck } from '../../slides/deck.ts';
import type { HandoutCount } from '../../slides/handout.ts';
import { layoutSize, type PageSize } from '../../slides/page-size.ts';
import { pagesOf } from '../../slides/pages.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import type { ProgressMeter } from '../machine/progress-meter.ts';
import { registerFonts } from '../pixels/canvas.ts';
import { withLanguage } from './pdf-language.ts';

export interface SlidesOptions {
  readonly size: PageSize;
  readonly handout: HandoutCount | undefined;
  /** Of the scene's text: a tag of BCP 47. */
  readonly language: string;
  readonly meter: (total: number) => ProgressMeter;
  readonly signal: AbortSignal | undefined;
}

/** Writes the file at `path` (absolute); returns how many pages it has. Throws a `MachineFailure`. */
export async function writeSlidesPdf(deck: Deck, path: string, options: SlidesOptions): Promise<number> {
  const { size, handout, language, meter, signal } = options;
  return writeAtomically(path, async (temp) => {
    registerFonts();
    const canvas = createCanvas(size.width, size.height, 'pdf');
    const context = canvas.getContext('2d');
    // As glyphs of embedded fonts and not as outlines, so that text can be selected.
    context.textDrawingMode = 'glyph';
    const pages = pagesOf(context, deck, { size, handout });
    const counted = meter(pages.length);
    const { points } = layoutSize(size);
    for (const [index, page] of pages.entries()) {
      signal?.throwIfAborted();
      if (index > 0) context.addPage(size.width, size.height);
      context.save();
      context.scale(points, points);
      page.paint(context);
      context.restore();
      counted.count(index + 1);
      await breathe();
    }
    // The creation time is fixed, so that the same scene gives the same file.
    const bytes = canvas.toBuffer('application/pdf', {
      title: deck.title ?? 'Slides',
      ...(deck.credit === undefined ? {} : { author: deck.credit }),
      creator: 'proofreel',
      creationDate: new Date(0),
      modDate: new Date(0),
    });
    await writeFile(temp, withLanguage(bytes, language));
    return pages.length;
  });
}

/** Lets an interrupt be handled between two pages. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
