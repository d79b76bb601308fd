/**
 * The way of a link from the rim of one node to the rim of another: straight where that is clear, else bent as little
 * as will miss the digits in use and the links drawn before. The same film gives the same way in every frame.
 */
import type { Point } from '../scene/scene.ts';
import { distanceToNode, type NodeShape, nearestOnLine, nearestOnNode } from './node-shape.ts';
import { bow, curve, cut, length, type Path, pointAlong } from './path.ts';
import { distance } from './small-digits.ts';

/** Something to be missed: a disc, in cells, and how much it matters. */
export interface Obstacle {
  readonly at: Point;
  readonly radius: number;
  readonly weight: number;
  /** Closer than this, in cells, a line would cover what must be read: a candidate in use. */
  readonly cover?: number;
}

/** What a way must join and miss; lengths and points in cells. */
export interface RouteWish {
  readonly from: NodeShape;
  readonly to: NodeShape;
  /** Between a rim and the line's end, in cells. */
  readonly gap: number;
  /** A shorter line would have no room for its head. */
  readonly least: number;
  /** The length of the head at its end; 0 for none. */
  readonly head: number;
  readonly obstacles: readonly Obstacle[];
  readonly before: readonly Path[];
  /** The middles of the heads of those before. */
  readonly heads: readonly Point[];
  /** Cells in a row of the board, which lines do not leave by more than a little. */
  readonly size: number;
}

/**
 * The best of a fixed list of curves; of two equally good the one listed first, which is the straighter. Where all of
 * them cover a candidate in use, the best of a longer list.
 */
export function routeOf(wish: RouteWish): Path {
  const key = JSON.stringify(wish);
  const known = routes.get(key);
  if (known !== undefined) return known;
  const usual = bestOf(wish, linesBetween);
  const { path } = usual.cost < coverCost ? usual : bestOf(wish, manyLinesBetween, usual);
  if (routes.size >= mostRoutes) routes.clear();
  routes.set(key, path);
  return path;
}

/** What was found before: a link is on every frame of its step, and to look for its way takes longer than to draw it. */
const routes = new Map<string, Path>();
const mostRoutes = 200;

/** More than all else that is bad about a line. */
const coverCost = 100;

interface Found {
  readonly path: Path;
  readonly cost: number;
}

function bestOf(wish: RouteWish, family: (a: Point, b: Point, wish: RouteWish) => Line[], known?: Found): Found {
  const pairs = anchors(wish.from, wish.to);
  let best = known;
  for (const [a, b] of pairs) {
    const near = nearby(wish.obstacles, a, b);
    // A detour to another pair of candidates costs what it is longer than the nearest.
    const detour = (distance(a, b) - distance(...pairs[0]!)) * 0.8;
    for (const { line, bend } of family(a, b, wish)) {
      const path = visible(line, wish);
      const least = best?.cost ?? Number.POSITIVE_INFINITY;
      const cost = costOf(path, bend + Math.max(0, detour), wish, near, least);
      if (cost < least - 1e-9) best = { path, cost };
    }
  }
  return best!;
}

/**
 * Where a line may begin and end: at the nearest points of the two skeletons, unless these touch, and at the nearest
 * candidates of the two nodes.
 */
