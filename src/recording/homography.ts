/**
 * The map between a flat board and its picture, by least squares.
 *
 * The linear start is the direct linear transformation with normalised points, then the distances in the picture are
 * made least by Gauss and Newton's steps: R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd
 * edition, 2004, sections 4.1, 4.4.4 and A6.1, from memory.
 */
import { Bug } from '../grid/bug.ts';
import type { Point } from '../scene/scene.ts';
import { solvedLeastSquares } from './least-squares.ts';

/** Row by row; `[x, y]` goes to `[(a x + b y + c) / w, (d x + e y + f) / w]` with `w = g x + h y + i`. */
export type Homography = readonly [
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
  h: number,
  i: number,
];

export interface PointPair {
  readonly from: Point;
  readonly to: Point;
  /** How much it counts; 1 by default. */
  readonly weight?: number;
}

/** Where the map takes a point. */
export function mapped([a, b, c, d, e, f, g, h, i]: Homography, [x, y]: Point): Point {
  const w = g * x + h * y + i;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/**
 * The map that takes each `from` as near to its `to` as can be: at least four pairs, of which no three points lie on a
 * line; exactly there with four. Distances are made least among the `to`.
 */
export function homographyOf(pairs: readonly PointPair[]): Homography {
  if (pairs.length < 4) throw new Bug('a homography comes of four pairs or more');
  const [from, to] = [normalising(pairs.map((pair) => pair.from)), normalising(pairs.map((pair) => pair.to))];
  const near = pairs.map((pair) => ({
    from: mapped(from, pair.from),
    to: mapped(to, pair.to),
    weight: pair.weight ?? 1,
  }));
  const rows = near.flatMap(({ from: [x, y], to: [u, v], weight }) => [
    { terms: [x, y, 1, 0, 0, 0, -u * x, -u * y], value: u, weight },
    { terms: [0, 0, 0, x, y, 1, -v * x, -v * y], value: v, weight },
  ]);
  let map = withOne(decided(solvedLeastSquares(rows, 8)));
  // Four pairs are met exactly by the linear start.
  for (let round = 0; round < 4 && near.length > 4; round++) map = stepped(map, near);
  return scaled(product(inverted(to), product(map, from)));
}

/** The map back. */
export function inverted([a, b, c, d, e, f, g, h, i]: Homography): Homography {
  return scaled([
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]);
}

/** First `second`, then `first`. */
export function product(first: Homography, second: Homography): Homography {
  const entry = (row: number, column: number): number =>
    first[3 * row]! * second[column]! +
    first[3 * row + 1]! * second[3 + column]! +
    first[3 * row + 2]! * second[6 + column]!;
  return [
    entry(0, 0),
    entry(0, 1),
    entry(0, 2),
    entry(1, 0),
    entry(1, 1),
    entry(1, 2),
    entry(2, 0),
    entry(2, 1),
    entry(2, 2),
  ];
}

/** One of Gauss and Newton's steps towards the least distances. */
function stepped(map: Homography, pairs: readonly Required<PointPair>[]): Homography {
  const [a, b, c, d, e, f, g, h] = map;
  const rows = pairs.flatMap(({ from: [x, y], to: [u, v], weight }) => {
    const w = g * x + h * y + 1;
    const [mappedX, mappedY] = [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
    const [px, py, p1] = [x / w, y / w, 1 / w];
    return [
      { terms: [px, py, p1, 0, 0, 0, -mappedX * px, -mappedX * py], value: u - mappedX, weight },
      { terms: [0, 0, 0, px, py, p1, -mappedY * px, -mappedY * py], value: v - mappedY, weight },
    ];
  });
  const step = decided(solvedLeastSquares(rows, 8));
  return withOne(map.slice(0, 8).map((value, index) => value + step[index]!));
}

function decided(eight: readonly number[] | undefined): readonly number[] {
  if (eight === undefined) throw new Bug('of the points of a homography no three lie on a line');
  return eight;
}

/** Moves the points' middle to (0, 0) and their mean distance from it to the square root of two. */
function normalising(points: readonly Point[]): Homography {
  const count = points.length;
  const middleX = points.reduce((sum, [x]) => sum + x, 0) / count;
  const middleY = points.reduce((sum, [, y]) => sum + y, 0) / count;
  const spread = points.reduce((sum, [x, y]) => sum + Math.hypot(x - middleX, y - middleY), 0) / count;
  const scale = spread > 0 ? Math.SQRT2 / spread : 1;
  return [scale, 0, -scale * middleX, 0, scale, -scale * middleY, 0, 0, 1];
}

function withOne(eight: readonly number[]): Homography {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = eight;
  return [a, b, c, d, e, f, g, h, 1];
}

/** The same map with 1 as its last number, as far as that can be. */
function scaled(map: Homography): Homography {
  const last = map[8];
  if (last === 0) return map;
  return withOne(map.slice(0, 8).map((value) => value / last));
}
