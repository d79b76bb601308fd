/**
 * Ghosts: what would be so if something were. True: a dashed ring round the small digit, or round all of a node. Not
 * true: a thin bar beneath each digit of the node. A clash: a jagged line from ghost to ghost, or a jagged ring round one
 * that is both; its line swells twice and then stands.
 */
import type { Candidate } from '../../grid/candidates.ts';
import type { Point } from '../../scene/scene.ts';
import { type NodeShape, nearestOnNode, nodeShape, outlineOf, ringRadius } from '../node-shape.ts';
import { begun, begunDashes, dashes, line, onCircle, type Path, towards } from '../path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../pen.ts';
import { roomFor, roundRoom } from '../ring-room.ts';
import { distance, pointOfCandidate } from '../small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../stage.ts';

/** Parts of a cell, and of full ink. */
const ghostStroke = 0.034;
const ghostInk = 0.85;
const ghostTint = 0.1;

/** By how much of its width the line of a clash swells in a beat. */
const pulse = 0.9;

/** One ghost. */
export function paintGhost(stage: BoardStage, { mark, ink }: Standing): void {
  if (mark.shape.kind !== 'ghost') return;
  const { candidates, isTrue } = mark.shape;
  const [first] = candidates;
  if (first === undefined) return;
  const colour = colourOf(stage, mark);
  const stroke = {
    colour,
    width: strokeWidth(stage, ghostStroke),
    alpha: ghostInk * ink.alpha,
    cased: true,
    cap: 'butt',
  } as const;
  const outline =
    candidates.length > 1
      ? outlineOf(ghostShape(stage, candidates))
      : [roundRoom(pointOfCandidate(stage.film, first), { ...roomFor(stage, first), radius: ghostRadius(stage) })];
  if (isTrue) {
    fillPaths(stage, outline, colour, ghostTint * ink.progress * ink.alpha);
    strokePaths(
      stage,
      outline.flatMap((path) => begunDashes(path, 0.11, 0.085, ink.progress)),
      stroke,
    );
    return;
  }
  if (candidates.length > 1) {
    const dots = outline.flatMap((path) => dashes(path, 0.035, 0.085));
    strokePaths(stage, dots, { ...stroke, width: stroke.width * 0.7, alpha: stroke.alpha * ink.progress });
  }
  strokePaths(
    stage,
    candidates.map((candidate) => begun(barBeneath(stage, candidate), ink.progress)),
    stroke,
  );
}

/** What cannot stand together, joined. */
export function paintClash(stage: BoardStage, { mark, ink }: Standing): void {
  if (mark.shape.kind !== 'clash') return;
  const paths = clashPaths(stage, mark.shape.between).map((path) => begun(path, Math.min(1, ink.progress)));
  const swollen = 1 + pulse * Math.max(0, ink.progress - 1);
  const width = strokeWidth(stage, 0.05) * swollen;
  strokePaths(stage, paths, { colour: stage.look.colours.text, width, alpha: ink.alpha, cased: true });
}

function clashPaths(stage: BoardStage, between: readonly (readonly Candidate[])[]): Path[] {
  const nodes = between.filter((node) => node.length > 0).map((node) => ghostShape(stage, node));
  const [only, ...others] = nodes;
  if (only === undefined) return [];
  if (others.length === 0) return only.centres.map((centre) => jaggedRing(centre, only.radius));
  return others.map((to, index) => {
    const from = nodes[index]!;
    const start = nearestOnNode(from, to.centres[0]!);
    const end = nearestOnNode(to, start);
    return jaggedLine(start, end, Math.max(from.radius, to.radius));
  });
}

/** Straight from rim to rim, jagged about its middle; where the rims touch, a short jag across. */
function jaggedLine(from: Point, to: Point, radius: number): Path {
  const gap = distance(from, to) - 2 * radius;
  if (gap < 0.2) {
    const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const [dx, dy] = gap + 2 * radius === 0 ? [1, 0] : [(to[0] - from[0]) * 9, (to[1] - from[1]) * 9];
    const reach = radius * 1.5;
    return jagged(
      towards(middle, [middle[0] - dy, middle[1] + dx], reach),
      towards(middle, [middle[0] + dy, middle[1] - dx], reach),
      0.09,
    );
  }
  const [start, end] = [towards(from, to, radius), towards(to, from, radius)];
  const straight = Math.max(0, (gap - longestJag) / 2);
  const jag = jagged(towards(start, end, straight), towards(end, start, straight), Math.min(0.13, gap / 4));
  return line(start, ...jag.points, end);
}

const longestJag = 0.8;

/** Teeth to either side, about as wide as high. */
function jagged(from: Point, to: Point, height: number): Path {
  const long = distance(from, to);
  const teeth = Math.max(2, Math.round(long / (height * 1.5)));
  const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
  const points = Array.from({ length: teeth }, (_, tooth): Point => {
    const along = (long * (tooth + 0.5)) / teeth;
    const across = tooth % 2 === 0 ? height : -height;
    return [from[0] + ux * along - uy * across, from[1] + uy * along + ux * across];
  });
  return line(from, ...points, to);
}

function jaggedRing(centre: Point, radius: number): Path {
  const points = Array.from({ length: 24 }, (_, tooth) =>
    onCircle(centre, radius * (tooth % 2 === 0 ? 1.2 : 1.5), tooth / 24 - 0.25),
  );
  return { points, closed: true };
}

/** Inside the cell even at its lower edge. */
function barBeneath(stage: BoardStage, candidate: Candidate): Path {
  const [x, y] = pointOfCandidate(stage.film, candidate);
  const half = ghostRadius(stage) * 0.66;
  const under = y + ringRadius(stage) * 0.88;
  return line([x - half, under], [x + half, under]);
}

function ghostShape(stage: BoardStage, candidates: readonly Candidate[]): NodeShape {
  return nodeShape(stage.film, ghostRadius(stage), candidates);
}

/** Wide enough to go round a circle, also where small digits stand close by: its dashes must be seen as such. */
function ghostRadius(stage: BoardStage): number {
  return ringRadius(stage) * 1.12;
}
