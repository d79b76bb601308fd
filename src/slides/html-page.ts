/**
 * A deck as one page of HTML: every slide a section with its picture as SVG, its words as text, and a description of
 * the picture for anyone who cannot see it. It is complete without scripts; with them it shows one slide at a time and
 * plays the motion.
 */

import { paint } from '../frames/paint.ts';
import type { Context2D } from '../picture/context.ts';
import { runsOf } from '../picture/notation-runs.ts';
import type { AnswerPage } from './answer-page.ts';
import { type Answer, type Deck, drawingOf, inWordsOf, type Slide } from './deck.ts';
import { filmAsText } from './film-text.ts';
import { styleOf } from './html-style.ts';
import type { PageSize } from './page-size.ts';
import { pictureSide } from './picture-side.ts';
import { conclusionLines, slideLayout, textBlocks } from './slide-page.ts';
import { escaped, SvgContext } from './svg-context.ts';
import { setColumn } from './words.ts';

export interface HtmlParts {
  readonly size: PageSize;
  /** A tag of BCP 47. */
  readonly language: string;
  /** Rules for the typeface, with the fonts embedded. */
  readonly fonts: string;
  /** The program of the page. */
  readonly player: string;
  /** The player's digest for a content security policy: `sha256-...` (W3C, CSP 3, 2.3.1). */
  readonly playerDigest: string;
}

/** Up to the first slide. */
export function htmlHead(deck: Deck, { size, language, fonts, playerDigest }: HtmlParts): string {
  const title = escaped(deck.title ?? 'Slides');
  const policy = `default-src 'none'; img-src data:; font-src data:; style-src 'unsafe-inline'; script-src '${playerDigest}'`;
  return `<!DOCTYPE html>
<html lang="${escaped(language)}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="proofreel">
<title>${title}</title>
<style>${styleOf(deck.look, size, fonts)}</style>
</head>
<body>
<header class="bar"><h1 dir="auto">${title}</h1>
<output class="unseen"></output>
<div class="buttons"><button type="button" data-does="back">Back</button><button type="button" data-does="next">Next</button><button type="button" data-does="play">Play</button><button type="button" data-does="full">Full screen</button></div>
</header>
<main>
`;
}

/** One slide. `measure` measures text in the page's typeface. */
export function htmlSlide(deck: Deck, slide: Slide, { size }: HtmlParts, measure: Context2D): string {
  const id = escaped(slide.id);
  // Two slides of one step share a heading, but each has its own name.
  const name = escaped(`Slide ${deck.slides.indexOf(slide) + 1}: ${slide.heading}`);
  const motion = slide.from < slide.frame ? ` data-from="${slide.from}" data-until="${slide.frame}"` : '';
  return `<section class="slide" id="${id}" tabindex="-1" aria-label="${name}"${motion}>
${pictureOf(deck, slide, measure)}
<div class="words" style="--s: ${scaleOf(deck, slide, size, measure)}">
${wordsOf(deck, slide)}
</div>
</section>
`;
}

/** A page of answers; `index` counts from 0. */
export function htmlAnswers(answers: readonly Answer[], index: number): string {
  const id = `answers-${index + 1}`;
  const entries = answers.map(({ number, heading, argument, texts, says }) => {
    const name = argument === undefined ? heading : `${heading} (${argument})`;
    const said = says === undefined ? '' : `<p dir="auto">${withNotation(says)}</p>`;
    return `<section><h3 dir="auto">${number}. ${escaped(name)}</h3><b>${escaped(texts.join(' '))}</b>${said}</section>`;
  });
  return `<section class="slide answers" id="${id}" tabindex="-1" aria-label="Answers, page ${index + 1}">
<h2>Answers</h2>
<div>${entries.join('\n')}</div>
</section>
`;
}

/** From the last slide on. */
export function htmlTail(deck: Deck, { player }: HtmlParts): string {
  const data = `{"look":${JSON.stringify(deck.look)},"film":${filmAsText(deck.film)}}`;
  return `</main>
<script type="application/json" id="lesson">${data.replaceAll('<', '\\u003c')}</script>
<script>${player}</script>
</body>
</html>
`;
}

/** The answers of each laid-out page, in order. */
export function answersOn(deck: Deck, pages: readonly AnswerPage[]): (readonly Answer[])[] {
  let first = 0;
  return pages.map(({ entries }) => {
    const answers = deck.answers.slice(first, first + entries.length);
    first += entries.length;
    return answers;
  });
}

function pictureOf(deck: Deck, slide: Slide, measure: Context2D): string {
  const { film, look } = deck;
  const drawing = drawingOf(deck, slide);
  const context = new SvgContext(measure);
  paint(context, film, look, drawing);
  const { marks, rows } = inWordsOf(deck, slide);
  return `<figure class="picture"><svg viewBox="0 0 ${pictureSide} ${pictureSide}" role="img" aria-label="${escaped(marks)}">${context.content()}</svg>
<figcaption class="unseen">The digits on the board. ${escaped(rows.join(' '))}</figcaption></figure>`;
}

function wordsOf({ title, credit, look }: Deck, slide: Slide): string {
  const { number, count } = slide;
  const paragraph = (name: string, text: string | undefined) =>
    text === undefined ? '' : `<p class="${name}" dir="auto">${withNotation(text)}</p>\n`;
  const way = Array.from({ length: count }, (_, step) => (step < number ? '<i class="gone"></i>' : '<i></i>'));
  const lines = conclusionLines(slide).map((text) => `<li>${escaped(text)}</li>`);
  const follows = lines.length === 0 ? '' : `<ul class="follows">${lines.join('')}</ul>\n`;
  const notes = slide.notes.map(({ text, group }) => {
    const bar = group === undefined ? look.colours.plain : look.colours.groups[group.colour];
    return `<p class="note" style="--bar: ${bar}" dir="auto">${withNotation(text)}</p>\n`;
  });
  return [
    `<p class="place"><span dir="auto">${escaped(title ?? credit ?? '')}</span><span>${number} / ${count}</span></p>\n`,
    `<div class="way" aria-hidden="true">${way.join('')}</div>\n`,
    `<h2 dir="auto">${escaped(slide.heading)}</h2>\n`,
    paragraph('argument', slide.argument),
    paragraph('question', slide.question),
    follows,
    paragraph('remark', slide.remark),
    ...notes,
    paragraph('says', slide.says),
  ].join('');
}

/** The text with its cells, candidates and links set as notation, which keeps its direction in right-to-left text. */
function withNotation(text: string): string {
  return runsOf(text)
    .map((run) => (run.isNotation ? `<bdi class="named">${escaped(run.text)}</bdi>` : escaped(run.text)))
    .join('');
}

/** The factor of the full size at which the words fit. */
function scaleOf(deck: Deck, slide: Slide, size: PageSize, measure: Context2D): number {
  const { words } = slideLayout(size);
  const { look } = deck;
  const said = slide.says === undefined ? [] : [saidBlock(slide.says, look.colours.text)];
  const blocks = [...textBlocks(deck, slide), ...said];
  const room = { width: words.right - words.left, height: (words.bottom - words.top - 98) * 0.94 };
  return setColumn(measure, look.type.family, blocks, room).scale;
}

function saidBlock(text: string, colour: string) {
  return { text, px: 29, weight: 400, colour, before: 60, lines: 7 };
}
