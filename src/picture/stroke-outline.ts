/**
 * A stroke as areas: its two sides, its sharp joints and its ends. A stroke on a board filmed at an angle is wider
 * where the board is nearer; the canvas cannot draw such a line, but it can fill its mapped outline.
 */
import type { Point } from '../scene/scene.ts';
import { circle, type Path } from './path.ts';

/** Areas that together make the stroke, to be filled by the nonzero rule. */
export function strokeOutline(path: Path, half: number, cap: 'butt' | 'round'): Path[] {
  const points = withoutDoubles(path);
  if (points.length < 2) return cap === 'round' ? points.map((point) => disc(point, half)) : [];
  const ways = waysOf(points, path.closed);
  const [left, right]: [Point[], Point[]] = [[], []];
  const joints: Path[] = [];
  points.forEach((point, index) => {
    const before = ways[index - 1] ?? (path.closed ? ways.at(-1)! : ways[index]!);
    const after = ways[index] ?? before;
    const turn = before[0] * after[0] + before[1] * after[1];
    if (turn < sharp) joints.push(disc(point, half));
    for (const [x, y] of turn < sharp ? [before, after] : [between(before, after)]) {
      left.push([point[0] + y * half, point[1] - x * half]);
      right.push([point[0] - y * half, point[1] + x * half]);
    }
  });
  if (path.closed) return [closed(left), closed(right.reverse()), ...joints];
  const ends = cap === 'round' ? [disc(points[0]!, half), disc(points.at(-1)!, half)] : [];
  return [closed([...left, ...right.reverse()]), ...joints, ...ends];
}

/** The cosine of the turn from which on a corner needs a joint: about 20 degrees. */
const sharp = 0.94;

function withoutDoubles(path: Path): Point[] {
  const points = path.points.filter((point, index) => {
    const before = path.points[index - 1];
    return before === undefined || point[0] !== before[0] || point[1] !== before[1];
  });
  const [first, last] = [points[0], points.at(-1)];
  if (path.closed && points.length > 1 && first![0] === last![0] && first![1] === last![1]) points.pop();
  return points;
}

/** The direction of every segment, of length 1; a closed line has one more. */
function waysOf(points: readonly Point[], isClosed: boolean): Point[] {
  const count = isClosed ? points.length : points.length - 1;
  return Array.from({ length: count }, (_, index): Point => {
    const [from, to] = [points[index]!, points[(index + 1) % points.length]!];
    const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  });
}

function between(a: Point, b: Point): Point {
  const [x, y] = [a[0] + b[0], a[1] + b[1]];
  const long = Math.hypot(x, y);
  return [x / long, y / long];
}

/** Turns in the same direction as a stroke's outline, so that the two never cancel. */
function disc(point: Point, half: number): Path {
  const round = circle(point, half).points;
  // A quarter of the corners is round enough for a stroke's width, and there are many joints.
  return closed(round.filter((_, index) => index % 4 === 0));
}

function closed(points: readonly Point[]): Path {
  return { points, closed: true };
}