function anchors(from: NodeShape, to: NodeShape): [Point, Point][] {
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

interface Line {
  readonly line: Path;
  /** How far from straight it is, 0 and up. */
  readonly bend: number;
}

/** Straighter ones first. Between near nodes a line has no room, and goes round as a clasp. */
function linesBetween(a: Point, b: Point, { from, to, gap, least }: RouteWish): Line[] {
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
function manyLinesBetween(a: Point, b: Point, { from, to, gap }: RouteWish): Line[] {
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

/** A point so far along the line from `a` to `b`, as a part of it, and so far off it, in cells, to its right. */
function beside(a: Point, b: Point, along: number, off: number): Point {
  const long = Math.max(distance(a, b), 1e-9);
  const [dx, dy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  return [a[0] + dx * along * long - dy * off, a[1] + dy * along * long + dx * off];
}

/** Without what lies within the nodes and their gaps. */
function visible(path: Path, { from, to, gap }: RouteWish): Path {
  const { points } = path;
  const out = points.findIndex((point) => distanceToNode(from, point) >= gap);
  const into = points.findLastIndex((point) => distanceToNode(to, point) >= gap);
  if (out < 0 || into < 0 || out >= into) return { points: [points[0]!], closed: false };
  const first = out === 0 ? points[0]! : crossing(points[out - 1]!, points[out]!, from, gap);
  const last = into === points.length - 1 ? points[into]! : crossing(points[into + 1]!, points[into]!, to, gap);
  return { points: [first, ...points.slice(out, into + 1), last], closed: false };
}

/** Where the line from a point within to a point without passes the rim. */
function crossing(within: Point, without: Point, node: NodeShape, gap: number): Point {
  let [low, high] = [0, 1];
  const at = (part: number): Point => [
    within[0] + (without[0] - within[0]) * part,
    within[1] + (without[1] - within[1]) * part,
  ];
  for (let round = 0; round < 20; round++) {
    const middle = (low + high) / 2;
    if (distanceToNode(node, at(middle)) >= gap) high = middle;
    else low = middle;
  }
  return at(high);
}

/** What is bad about a line, added up; given up as soon as it is worse than `limit`. */
function costOf(path: Path, bend: number, wish: RouteWish, obstacles: readonly Obstacle[], limit: number): number {
  const { points } = path;
  const drawn = length(path);
  let cost = bend * 1.2;
  if (drawn < wish.least) cost += 40 * (wish.least - drawn) + 10;
  // A head with hardly a line behind it is easily taken for a spot.
  cost += 6 * Math.max(0, wish.least * 1.6 - drawn);
  for (const [x, y] of points) {
    const beyond = Math.max(-x, -y, x - wish.size, y - wish.size) - 0.02;
    if (beyond > 0) cost += 2 * beyond;
  }
  const ownHead = wish.head > 0 ? pointAlong(path, drawn - wish.head * 0.6) : undefined;
  for (const { at, radius, weight, cover } of obstacles) {
    if (cost >= limit) return cost;
    // A head is wider than its line, and filled.
    if (ownHead !== undefined)
      cost += headWeight * Math.min(1, weight) * Math.max(0, 1 - distance(ownHead, at) / headRoom);
    let square = radius * radius;
    for (const point of points) {
      const [dx, dy] = [point[0] - at[0], point[1] - at[1]];
      square = Math.min(square, dx * dx + dy * dy);
    }
    cost += weight * (1 - Math.sqrt(square) / radius);
    if (cover !== undefined && distanceToLine(points, at) < cover) cost += coverCost;
  }
  const inner = cut(path, 0.15, drawn - 0.15).points;
  for (const other of wish.before) {
    if (cost >= limit) return cost;
    cost += 3 * shared(inner, other.points);
    if (ownHead !== undefined) cost += headWeight * Math.max(0, 1 - distanceToLine(other.points, ownHead) / headRoom);
  }
  for (const head of wish.heads) {
    if (cost >= limit) return cost;
    cost += headWeight * Math.max(0, 1 - distanceToLine(points, head) / headRoom);
  }
  return cost;
}

/** How near to the middle of a head nothing else should come, in cells, and how bad it is if it does. */
const headRoom = 0.25;
const headWeight = 2.5;

function distanceToLine(points: readonly Point[], at: Point): number {
  let least = Number.POSITIVE_INFINITY;
  points.forEach((point, index) => {
    least = Math.min(least, distance(nearestOnLine(points[index - 1] ?? point, point, at), at));
  });
  return least;
}

/** The part of a line that runs along others, closer than a sixth of a cell; a crossing is a little of that. */
function shared(points: readonly Point[], others: readonly Point[]): number {
  let close = 0;
  for (const [x, y] of points) {
    for (const [otherX, otherY] of others) {
      if ((x - otherX) ** 2 + (y - otherY) ** 2 < 0.026) {
        close++;
        break;
      }
    }
  }
  return close / points.length;
}

function nearby(obstacles: readonly Obstacle[], a: Point, b: Point): Obstacle[] {
  const reach = 1.6;
  return obstacles.filter(
    ({ at: [x, y] }) =>
      x > Math.min(a[0], b[0]) - reach &&
      x < Math.max(a[0], b[0]) + reach &&
      y > Math.min(a[1], b[1]) - reach &&
      y < Math.max(a[1], b[1]) + reach,
  );
}
