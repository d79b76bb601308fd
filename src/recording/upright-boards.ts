/**
 * Boards that stand upright on a picture: every square between long lines whose equal parts are lines too.
 *
 * Two upright and two level lines make a square; it is a board of so many cells if lines pass where its cells meet, none
 * (or few) in the middle of cells, and none of them goes on beyond the square.
 */
import { type LongLine, longLines } from './long-lines.ts';
import type { GreyPicture } from './picture.ts';
import { covered, transposed, type UprightEdges, uprightEdges } from './upright-edges.ts';

export interface UprightBoard {
  /** Cells in a row. */
  readonly size: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** 1: every line is there from end to end, and nothing else. */
  readonly score: number;
}

export interface BoardWish {
  /** Cells in a row that a board may have. */
  readonly sizes: readonly number[];
  /** By which part width and height may differ. */
  readonly unevenness: number;
}

/** Below this there is no board. */
const leastScore = 0.45;

/** The best first, each at another place. */
export function uprightBoards(picture: GreyPicture, wish: BoardWish): readonly UprightBoard[] {
  const upright = uprightEdges(picture);
  const level = uprightEdges(transposed(picture));
  const least = 0.14 * picture.height;
  const gap = Math.max(10, Math.round(0.02 * picture.height));
  const columns = longLines(upright, least, gap);
  const rows = longLines(level, least, gap);
  const found: UprightBoard[] = [];
  for (const square of squaresBetween(columns, rows, picture, wish.unevenness)) {
    for (const size of wish.sizes) {
      // Without a frame, the outermost lines are those one cell inside.
      for (const inset of [0, 1]) {
        const board = grown(square, size, inset);
        if (board.width / size < 9 || !isWithin(board, picture)) continue;
        const score = scoreOf(upright, level, board, size, inset === 0 ? 0.4 : 0.85) - (inset === 0 ? 0 : 0.06);
        if (score >= leastScore) found.push({ ...board, size, score });
      }
    }
  }
  return distinct(found);
}

type Rectangle = Pick<UprightBoard, 'left' | 'top' | 'width' | 'height'>;

function* squaresBetween(
  columns: readonly LongLine[],
  rows: readonly LongLine[],
  picture: GreyPicture,
  unevenness: number,
): Generator<Rectangle> {
  const least = 0.14 * picture.height;
  for (const [index, left] of columns.entries()) {
    for (const right of columns.slice(index + 1)) {
      const width = right.at - left.at;
      const [from, until] = [Math.max(left.from, right.from), Math.min(left.until, right.until)];
      if (width < least || width > 1.3 * picture.height || until - from < 0.65 * width) continue;
      const slack = 0.2 * width;
      const fitting = rows.filter(
        (row) =>
          row.at > from - slack &&
          row.at < until + slack &&
          Math.min(row.until, right.at) - Math.max(row.from, left.at) > 0.65 * width,
      );
      for (const top of fitting) {
        for (const bottom of fitting) {
          const height = bottom.at - top.at;
          if (Math.abs(height - width) > unevenness * width + 3) continue;
          yield { left: left.at, top: top.at, width, height };
        }
      }
    }
  }
}

/** A board that leaves the picture has sides that nobody has seen. */
function isWithin({ left, top, width, height }: Rectangle, picture: GreyPicture): boolean {
  return left > -2 && top > -2 && left + width < picture.width + 2 && top + height < picture.height + 2;
}

/** The board whose lines number `inset` and `size - inset` are the sides of the square. */
function grown({ left, top, width, height }: Rectangle, size: number, inset: number): Rectangle {
  if (inset === 0) return { left, top, width, height };
  const [cellWidth, cellHeight] = [width / (size - 2), height / (size - 2)];
  return { left: left - cellWidth, top: top - cellHeight, width: size * cellWidth, height: size * cellHeight };
}

function scoreOf(
  upright: UprightEdges,
  level: UprightEdges,
  { left, top, width, height }: Rectangle,
  size: number,
  least: number,
): number {
  const across = linesScore(upright, { at: left, length: width, from: top, until: top + height }, size, least);
  if (across === undefined) return 0;
  const down = linesScore(level, { at: top, length: height, from: left, until: left + width }, size, least);
  if (down === undefined) return 0;
  return (across + down) / 2;
}

/** Lines across `at` to `at + length`, each of them along `from` to `until`. */
interface Span {
  readonly at: number;
  readonly length: number;
  readonly from: number;
  readonly until: number;
}

/** Of one direction; undefined where of a line less than this part is there. */
function linesScore(edges: UprightEdges, span: Span, size: number, least: number): number | undefined {
  const cell = span.length / size;
  const along = (span.until - span.from) / size;
  const [from, until] = [span.from + 0.12 * along, span.until - 0.12 * along];
  let lines = 0;
  for (let index = 1; index < size; index++) {
    const here = covered(edges, span.at + index * cell, from, until);
    if (here < least) return undefined;
    lines += here;
  }
  // In the middle of cells, and at their thirds: lines there would be those of a board with more cells.
  const between = Math.max(...[[1 / 2], [1 / 3, 2 / 3]].map((parts) => meanCovered(edges, span, size, parts)));
  let beyond = 0;
  for (let index = 1; index < size; index++) {
    const x = span.at + index * cell;
    const before = covered(edges, x, span.from - 0.65 * along, span.from - 0.28 * along);
    const after = covered(edges, x, span.until + 0.28 * along, span.until + 0.65 * along);
    beyond += Math.max(before, after);
  }
  return lines / (size - 1) - 0.5 * between - (0.7 * beyond) / (size - 1);
}

/** How much of the lines through these parts of each cell is there. */
function meanCovered(edges: UprightEdges, span: Span, size: number, parts: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < size; index++)
    for (const part of parts)
      sum += covered(edges, span.at + ((index + part) * span.length) / size, span.from, span.until);
  return sum / (size * parts.length);
}

/** Of boards at nearly the same place only the best, and of these the best first. */
function distinct(boards: readonly UprightBoard[]): readonly UprightBoard[] {
  const kept: UprightBoard[] = [];
  for (const board of [...boards].sort((a, b) => b.score - a.score)) {
    const isNew = kept.every((other) => {
      const near = (0.4 * other.width) / other.size;
      return (
        other.size !== board.size ||
        Math.abs(other.left - board.left) > near ||
        Math.abs(other.top - board.top) > near ||
        Math.abs(other.width - board.width) > 2 * near
      );
    });
    if (isNew) kept.push(board);
    if (kept.length >= 12) break;
  }
  return kept;
}
