/**
 * Words on a page: blocks set one below the other at the largest size at which all fit.
 */
import type { Box } from '../picture/board-place.ts';
import type { Context2D } from '../picture/context.ts';
import { fitText, type SetText, type Setting, writeLines } from '../picture/type.ts';

/** A paragraph. Lengths are in units of the layout. */
export interface Block {
  readonly text: string;
  readonly px: number;
  readonly weight: number;
  readonly colour: string;
  /** Free space before it; ignored for the first block. */
  readonly before: number;
  /** The colour of a bar along its side, for a note. */
  readonly bar?: string;
  /** Whether cells, candidates and links in it are set as notation. */
  readonly notation?: boolean;
  /** The most lines at full size. */
  readonly lines: number;
}

export interface SetBlock extends Block {
  readonly set: SetText;
  /** From the first block's top. */
  readonly top: number;
}

export interface Column {
  readonly blocks: readonly SetBlock[];
  readonly height: number;
  /** The factor of the full size at which they are set. */
  readonly scale: number;
}

/** Between a bar and its words. */
const barWidth = 8;
const barRoom = 30;

/** The blocks in a column of this width, scaled down together until they are no higher than `height`. */
export function setColumn(
  context: Context2D,
  family: string,
  blocks: readonly Block[],
  { width, height }: { readonly width: number; readonly height: number },
): Column {
  for (const scale of [1, 0.92, 0.84, 0.76, 0.68, 0.6, 0.52]) {
    const column = setAt(context, family, blocks, width, scale);
    if (column.height <= height) return column;
  }
  return cut(setAt(context, family, blocks, width, 0.46), height);
}

/** Paints the column with its first capitals' tops at `top`. */
export function paintColumn(context: Context2D, { blocks }: Column, left: number, top: number): void {
  for (const { set, colour, bar, top: below } of blocks) {
    if (bar !== undefined) {
      context.fillStyle = bar;
      context.fillRect(left, top + below, barWidth, set.height);
    }
    writeLines(context, set, left + (bar === undefined ? 0 : barRoom), top + below, colour, 1);
  }
}

/** One line, shortened if it does not fit. */
export function paintLine(
  context: Context2D,
  text: string,
  setting: Setting,
  box: Pick<Box, 'left' | 'right' | 'top'> & { readonly align?: 'left' | 'right' },
  colour: string,
): void {
  const width = box.right - box.left;
  const set = fitText(context, text, setting, { width, height: setting.px * 1.5, lines: 1, least: 0.7 });
  context.font = `${set.setting.weight} ${set.setting.px.toFixed(2)}px '${set.setting.family}'`;
  const own = context.measureText(set.lines[0] ?? '').width;
  writeLines(context, set, box.align === 'right' ? box.right - own : box.left, box.top, colour, 1);
}

function setAt(context: Context2D, family: string, blocks: readonly Block[], width: number, scale: number): Column {
  let top = 0;
  const set = blocks.map((block, index): SetBlock => {
    const setting: Setting = {
      family,
      weight: block.weight,
      px: block.px * scale,
      notation: block.notation === true,
    };
    const room = width - (block.bar === undefined ? 0 : barRoom);
    const words = fitText(context, block.text, setting, {
      width: room,
      height: Number.POSITIVE_INFINITY,
      lines: block.lines,
      least: 0.8,
    });
    top += index === 0 ? 0 : block.before * scale;
    const placed = { ...block, set: words, top };
    top += words.height;
    return placed;
  });
  return { blocks: set, height: top, scale };
}

/** As many blocks, from the first, as fit. */
function cut(column: Column, height: number): Column {
  const blocks = column.blocks.filter(({ top, set }) => top + set.height <= height);
  const last = blocks.at(-1);
  return { ...column, blocks, height: last === undefined ? 0 : last.top + last.set.height };
}
