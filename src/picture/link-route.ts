/**
 * The way of a link from the rim of one node to the rim of another: straight where that is clear, else bent as little
 * as will miss the digits in use and the links drawn before. The same film gives the same way in every frame.
 */
import type { Point } from '../scene/scene.ts';
import { distanceToNode, type NodeShape, nearestOnNode } from './node-shape.ts';
import { bow, cut, length, type Path } from './path.ts';
import { distance } from './small-digits.ts';

/** Something to be missed: a disc, in cells, and how much it matters. */
export interface Obstacle {
  readonly at: Point;
  readonly radius: number;
  readonly weight: number;
}

export interface RouteWish {
  readonly from: NodeShape;
  readonly to: NodeShape;
  /** Between a rim and the line's end, in cells. */
  readonly gap: number;
  /** A shorter line would have no room for its head. */
  readonly least: number;
  readonly obstacles: readonly Obstacle[];
  readonly before: readonly Path[];
  /** Cells in a row of the board, which lines do not leave by more than a little. */
  readonly size: number;
}

/** The best of a fixed list of curves; of two equally good the one listed first, which is the straighter. */
export function routeOf(wish: RouteWish): Path {
  const [a, b] = anchors(wish.from, wish.to);
  const near = nearby(wish.obstacles, a, b);
  let best: Path | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const bend of bends(distance(a, b))) {
    const path = visible(bow(a, handle(a, b, bend), b), wish);
    const cost = costOf(path, bend, distance(a, b), wish, near);
    if (cost < least - 1e-9) [best, least] = [path, cost];
  }
  return best!;
}

/** The nearest points of the two skeletons. */
function anchors(from: NodeShape, to: NodeShape): [Point, Point] {
  let best: [Point, Point] = [from.centres[0]!, to.centres[0]!];
  const offer = (a: Point, b: Point) => {
    if (distance(a, b) < distance(...best) - 1e-9) best = [a, b];
  };
  for (const centre of from.centres) offer(centre, nearestOnNode(to, centre));
  for (const centre of to.centres) offer(nearestOnNode(from, centre), centre);
  return best;
}

/** How far the curve's handle lies off the straight line, in cells, to the right of its direction; small ones first. */
function bends(long: number): number[] {
  const parts = long < 1 ? [0, 0.5, 0.7, 0.9, 1.15] : [0, 0.24, 0.36, 0.5, 0.7, 0.95, 1.3, 1.8].filter((bend) => bend < long * 0.75);
  return parts.flatMap((part) => (part === 0 ? [0] : [part, -part]));
}

function handle(a: Point, b: Point, bend: number): Point {
  const long = Math.max(distance(a, b), 1e-9);
  const [dx, dy] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
  return [(a[0] + b[0]) / 2 - dy * bend, (a[1] + b[1]) / 2 + dx * bend];
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

function costOf(path: Path, bend: number, long: number, wish: RouteWish, obstacles: readonly Obstacle[]): number {
  let cost = (Math.abs(bend) / Math.max(long, 1)) * 1.2;
  const drawn = length(path);
  if (drawn < wish.least) cost += 40 * (wish.least - drawn) + 10;
  const { points } = path;
  for (const obstacle of obstacles) {
    let nearest = obstacle.radius;
    for (const point of points) nearest = Math.min(nearest, distance(point, obstacle.at));
    cost += obstacle.weight * (1 - nearest / obstacle.radius);
  }
  for (const [x, y] of points) {
    const beyond = Math.max(-x, -y, x - wish.size, y - wish.size) - 0.02;
    if (beyond > 0) cost += 2 * beyond;
  }
  for (const other of wish.before) cost += 3 * shared(cut(path, 0.15, drawn - 0.15), other);
  return cost;
}

/** The part of a line that runs along another, closer than a fifth of a cell, and a little for each crossing. */
function shared(path: Path, other: Path): number {
  let close = 0;
  for (const point of path.points) if (other.points.some((each) => distance(each, point) < 0.16)) close++;
  return close / path.points.length;
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
