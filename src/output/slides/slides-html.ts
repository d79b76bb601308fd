/**
 * Slides as one self-contained page of HTML: fonts, pictures and program are in the file.
 */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { createCanvas } from 'canvas';
import { build } from 'esbuild';
import { answerPages } from '../../slides/answer-page.ts';
import type { Deck } from '../../slides/deck.ts';
import { answersOn, type HtmlParts, htmlAnswers, htmlHead, htmlSlide, htmlTail } from '../../slides/html-page.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import { fontFamily, fontFiles, registerFonts } from '../pixels/canvas.ts';
import { breathe, type SlidesOptions } from './slides-pdf.ts';
import { asWoff } from './woff.ts';

/** Writes the file at `path` (absolute); returns how many slides it has. Throws a `MachineFailure`. */
export async function writeSlidesHtml(deck: Deck, path: string, options: SlidesOptions): Promise<number> {
  const { size, language, meter, signal } = options;
  return writeAtomically(path, async (temp) => {
    registerFonts();
    const measure = createCanvas(16, 16).getContext('2d');
    const player = await bundledPlayer();
    const digest = `sha256-${createHash('sha256').update(player).digest('base64')}`;
    const parts: HtmlParts = { size, language, fonts: fontRules(), player, playerDigest: digest };
    const answers = answersOn(deck, answerPages(measure, deck, size));
    const counted = meter(deck.slides.length + answers.length);
    const file = await open(temp, 'w');
    try {
      // Slide by slide, so that a long lesson needs no more memory than a short one.
      await put(file, htmlHead(deck, parts));
      for (const [index, slide] of deck.slides.entries()) {
        signal?.throwIfAborted();
        await put(file, htmlSlide(deck, slide, parts, measure));
        counted.count(index + 1);
        await breathe();
      }
      for (const [index, page] of answers.entries()) await put(file, htmlAnswers(page, index));
      await put(file, htmlTail(deck, parts));
    } finally {
      await file.close();
    }
    return deck.slides.length + answers.length;
  });
}

async function put(file: FileHandle, text: string): Promise<void> {
  await file.writeFile(text);
}

/** The program of the page, including the painter; from source or from the build. */
export async function bundledPlayer(): Promise<string> {
  const source = fileURLToPath(new URL('../../player/slides.ts', import.meta.url));
  const entry = existsSync(source) ? source : source.replace(/ts$/, 'js');
  const { outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    minify: true,
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    tsconfigRaw: '{}',
    logLevel: 'silent',
  });
  // A closing tag within a string would end the program.
  return (outputFiles[0]?.text ?? '').replaceAll('</script', '<\\/script').trim();
}

function fontRules(): string {
  return fontFiles()
    .map(({ path, weight, style }) => {
      const data = asWoff(readFileSync(path)).toString('base64');
      return `@font-face { font-family: '${fontFamily}'; font-weight: ${weight}; font-style: ${style}; src: url(data:font/woff;base64,${data}) format('woff'); }`;
    })
    .join('\n');
}
