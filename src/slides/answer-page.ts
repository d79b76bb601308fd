/**
 * The answer pages of an exercise: for each question the conclusions, and what is said about them.
 */
import type { Context2D } from '../picture/context.ts';
import type { Answer, Deck } from './deck.ts';
import { layoutSize, type PageSize } from './page-size.ts';
import { type Block, type Column, paintColumn, paintLine, setColumn } from './words.ts';

export interface AnswerPage {
  readonly entries: readonly { readonly column: Column; readonly left: number; readonly top: number }[];
}

const margin = 76;
const gap = 64;
const between = 40;

/** The answers, laid out on as many pages as they need. */
export function answerPages(context: Context2D, deck: Deck, size: PageSize): AnswerPage[] {
  const { width, height } = layoutSize(size);
  const columns = width > height ? 2 : 1;
  const columnWidth = (width - 2 * margin - (columns - 1) * gap) / columns;
  const [above, below] = [margin + 96, height - margin];
  const pages: AnswerPage['entries'][number][][] = [[]];
  let at = 0;
  let top = above;
  for (const answer of deck.answers) {
    const room = { width: columnWidth, height: below - above };
    const column = setColumn(context, deck.look.type.family, blocksOf(deck, answer), room);
    if (top > above && top + column.height > below) {
      at += 1;
      top = above;
      if (at === columns) {
        pages.push([]);
        at = 0;
      }
    }
    pages.at(-1)?.push({ column, left: margin + at * (columnWidth + gap), top });
    top += column.height + between;
  }
  return pages.filter((entries) => entries.length > 0).map((entries) => ({ entries }));
}

/** Paints the page, one unit of the context being one of the layout. */
export function paintAnswers(
  context: Context2D,
  deck: Deck,
  { entries }: AnswerPage,
  { size, onPaper }: { readonly size: PageSize; readonly onPaper: boolean },
): void {
  const { width, height } = layoutSize(size);
  const { colours, type } = deck.look;
  context.globalAlpha = 1;
  context.fillStyle = onPaper ? '#ffffff' : colours.frame;
  context.fillRect(0, 0, width, height);
  const right = width - margin;
  const setting = { family: type.family, weight: 600, px: 44 };
  paintLine(context, 'Answers', setting, { left: margin, right: margin + 300, top: margin - 10 }, colours.text);
  const quiet = { family: type.family, weight: 500, px: 25 };
  const title = deck.title ?? '';
  paintLine(context, title, quiet, { left: margin + 320, right, top: margin + 4, align: 'right' }, colours.quietText);
  context.fillStyle = colours.houseLine;
  context.fillRect(margin, margin + 46, width - 2 * margin, 3);
  for (const { column, left, top } of entries) paintColumn(context, column, left, top);
}

function blocksOf({ look }: Deck, { number, heading, argument, texts, says }: Answer): Block[] {
  const { text: ink, quietText } = look.colours;
  const title = argument === undefined ? heading : `${heading} (${argument})`;
  const blocks: Block[] = [
    { text: `${number}. ${title}`, px: 27, weight: 500, colour: quietText, before: 0, lines: 2 },
    { text: texts.join(' '), px: 32, weight: 600, colour: ink, before: 12, lines: 12 },
  ];
  if (says !== undefined)
    blocks.push({ text: says, px: 24, weight: 400, colour: ink, before: 12, lines: 6, notation: true });
  return blocks;
}
