/**
 * The shape that a link leaves and enters: the ring round one candidate, or the soft hull round the candidates of a
 * grouped or almost locked node. Both are all points nearer than a radius to a skeleton: to one point, or to the
 * shortest tree of lines that joins the candidates.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Point } from '../scene/scene.ts';
import type { Film } from '../timeline/film.ts';
import { contourAt } from './contour.ts';
import { circle, type Path } from './path.ts';
import { wideRoom } from './ring-room.ts';
import { distance, pointOfCandidate } from './small-digits.ts';
import type { BoardStage } from './stage.ts';

/** All points nearer than `radius` to the candidates or to the lines that join them, in cells. */
export interface NodeShape {
  readonly centres: readonly Point[];
  /** The lines of the tree; none for a single candidate. */
  readonly bones: readonly (readonly [Point, Point])[];
  readonly radius: number;
}

/** The middle of the stroke of a ring with nothing near it, in cells: it goes round a small digit that has come forward. */
export function ringRadius(stage: BoardStage): number {
  return wideRoom(stage.film, stage.look).radius;
}

/** The shape of a node as it is drawn: the ring of one candidate has the room that its neighbours leave it. */
export function nodeShapeOn(stage: BoardStage, candidates: readonly Candidate[]): NodeShape {
  const [only, ...others] = candidates;
  const room = only === undefined || others.length > 0 ? undefined : stage.rooms.get(only);
  return nodeShape(stage.film, room?.radius ?? ringRadius(stage), candidates);
}

/** The shape of a node of these candidates, one or several. */
export function nodeShape(film: Film, radius: number, candidates: readonly Candidate[]): NodeShape {
  const centres = candidates.map((candidate) => pointOfCandidate(film, candidate));
  return { centres, bones: shortestTree(centres), radius };
}

/** How far a point lies outside the shape; below 0 within. */
export function distanceToNode(node: NodeShape, point: Point): number {
  return distanceToBones(node, point) - node.radius;
}

/** The outline: a circle, or a contour that is soft where the lines meet. */
export function outlineOf(node: NodeShape): Path[] {
  const [only, ...others] = node.centres;
  if (only === undefined) return [];
  if (others.length === 0) return [circle(only, node.radius)];
  const reach = node.radius * 1.5;
  const xs = node.centres.map(([x]) => x);
  const ys = node.centres.map(([, y]) => y);
  const box = {
    left: Math.min(...xs) - reach,
    top: Math.min(...ys) - reach,
    right: Math.max(...xs) + reach,
    bottom: Math.max(...ys) + reach,
  };
  return contourAt((point) => distanceToBones(node, point), node.radius, box, 1 / 24);
}

/** The point of the skeleton that is nearest. */
export function nearestOnNode(node: NodeShape, point: Point): Point {
  let nearest = node.centres[0] ?? point;
  for (const [from, to] of node.bones) {
    const foot = nearestOnLine(from, to, point);
    if (distance(foot, point) < distance(nearest, point)) nearest = foot;
  }
  return nearest;
}

/** The point nearest to `point` on the straight line between two others, its ends included. */
export function nearestOnLine(from: Point, to: Point, point: Point): Point {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  if (square === 0) return from;
  const part = Math.min(1, Math.max(0, ((point[0] - from[0]) * dx + (point[1] - from[1]) * dy) / square));
  return [from[0] + dx * part, from[1] + dy * part];
}

function distanceToBones(node: NodeShape, point: Point): number {
  return distance(nearestOnNode(node, point), point);
}

/** Prim's algorithm, from the first centre on; ties go to the earlier. */
function shortestTree(centres: readonly Point[]): [Point, Point][] {
  const [first, ...outside] = centres;
  if (first === undefined) return [];
  const inside = [first];
  const bones: [Point, Point][] = [];
  while (outside.length > 0) {
    let best: readonly [number, Point] = [0, inside[0]!];
    let least = Number.POSITIVE_INFINITY;
    outside.forEach((candidate, index) => {
      for (const root of inside) {
        if (distance(root, candidate) < least - 1e-9) {
          least = distance(root, candidate);
          best = [index, root];
        }
      }
    });
    const [index, root] = best;
    const [added] = outside.splice(index, 1);
    inside.push(added!);
    bones.push([root, added!]);
  }
  return bones;
}
