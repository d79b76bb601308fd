/**
 * A clash: a jagged line from ghost to ghost, or a jagged ring round one that is both; its line swells twice and then
 * stays still. The line avoids digits and other ghosts as a link does.
 */

import type { Candidate } from '../grid/candidates.ts';
import { inSeries, spokenCandidates } from '../grid/notation/spoken.ts';
import { obstaclesAt } from '../picture/link-plan.ts';
import { routeOf } from '../picture/link-route.ts';
import { type NodeShape, nearestOnNode, ringRadius } from '../picture/node-shape.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, cut, length, line, onCircle, type Path, pointAlong, towards } from '../picture/path.ts';
import { strokePaths, strokeWidth } from '../picture/pen.ts';
import { distance } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import type { Point } from '../scene/scene.ts';
import type { Mark } from '../timeline/film.ts';
import { ghostShape } from './ghost.ts';
import { always, type MarkWords } from './words.ts';

export const words = {
  clause: ([shape], { grid }) => {
    const nodes = shape?.between.map((node) => spokenCandidates(grid, node)) ?? [];
    if (nodes.length === 1) return `a clash: ${nodes[0]} cannot be both true and not true`;
    return `a clash between ${inSeries(nodes)}`;
  },
  isClaim: false,
  areJoined: false,
  isNews: true,
  answers: always,
} satisfies MarkWords<'clash'>;

export const painting = {
  comesIn: (_, motion) => motion.circle,
  pulses: true,
  candidates: ({ between }) => between.flat(),
  isRinged: false,
  covers: none,
  onBoard: { line: each(paintClash) },
  onFrame: {},
} satisfies MarkPainting<'clash'>;

/** The fraction of its width by which the line of a clash swells in a beat. */
const pulse = 0.9;
const longestJag = 0.8;

/** Joins what cannot be true together. */
function paintClash(stage: BoardStage, { mark, ink }: Standing<'clash'>): void {
  const paths = clashPaths(stage, mark, mark.shape.between).map((path) => begun(path, Math.min(1, ink.progress)));
  const swollen = 1 + pulse * Math.max(0, ink.progress - 1);
  const width = strokeWidth(stage, 0.05) * swollen;
  strokePaths(stage, paths, { colour: stage.look.colours.text, width, alpha: ink.alpha, cased: true });
}

function clashPaths(stage: BoardStage, mark: Mark, between: readonly (readonly Candidate[])[]): Path[] {
  const nodes = between
    .filter((node) => node.length > 0)
    .map((candidates) => ({ candidates, shape: ghostShape(stage, candidates) }));
  const [only, ...others] = nodes;
  if (only === undefined) return [];
  if (others.length === 0) return only.shape.centres.map((centre) => jaggedRing(centre, only.shape.radius));
  return others.map((to, index) => {
    const from = nodes[index]!;
    const start = nearestOnNode(from.shape, to.shape.centres[0]!);
    const end = nearestOnNode(to.shape, start);
    const radius = Math.max(from.shape.radius, to.shape.radius);
    const gap = distance(start, end) - 2 * radius;
    if (gap < leastWay) return jagAcross(start, end, radius);
    // No more room than for the teeth: there is nothing between that must be readable.
    if (gap < longestJag) return jaggedAbout(line(towards(start, end, radius), towards(end, start, radius)));
    const own = new Set([...from.candidates, ...to.candidates]);
    return jaggedAbout(wayBetween(stage, mark, from.shape, to.shape, own));
  });
}

/** Between rims closer than this, in cells, a line looks like a tooth. */
const leastWay = 0.2;

function wayBetween(stage: BoardStage, mark: Mark, from: NodeShape, to: NodeShape, own: ReadonlySet<Candidate>): Path {
  const { film } = stage;
  const used = stage.ringed(film.marks.filter(({ step }) => step === mark.step));
  const obstacles = obstaclesAt(film, mark, used, own, ringRadius(stage));
  return routeOf({
    from,
    to,
    gap: 0,
    least: leastWay,
    head: 0,
    obstacles,
    before: [],
    heads: [],
    size: film.grid.size,
  });
}

/** The line with teeth around its middle. */
function jaggedAbout(path: Path): Path {
  const long = length(path);
  const toothed = Math.min(longestJag, long);
  const first = (long - toothed) / 2;
  const height = Math.min(0.13, long / 4);
  const teeth = Math.max(2, Math.round(toothed / (height * 1.5)));
  const points = Array.from({ length: teeth }, (_, tooth): Point => {
    const along = first + (toothed * (tooth + 0.5)) / teeth;
    const [before, at, after] = [along - 0.02, along, along + 0.02].map((far) =>
      pointAlong(path, Math.min(long, Math.max(0, far))),
    );
    const far = distance(before!, after!) || 1;
    const across = tooth % 2 === 0 ? height : -height;
    const [ux, uy] = [(after![0] - before![0]) / far, (after![1] - before![1]) / far];
    return [at![0] - uy * across, at![1] + ux * across];
  });
  const [leaving, arriving] = [cut(path, 0, first).points, cut(path, long - first, long).points];
  return line(
    ...(first > 0 ? leaving : leaving.slice(0, 1)),
    ...points,
    ...(first > 0 ? arriving : arriving.slice(-1)),
  );
}

/** Where the rims touch: a short jag across. */
function jagAcross(from: Point, to: Point, radius: number): Path {
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const [dx, dy] = distance(from, to) === 0 ? [1, 0] : [(to[0] - from[0]) * 9, (to[1] - from[1]) * 9];
  const reach = radius * 1.5;
  return jagged(
    towards(middle, [middle[0] - dy, middle[1] + dx], reach),
    towards(middle, [middle[0] + dy, middle[1] - dx], reach),
    0.09,
  );
}

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
