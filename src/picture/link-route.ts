/**
 * The route of a link from the rim of one node to the rim of another: straight if that is clear, otherwise bent as
 * little as needed to avoid the digits in use and the links drawn before. The same film gives the same route in every
 * frame.
 */
import type { Point } from '../scene/scene.ts';
import { anchors, type Line, type LinkEnds, linesBetween, manyLinesBetween } from './link-lines.ts';
import { distanceToNode, type NodeShape, nearestOnLine } from './node-shape.ts';
import { cut, length, type Path, pointAlong } from './path.ts';
import { distance } from './small-digits.ts';

/** Something to avoid: a disc, in cells, and how much it matters. */
export interface Obstacle {
  readonly at: Point;
  readonly radius: number;
  readonly weight: number;
  /** Closer than this, in cells, a line would cover what must be readable: a candidate in use. */
  readonly cover?: number;
  /** Closer than this, in cells, a line covers the middle of what should be readable: an unmarked digit. */
  readonly blot?: number;
}

/** What a route must join and avoid; lengths and points in cells. */
export interface RouteWish extends LinkEnds {
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
 * The best of a fixed list of curves; of two equally good ones, the first, which is straighter. If that covers a
 * candidate in use, or the middle of another, the best of a longer list.
 */
export function routeOf(wish: RouteWish): Path {
  const key = JSON.stringify(wish);
  const known = routes.get(key);
  if (known !== undefined) return known;
  const usual = bestOf(wish, linesBetween);
  const isGood = usual.cost < coverCost && !liesOnDigit(usual.path, wish.obstacles);
  const { path } = isGood ? usual : bestOf(wish, manyLinesBetween, usual);
  if (routes.size >= mostRoutes) routes.clear();
  routes.set(key, path);
  return path;
}

/** Whether the line covers the middle of an unmarked digit. */
function liesOnDigit({ points }: Path, obstacles: readonly Obstacle[]): boolean {
  return obstacles.some(({ at, blot }) => blot !== undefined && distanceToLine(points, at) < blot);
}

/** Cached routes: a link is on every frame of its step, and finding its route takes longer than drawing it. */
const routes = new Map<string, Path>();
const mostRoutes = 200;

/** More than everything else that is bad about a line. */
const coverCost = 100;

interface Found {
  readonly path: Path;
  readonly cost: number;
}

function bestOf(wish: RouteWish, family: (a: Point, b: Point, ends: LinkEnds) => Line[], known?: Found): Found {
  const pairs = anchors(wish.from, wish.to);
  let best = known;
  for (const [a, b] of pairs) {
    const near = nearby(wish.obstacles, a, b);
    // A detour to another pair of candidates costs its extra length over the nearest.
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

/** Without the parts inside the nodes and their gaps. */
function visible(path: Path, { from, to, gap }: RouteWish): Path {
  const { points } = path;
  const out = points.findIndex((point) => distanceToNode(from, point) >= gap);
  const into = points.findLastIndex((point) => distanceToNode(to, point) >= gap);
  if (out < 0 || into < 0 || out >= into) return { points: [points[0]!], closed: false };
  const first = out === 0 ? points[0]! : crossing(points[out - 1]!, points[out]!, from, gap);
  const last = into === points.length - 1 ? points[into]! : crossing(points[into + 1]!, points[into]!, to, gap);
  return { points: [first, ...points.slice(out, into + 1), last], closed: false };
}

/** Where the line from a point inside to a point outside crosses the rim. */
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

/** What is bad about a line, added up; abandoned as soon as it is worse than `limit`. */
function costOf(path: Path, bend: number, wish: RouteWish, obstacles: readonly Obstacle[], limit: number): number {
  const { points } = path;
  const drawn = length(path);
  let cost = bend * 1.2;
  if (drawn < wish.least) cost += 40 * (wish.least - drawn) + 10;
  // A head with hardly any line behind it looks like a spot.
  cost += 6 * Math.max(0, wish.least * 1.6 - drawn);
  for (const [x, y] of points) {
    const beyond = Math.max(-x, -y, x - wish.size, y - wish.size) - 0.02;
    if (beyond > 0) cost += 2 * beyond;
  }
  let middle = 0;
  const ownHead = wish.head > 0 ? pointAlong(path, drawn - wish.head * 0.6) : undefined;
  for (const { at, radius, weight, cover, blot } of obstacles) {
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
    if (blot !== undefined) middle = Math.max(middle, 1 - Math.sqrt(square) / blot);
    if (cover !== undefined && distanceToLine(points, at) < cover) cost += coverCost;
  }
  cost += blotWeight * middle;
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

/** The cost of covering the middle of an unmarked digit; one is as bad as several. */
const blotWeight = 2;

/** The distance that other things should keep from the middle of a head, in cells, and the cost of coming closer. */
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
