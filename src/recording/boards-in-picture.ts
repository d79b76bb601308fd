/**
 * The boards on one picture: looked for upright, at first on the picture made smaller; then at an angle.
 */
import { type Corners, furthestApart, leanOf, meanSide, uprightCorners } from './corners.ts';
import { fittedBoard, goesOn } from './fitted-board.ts';
import { mapped } from './homography.ts';
import type { GreyPicture } from './picture.ts';
import { sampled } from './rectify.ts';
import { tiltOf } from './tilt.ts';
import { type UprightBoard, uprightBoards } from './upright-boards.ts';
import { shrunk } from './upright-edges.ts';

export interface SeenBoard {
  /** Cells in a row. */
  readonly size: number;
  readonly corners: Corners;
  /** 0 to 1: how much of its lines is there where they should be, and nothing like them elsewhere. */
  readonly score: number;
  /** Which part of the pieces of its lines was seen, and their levels against what is beside them. */
  readonly seen: number;
  readonly contrast: number;
}

/**
 * Boards with as much of their lines and as high a score are told from all else. Where all around is full of edges the
 * score is low, but there they do not lie where a board's lines would by chance, piece by piece.
 */
export function isSure({ seen, score }: Pick<SeenBoard, 'seen' | 'score'>): boolean {
  return (seen >= 0.8 && score >= 0.6) || (seen >= 0.95 && score >= 0.45);
}

export interface BoardsWanted {
  /** Cells in a row that a board may have. */
  readonly sizes: readonly number[];
  /** Whether boards are looked for that are seen at an angle, or that are not; both by default, these first. */
  readonly isTilted?: boolean | undefined;
  /** Whether nothing is looked for on the picture at its full size. */
  readonly isQuick?: boolean;
}

/** Rows of the picture on which boards are looked for first. */
const enoughRows = 800;

/** All boards with so many cells a row, the largest first; boards of which little is seen come after all others. */
export function boardsIn(
  picture: GreyPicture,
  { sizes, isTilted, isQuick = false }: BoardsWanted,
): readonly SeenBoard[] {
  const factor = Math.ceil(picture.height / enoughRows);
  const small = shrunk(picture, factor);
  let found = isTilted === true ? [] : upright(picture, small, factor, sizes);
  // A board that is seen at an angle may be found upright if it is small; a larger one beside it would not be.
  const hasUpright = found.some((board) => isSure(board) && leanOf(board.corners) < 0.03 / board.size);
  if (isTilted !== false && !hasUpright) found = [...found, ...tilted(picture, small, factor, sizes)];
  if (!isQuick && !found.some(isSure) && factor > 1 && picture.height <= 2 * enoughRows)
    found = [...found, ...upright(picture, picture, 1, sizes)];
  return apart(found).sort(
    (a, b) => Number(isSure(b)) - Number(isSure(a)) || meanSide(b.corners) - meanSide(a.corners),
  );
}

function upright(picture: GreyPicture, small: GreyPicture, factor: number, sizes: readonly number[]): SeenBoard[] {
  return uprightBoards(small, { sizes, unevenness: 0.02 }).flatMap((board) =>
    fitted(picture, board, (x, y) => [x * factor, y * factor]),
  );
}

/** Set upright first, as far as that goes; then the board is fitted on the picture itself. */
function tilted(picture: GreyPicture, small: GreyPicture, factor: number, sizes: readonly number[]): SeenBoard[] {
  const { toPicture } = tiltOf(small);
  const straight = sampled(small, toPicture, small.width, small.height, 1);
  return uprightBoards(straight, { sizes, unevenness: 0.25 }).flatMap((board) =>
    fitted(picture, board, (x, y) => {
      const [smallX, smallY] = mapped(toPicture, [x, y]);
      return [smallX * factor, smallY * factor];
    }),
  );
}

function fitted(
  picture: GreyPicture,
  { size, score, left, top, width, height }: UprightBoard,
  toPicture: (x: number, y: number) => readonly [number, number],
): SeenBoard[] {
  const [a, b, c, d] = uprightCorners(left, top, width, height).map(([x, y]) => toPicture(x, y));
  const near: Corners = [a!, b!, c!, d!];
  // What is drawn close along the lines, as around groups of cells, leads astray whoever looks further than to it.
  const found = fittedBoard(picture, size, near) ?? fittedBoard(picture, size, near, { within: 0.04 });
  return found === undefined || goesOn(picture, size, found.corners) ? [] : [{ size, score, ...found }];
}

/** Of boards that lie on each other the one of which most is seen. */
function apart(boards: readonly SeenBoard[]): SeenBoard[] {
  const kept: SeenBoard[] = [];
  for (const board of [...boards].sort((a, b) => b.seen * b.score - a.seen * a.score)) {
    if (!kept.some((other) => overlap(board.corners, other.corners))) kept.push(board);
  }
  return kept;
}

function overlap(one: Corners, other: Corners): boolean {
  if (furthestApart(one, other) < 0.25 * meanSide(other)) return true;
  const [a, b] = [boundsOf(one), boundsOf(other)];
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 && width * height > 0.2 * Math.min(areaOf(a), areaOf(b));
}

function boundsOf(corners: Corners) {
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

function areaOf({ left, right, top, bottom }: ReturnType<typeof boundsOf>): number {
  return (right - left) * (bottom - top);
}
