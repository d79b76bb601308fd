/**
 * Slides and handouts as a folder of PNG pictures, one per page.
 */
import { readdir, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { createCanvas } from 'canvas';
import type { Deck } from '../../slides/deck.ts';
import { layoutSize } from '../../slides/page-size.ts';
import { pagesOf } from '../../slides/pages.ts';
import { writeFolderAtomically } from '../machine/atomic-write.ts';
import { systemCode } from '../machine/machine-failure.ts';
import { registerFonts } from '../pixels/canvas.ts';
import { breathe, type SlidesOptions } from './slides-pdf.ts';

/**
 * Fills the folder at `path` (absolute), replacing any pictures that were there; returns how many pictures it contains.
 */
export async function writeSlidesFolder(deck: Deck, path: string, options: SlidesOptions): Promise<number> {
  const { size, handout, meter, signal } = options;
  return writeFolderAtomically(path, async (temp) => {
    registerFonts();
    const { width, height } = layoutSize(size);
    // Paper is read from closer than a slide, and has smaller text.
    const scale = handout === undefined ? 1 : 1.5;
    const canvas = createCanvas(Math.round(width * scale), Math.round(height * scale));
    const context = canvas.getContext('2d');
    const pages = pagesOf(context, deck, { size, handout });
    const counted = meter(pages.length);
    for (const [index, page] of pages.entries()) {
      signal?.throwIfAborted();
      context.save();
      context.scale(scale, scale);
      page.paint(context);
      context.restore();
      await writeFile(join(temp, `${page.name}.png`), canvas.toBuffer('image/png'));
      counted.count(index + 1);
      await breathe();
    }
    return pages.length;
  });
}

/** Why the folder may not be replaced: it contains something that is not one of our pages. Undefined if it may. */
export async function slidesFolderFault(path: string): Promise<string | undefined> {
  let names: readonly string[];
  try {
    names = await readdir(path);
  } catch (error) {
    if (systemCode(error) === 'ENOENT') return undefined;
    if (systemCode(error) === 'ENOTDIR') return `'${basename(path)}' is a file; give the name of a new folder`;
    throw error;
  }
  const other = names.find((name) => !/^(\d{2,}-|sheet-\d{2,}|answers-\d+).*\.png$/.test(name));
  if (other === undefined) return undefined;
  return `the folder '${basename(path)}' contains '${other}', which is not a slide; slides replace a folder as a whole, so give a new or an empty one`;
}
