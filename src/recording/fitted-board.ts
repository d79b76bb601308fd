/**
 * A board's place to a small part of a pixel: the middle of every line within the board is measured in each cell that it
 * passes, and the map from the board to the picture that meets them best is found by least squares.
 *
 * Only lines within the board are taken: the outermost may be a frame of any thickness, on the square's edge or around it,
 * and follow from the others, since all cells are equal.
 */
import type { Point } from '../scene/scene.ts';
import { boardToPicture, type Corners, cornersUnder, furthestApart, meanSide, uprightCorners } from './corners.ts';
import { type Homography, mapped, product } from './homography.ts';
import { solvedLeastSquares } from './least-squares.ts';
import { lineMiddle } from './line-profile.ts';
import { type GreyPicture, isOn, levelAt } from './picture.ts';

export interface FittedBoard {
  readonly corners: Corners;
  /** Which part of the pieces of lines that lie on the picture was seen where the board has them. */
  readonly seen: number;
  /** The median of their levels against what is beside them. */
  readonly contrast: number;
  /** Pieces that lie on the picture. */
  readonly pieces: number;
}

/**
 * Whether the lines within the square go on beyond one of its sides: then it is a part of a larger board, or of some
 * other pattern.
 */
export function goesOn(picture: GreyPicture, size: number, corners: Corners): boolean {
  const map = boardToPicture(corners, size);
  return [false, true].some((isUpright) =>
    [-1, size].some((cell) => {
      let [onPicture, seen] = [0, 0];
      for (let line = 1; line < size; line++) {
        const piece = measuredPiece(picture, map, line, cell, isUpright, 0.1);
        if (piece === 'off the picture') continue;
        onPicture += 1;
        if (piece !== undefined && Math.abs(piece.off) < 2) seen += 1;
      }
      return onPicture >= size / 2 && seen > 0.6 * onPicture;
    }),
  );
}

export interface FitWish {
  /** Cells by which the board may be off at most. */
  readonly within?: number;
  /** The part of its pieces that must be seen. */
  readonly least?: number;
  /** Whether it is seen at an angle, where that is known. */
  readonly isTilted?: boolean | undefined;
}

/** A piece of a line, one cell long, as it was measured. */
interface Piece {
  /** On the board, in cells: the piece's middle. */
  readonly on: Point;
  readonly isUpright: boolean;
  /** Where it should be, the direction across it, and how far from there it was seen, in pixels. */
  readonly at: Point;
  readonly across: Point;
  readonly off: number;
  readonly contrast: number;
}

/** Samples along a piece, between these parts of the cell. */
const [firstPart, lastPart, alongCount] = [0.16, 0.84, 8];

/**
 * The place near `near`, at most `within` cells off; undefined where fewer than `least` of the pieces are seen.
 * `size`: cells in a row.
 */
export function fittedBoard(
  picture: GreyPicture,
  size: number,
  near: Corners,
  { within = 0.2, least = 0.4, isTilted }: FitWish = {},
): FittedBoard | undefined {
  let corners = near;
  // The first round takes the place as found; the others look more narrowly.
  for (const reach of [within, 0.6 * within, Math.min(0.1, within)]) {
    const measured = measure(picture, size, corners, reach);
    if (measured.onPicture < 8 || measured.pieces.length < least * measured.onPicture) return undefined;
    const fitted = fittedTo(measured.pieces, size, corners, isTilted);
    if (fitted === undefined) return undefined;
    corners = fitted;
  }
  const { pieces, onPicture } = measure(picture, size, corners, Math.min(0.1, within));
  const cell = meanSide(corners) / size;
  const good = pieces.filter(({ off }) => Math.abs(off) < Math.max(0.6, 0.05 * cell));
  if (good.length < least * onPicture) return undefined;
  const contrasts = good.map(({ contrast }) => contrast).sort((a, b) => a - b);
  return {
    corners,
    seen: good.length / onPicture,
    contrast: contrasts[contrasts.length >> 1] ?? 0,
    pieces: onPicture,
  };
}

function measure(
  picture: GreyPicture,
  size: number,
  corners: Corners,
  within: number,
): { readonly pieces: readonly Piece[]; readonly onPicture: number } {
  const map = boardToPicture(corners, size);
  const pieces: Piece[] = [];
  let onPicture = 0;
  for (let line = 1; line < size; line++) {
    for (let cell = 0; cell < size; cell++) {
      for (const isUpright of [true, false]) {
        const piece = measuredPiece(picture, map, line, cell, isUpright, within);
        if (piece === 'off the picture') continue;
        onPicture += 1;
        if (piece !== undefined) pieces.push(piece);
      }
    }
  }
  return { pieces, onPicture };
}

