/**
 * The lines that a link may take between two nodes, before the best of them is chosen.
 */
import type { Point } from '../scene/scene.ts';
import { type NodeShape, nearestOnNode } from './node-shape.ts';
import { bow, curve, type Path } from './path.ts';
import { distance } from './small-digits.ts';

/** What a line joins; lengths and points in cells. */
export interface LinkEnds {
  readonly from: NodeShape;
  readonly to: NodeShape;
  /** Between a rim and the line's end, in cells. */
  readonly gap: number;
  /** A shorter line would have no room for its head. */
  readonly least: number;
}

/**
 * Where a line may begin and end: at the nearest points of the two skeletons, unless these touch, and at the nearest
 * candidates of the two nodes.
 */
export function anchors(from: NodeShape, to: NodeShape): [Point, Point][] {
  const pairs = from.centres.flatMap((a) => to.centres.map((b): [Point, Point] => [a, b]));
  const skeletons = [
    ...from.centres.map((a): [Point, Point] => [a, nearestOnNode(to, a)]),
    ...to.centres.map((b): [Point, Point] => [nearestOnNode(from, b), b]),
  ];
  const byDistance = (one: [Point, Point], other: [Point, Point]) => distance(...one) - distance(...other);
  const nearest = skeletons
    .sort(byDistance)
    .slice(0, 1)
    .filter((pair) => distance(...pair) > 0.25);
  return [...nearest, ...pairs.sort(byDistance).slice(0, from.centres.length * to.centres.length > 1 ? 4 : 1)];
}

export interface Line {
  readonly line: Path;
  /** How far from straight it is, 0 and up. */
  readonly bend: number;
}

/** Straighter ones first. Between close nodes a line has no room, and goes around as a clasp. */
export function linesBetween(a: Point, b: Point, { from, to, gap, least }: LinkEnds): Line[] {
  const long = Math.max(distance(a, b), 1e-9);
  const free = long - from.radius - to.radius - 2 * gap;
  const clasps = [1, -1].flatMap((side) =>
    [0.3, 0.4, 0.6].map((height) => ({
      line: clasp(a, b, side, from.radius + gap, to.radius + gap, height),
      bend: height,
    })),
  );
  if (free < least) return clasps;
  const bends = [0, 0.24, 0.36, 0.5, 0.7, 0.95, 1.3, 1.8].filter((bend) => bend < long * 0.75);
  const bows = bends.flatMap((bend) =>
    (bend === 0 ? [0] : [bend, -bend]).map((off) => ({
      line: bow(a, beside(a, b, 0.5, off), b, 28),
      bend: bend / Math.max(long, 1),
    })),
  );
  return long < 0.9 ? [...bows, ...clasps] : bows;
}

/** Every bow up to three cells high, with its top nearer to either end too, and many clasps. */
export function manyLinesBetween(a: Point, b: Point, { from, to, gap }: LinkEnds): Line[] {
  const long = Math.max(distance(a, b), 1e-9);
  const lines: Line[] = [];
  for (const side of [1, -1]) {
    for (let off = 0; off <= 3; off += 0.1) {
      for (const along of [0.5, 0.3, 0.4, 0.6, 0.7, 0.1, 0.9]) {
        lines.push({ line: bow(a, beside(a, b, along, off * side), b, 36), bend: off / Math.max(long, 1) });
      }
    }
    if (long > 1.3) continue;
    for (let height = 0.2; height <= 1.6; height += 0.1) {
      for (const lean of [0.19, 0.3, 0.1, 0, -0.1]) {
        lines.push({ line: clasp(a, b, side, from.radius + gap, to.radius + gap, height, lean), bend: height });
      }
    }
  }
  return lines;
}

/** A handle over two near nodes, which it leaves and enters at right angles to their rims. */
function clasp(a: Point, b: Point, side: number, rimA: number, rimB: number, height: number, lean = 0.19): Path {
  const [out, up] = [Math.sin(lean * Math.PI), Math.cos(lean * Math.PI) * side];
  const long = Math.max(distance(a, b), 1e-9);
  const from = beside(a, b, (-out * rimA) / long, up * rimA);
  const leaving = beside(a, b, (-out * (rimA + height)) / long, up * (rimA + height));
  const to = beside(a, b, 1 + (out * rimB) / long, up * rimB);
  const entering = beside(a, b, 1 + (out * (rimB + height)) / long, up * (rimB + height));
  return { points: [a, ...curve(from, leaving, entering, to).points, b], closed: false };
}

/** A point at a fraction of the line from `a` to `b`, and at a distance to its right, in cells. */
function beside(a: Point, b: Point, along: number, off: number): Point {
  const long = Math.max(distance(a, b), 1e-9);
  const [dx, dy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  return [a[0] + dx * along * long - dy * off, a[1] + dy * along * long + dx * off];
}
