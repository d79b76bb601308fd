/**
 * The shape that a link leaves and enters: the ring around one candidate, or the soft hull around the candidates of a
 * grouped or almost locked node. The hull is a disc around each candidate, and a thin neck along each line of the
 * shortest tree that joins them; a neck goes around a candidate in use that is not in the node.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Point } from '../scene/scene.ts';
import type { Film } from '../timeline/film.ts';
import { contourAt } from './contour.ts';
import { circle, type Path } from './path.ts';
import { wideRoom } from './ring-room.ts';
import { distance, pointOfCandidate } from './small-digits.ts';
import type { BoardStage } from './stage.ts';

type Bone = readonly [Point, Point];

/** All points nearer than `radius` to the candidates or than `neck` to the lines that join them, in cells. */
export interface NodeShape {
  readonly centres: readonly Point[];
  /** The lines of the tree; none for a single candidate. */
  readonly bones: readonly Bone[];
  readonly radius: number;
  readonly neck: number;
}

/** Half the width of a neck, in cells: thin enough that digits it passes stay readable. */
const neck = 0.12;
/** How softly a neck runs into a disc: the width, in cells, over which the two are blended. */
const softness = 0.14;

/**
 * The middle of the stroke of a ring with nothing near it, in cells: it goes around a small digit that has come
 * forward.
 */
export function ringRadius(stage: BoardStage): number {
  return wideRoom(stage.film, stage.look).radius;
}

/** The shape of a node as it is drawn: the ring of one candidate has the room that its neighbours leave. */
export function nodeShapeOn(stage: BoardStage, candidates: readonly Candidate[]): NodeShape {
  const [only, ...others] = candidates;
  const room = only === undefined || others.length > 0 ? undefined : stage.rooms.get(only);
  return nodeShape(stage.film, room?.radius ?? ringRadius(stage), candidates, [...stage.rooms.keys()]);
}

/** The shape of a node of these candidates, one or several, its necks clear of the others that are used. */
export function nodeShape(
  film: Film,
  radius: number,
  candidates: readonly Candidate[],
  used: readonly Candidate[] = [],
): NodeShape {
  const centres = candidates.map((candidate) => pointOfCandidate(film, candidate));
  // Those in a cell of the node are as close to its discs as to its necks.
  const strangers = used
    .map((candidate) => pointOfCandidate(film, candidate))
    .filter((point) => centres.every((centre) => distance(centre, point) > 0.6));
  const bones = shortestTree(centres).flatMap((bone) => bonesRound(bone, strangers));
  return { centres, bones, radius, neck: Math.min(neck, radius) };
}

/** How far a point is outside the shape; below 0 inside. */
export function distanceToNode(node: NodeShape, point: Point): number {
  let toDiscs = Number.POSITIVE_INFINITY;
  for (const centre of node.centres) toDiscs = Math.min(toDiscs, distance(centre, point) - node.radius);
  if (node.bones.length === 0) return toDiscs;
  let toNecks = Number.POSITIVE_INFINITY;
  for (const [from, to] of node.bones) {
    toNecks = Math.min(toNecks, distance(nearestOnLine(from, to, point), point) - node.neck);
  }
  // The smooth minimum of a square: the lesser of the two, and a little less where they are nearly equal.
  const close = Math.max(0, softness - Math.abs(toDiscs - toNecks)) / softness;
  return Math.min(toDiscs, toNecks) - (close * close * softness) / 4;
}

/** The outline: a circle, or a contour that is soft where the lines meet. */
export function outlineOf(node: NodeShape): Path[] {
  const [only, ...others] = node.centres;
  if (only === undefined) return [];
  if (others.length === 0) return [circle(only, node.radius)];
  const reach = node.radius * 1.5;
  const points = [...node.centres, ...node.bones.flat()];
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const box = {
    left: Math.min(...xs) - reach,
    top: Math.min(...ys) - reach,
    right: Math.max(...xs) + reach,
    bottom: Math.max(...ys) + reach,
  };
  return contourAt((point) => distanceToNode(node, point), 0, box, 1 / 24);
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

/** How close a neck may come to the middle of a ring outside its node, in cells; and how far away it goes around it. */
const clear = 0.36;
const detour = 0.4;

/** The bone itself, or three that go around the other candidates on its way, on the side with fewer of them. */
function bonesRound([from, to]: Bone, strangers: readonly Point[]): Bone[] {
  const long = distance(from, to);
  const straight: Bone[] = [[from, to]];
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  if (met(straight, strangers).length === 0) return straight;
  // It stays to the side nearly all the way, along the cells' edges, where it passes fewer digits than across their
  // middles.
  const aside = Math.min(0.4, long / 3);
  const off = (far: number, side: number): Point => [
    from[0] + ux * far - uy * detour * side,
    from[1] + uy * far + ux * detour * side,
  ];
  const ways = [-1, 1].map((side): Bone[] => {
    const [out, back] = [off(aside, side), off(long - aside, side)];
    return [
      [from, out],
      [out, back],
      [back, to],
    ];
  });
  return ways.sort((one, other) => met(one, strangers).length - met(other, strangers).length)[0]!;
}

function met(bones: readonly Bone[], strangers: readonly Point[]): Point[] {
  return strangers.filter((point) =>
    bones.some(([from, to]) => distance(nearestOnLine(from, to, point), point) < clear),
  );
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
