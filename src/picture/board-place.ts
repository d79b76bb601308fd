/**
 * Where the board is on the frame, and how its points are mapped there.
 *
 * A board filmed at an angle is mapped by the homography of its four corners: P. Heckbert, Fundamentals of Texture
 * Mapping and Image Warping, 1989, section 2.2.3 (unit square to quadrilateral), from memory.
 */
import type { BoardShape, Point } from '../scene/scene.ts';

/** `left` and `top` are in, `right` and `bottom` not; in frame pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A board on the frame. */
export interface BoardPlace {
  /** Cells in a row. */
  readonly size: number;
  /** Frame pixels of a cell's side; at the board's middle, if it is filmed at an angle. */
  readonly cellPx: number;
  /** Whether the board is an upright square, so that lengths are the same everywhere. */
  readonly flat: boolean;
  /** The smallest upright box around the board. */
  readonly bounds: Box;
  /** A point of the board, in cells, as a point of the frame, in pixels. */
  readonly at: (point: Point) => Point;
}

/** Undefined for a board that is hidden. */
export function boardPlace(shape: BoardShape, size: number): BoardPlace | undefined {
  switch (shape.kind) {
    case 'hidden':
      return undefined;
    case 'square': {
      const { left, top, side } = shape;
      const cellPx = side / size;
      const bounds = { left, top, right: left + side, bottom: top + side };
      return { size, cellPx, flat: true, bounds, at: ([x, y]) => [left + x * cellPx, top + y * cellPx] };
    }
    case 'corners':
      return tilted(shape.corners, size);
  }
}

/** How the board is stretched at a point: frame pixels a cell, to the right `[a, b]` and down `[c, d]`. */
export function stretchAt(place: BoardPlace, point: Point): readonly [a: number, b: number, c: number, d: number] {
  const step = 0.01;
  const [x, y] = point;
  const [left, right] = [place.at([x - step, y]), place.at([x + step, y])];
  const [above, below] = [place.at([x, y - step]), place.at([x, y + step])];
  const part = 1 / (2 * step);
  return [
    (right[0] - left[0]) * part,
    (right[1] - left[1]) * part,
    (below[0] - above[0]) * part,
    (below[1] - above[1]) * part,
  ];
}

function tilted(corners: readonly [Point, Point, Point, Point], size: number): BoardPlace {
  const [p0, p1, p2, p3] = corners;
  const [dx1, dy1] = [p1[0] - p2[0], p1[1] - p2[1]];
  const [dx2, dy2] = [p3[0] - p2[0], p3[1] - p2[1]];
  const [sx, sy] = [p0[0] - p1[0] + p2[0] - p3[0], p0[1] - p1[1] + p2[1] - p3[1]];
  const determinant = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / determinant;
  const h = (dx1 * sy - sx * dy1) / determinant;
  const [a, b, c] = [p1[0] - p0[0] + g * p1[0], p3[0] - p0[0] + h * p3[0], p0[0]];
  const [d, e, f] = [p1[1] - p0[1] + g * p1[1], p3[1] - p0[1] + h * p3[1], p0[1]];
  const at = ([x, y]: Point): Point => {
    const [u, v] = [x / size, y / size];
    const depth = g * u + h * v + 1;
    return [(a * u + b * v + c) / depth, (d * u + e * v + f) / depth];
  };
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const bounds = { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
  const place = { size, flat: false, bounds, at, cellPx: 1 };
  const [right, rightDown, down, downDown] = stretchAt(place, [size / 2, size / 2]);
  return { ...place, cellPx: Math.sqrt(Math.abs(right * downDown - rightDown * down)) };
}
