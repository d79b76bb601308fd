/**
 * A stroke as areas: its two sides, its joints and its ends. A stroke on a board filmed at an angle is wider where
 * the board is nearer; the canvas cannot draw such a line, but it can fill its outline after it was mapped.
 */
import type { Point } from '../scene/scene.ts';
import { circle, type Path, polygon } from './path.ts';

/** Areas that together make the stroke, all turning the same way, to be filled by the nonzero rule. */
export function strokeOutline(path: Path, half: number, cap: 'butt' | 'round'): Path[] {
  const points = path.closed ? [...path.points, path.points[0]!] : path.points;
  const areas: Path[] = [];
  for (let index = 1; index < points.length; index++) {
    const side = sideOf(points[index - 1]!, points[index]!, half);
    if (side !== undefined) areas.push(side);
  }
  points.forEach((point, index) => {
    const inner = path.closed || (index > 0 && index < points.length - 1);
    if (inner || cap === 'round') areas.push(joint(point, half));
  });
  return areas;
}

function sideOf(from: Point, to: Point, half: number): Path | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const long = Math.hypot(dx, dy);
  if (long === 0) return undefined;
  const [nx, ny] = [(-dy / long) * half, (dx / long) * half];
  return polygon(
    [from[0] - nx, from[1] - ny],
    [to[0] - nx, to[1] - ny],
    [to[0] + nx, to[1] + ny],
    [from[0] + nx, from[1] + ny],
  );
}

function joint(point: Point, half: number): Path {
  const round = circle(point, half).points;
  // A quarter of the corners is round enough for a stroke's width, and joints are many.
  return { points: round.filter((_, index) => index % 4 === 0), closed: true };
}