function measuredPiece(
  picture: GreyPicture,
  map: Homography,
  line: number,
  cell: number,
  isUpright: boolean,
  within: number,
): Piece | undefined | 'off the picture' {
  const point = (across: number, along: number): Point =>
    mapped(map, isUpright ? [line + across, cell + along] : [cell + along, line + across]);
  const [start, end] = [point(0, firstPart), point(0, lastPart)];
  const at = point(0, 0.5);
  const beside = point(0.02, 0.5);
  const cellPx = Math.hypot(beside[0] - at[0], beside[1] - at[1]) * 50;
  const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const across: Point = isUpright
    ? [(end[1] - start[1]) / length, -(end[0] - start[0]) / length]
    : [-(end[1] - start[1]) / length, (end[0] - start[0]) / length];
  // Twice as far as the line may be off, so that what is beside it is seen too; never so far that digits are.
  const reach = Math.max(3.5, Math.min(2 * within, 0.26) * cellPx);
  const ends = [start, end].flatMap(([x, y]): Point[] => [
    [x - reach * across[0], y - reach * across[1]],
    [x + reach * across[0], y + reach * across[1]],
  ]);
  if (!ends.every((each) => isOn(picture, each))) return 'off the picture';
  const half = Math.ceil(reach / stepPx);
  const profile = new Float64Array(2 * half + 1);
  const levels = new Float64Array(alongCount);
  for (let index = -half; index <= half; index++) {
    const off = index * stepPx;
    for (let sample = 0; sample < alongCount; sample++) {
      const part = sample / (alongCount - 1);
      const [x, y] = [start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part];
      levels[sample] = levelAt(picture, x + off * across[0], y + off * across[1]);
    }
    profile[index + half] = middleHalf(levels);
  }
  const middle = lineMiddle(profile);
  if (middle === undefined) return undefined;
  const on: Point = isUpright ? [line, cell + 0.5] : [cell + 0.5, line];
  return { on, isUpright, at, across, off: (middle.at - half) * stepPx, contrast: middle.contrast };
}

/** The mean of the middle half: a line is there all along, and digits near it are not. Sorts the levels. */
function middleHalf(levels: Float64Array): number {
  levels.sort();
  const quarter = levels.length >> 2;
  let sum = 0;
  for (let index = quarter; index < levels.length - quarter; index++) sum += levels[index]!;
  return sum / (levels.length - 2 * quarter);
}

/** Between samples across a line. */
const stepPx = 0.5;

/** The corners that meet the pieces best: of an upright rectangle where that does as well as one at an angle. */
function fittedTo(
  pieces: readonly Piece[],
  size: number,
  near: Corners,
  isTilted: boolean | undefined,
): Corners | undefined {
  const tilted = isTilted === false ? undefined : fitTilted(pieces, size, near);
  const upright = isTilted === true ? undefined : fitUpright(pieces, size);
  if (upright === undefined || tilted === undefined) return tilted ?? upright;
  const cell = meanSide(upright) / size;
  return furthestApart(upright, tilted) < Math.max(0.7, 0.035 * cell) ? upright : tilted;
}

/** Left and width from the upright lines, top and height from the level ones. */
function fitUpright(pieces: readonly Piece[], size: number): Corners | undefined {
  const side = (isUpright: boolean) => {
    const axis = isUpright ? 0 : 1;
    const rows = pieces
      .filter((piece) => piece.isUpright === isUpright)
      .map(({ on, at, across, off }) => ({ place: on[axis], value: at[axis] + off * across[axis] }));
    return robust(
      rows.map(({ place, value }) => ({ terms: [1, place], value })),
      2,
    );
  };
  const [x, y] = [side(true), side(false)];
  if (x === undefined || y === undefined) return undefined;
  return uprightCorners(x[0]!, y[0]!, x[1]! * size, y[1]! * size);
}

/**
 * One of Gauss and Newton's steps for all eight numbers of the map, as a small homography of the picture put after it:
 * near the identity, and in units of the board's side around its middle, so that the system is well scaled.
 */
function fitTilted(pieces: readonly Piece[], size: number, near: Corners): Corners | undefined {
  const side = meanSide(near);
  const [middleX, middleY] = [0, 1].map((axis) => near.reduce((sum, corner) => sum + corner[axis]!, 0) / 4);
  const rows = pieces.map(({ at, across, off }) => {
    const [x, y] = [(at[0] - middleX!) / side, (at[1] - middleY!) / side];
    const [nx, ny] = across;
    const along = nx * x + ny * y;
    return { terms: [nx * x, nx * y, nx, ny * x, ny * y, ny, -along * x, -along * y], value: off / side };
  });
  const step = robust(rows, 8);
  if (step === undefined) return undefined;
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = step;
  const toUnits: Homography = [1 / side, 0, -middleX! / side, 0, 1 / side, -middleY! / side, 0, 0, 1];
  const fromUnits: Homography = [side, 0, middleX!, 0, side, middleY!, 0, 0, 1];
  const change: Homography = [1 + a, b, c, d, 1 + e, f, g, h, 1];
  const map = product(fromUnits, product(change, product(toUnits, boardToPicture(near, size))));
  return cornersUnder(map, size);
}

/**
 * Least squares with what lies far from the others left out in the end: weights after J. Tukey's biweight, its width from
 * the median of the distances (P. Huber and E. Ronchetti, Robust Statistics, 2nd edition, 2009, section 4.8, from memory).
 */
function robust(
  rows: readonly { readonly terms: readonly number[]; readonly value: number }[],
  unknowns: number,
): readonly number[] | undefined {
  if (rows.length < 2 * unknowns) return undefined;
  let weights: readonly number[] = rows.map(() => 1);
  let found: readonly number[] = [];
  for (let round = 0; round < 6; round++) {
    const counted = rows.map((row, index) => ({ ...row, weight: weights[index]! }));
    if (counted.filter(({ weight }) => weight > 0).length < 2 * unknowns) return undefined;
    const solved = solvedLeastSquares(counted, unknowns);
    if (solved === undefined) return undefined;
    found = solved;
    const distances = rows.map(({ terms, value }) =>
      Math.abs(value - terms.reduce((sum, term, index) => sum + term * solved[index]!, 0)),
    );
    const sorted = [...distances].sort((a, b) => a - b);
    const width = 6 * Math.max(sorted[sorted.length >> 1]!, 1e-5);
    weights = distances.map((distance) => (distance < width ? (1 - (distance / width) ** 2) ** 2 : 0));
  }
  return found;
}
