/**
 * A word on a small tag near the candidate or cell that it names, where it covers least, with a stem that points there.
 */
import type { Point } from '../../scene/scene.ts';
import { casingOf } from '../colour.ts';
import type { PlannedLink } from '../link-plan.ts';
import { nearestOnLine, ringRadius } from '../node-shape.ts';
import { line, polygon, rectangle, roundCorners } from '../path.ts';
import { fillPaths, strokePaths, strokeWidth, writeWords } from '../pen.ts';
import { distance, middleOf, pointOfCandidate } from '../small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../stage.ts';
import { capitalHeight, widthOf } from '../type.ts';

interface Tag {
  readonly middle: Point;
  readonly half: Point;
}

/** All labels on screen; each keeps clear of those before it. */
export function paintLabels(stage: BoardStage, links: readonly PlannedLink[]): void {
  const placed: Tag[] = [];
  for (const standing of stage.standing) {
    if (standing.mark.shape.kind === 'label') placed.push(paintLabel(stage, standing, placed, links));
  }
}

function paintLabel(
  stage: BoardStage,
  { mark, ink }: Standing,
  placed: readonly Tag[],
  links: readonly PlannedLink[],
): Tag {
  const shape = mark.shape;
  if (shape.kind !== 'label') throw new TypeError('not a label');
  const { film, look, place } = stage;
  const px = Math.min(look.type.labelPx * stage.unit, place.cellPx * 0.36);
  const setting = { family: look.type.family, weight: 600, px };
  const width = widthOf(stage.context, shape.text, setting) / place.cellPx;
  const height = (px * capitalHeight) / place.cellPx;
  const half: Point = [width / 2 + height * 0.55, height * 1.0];
  const named =
    shape.candidate === undefined ? middleOf(film.grid, shape.cell) : pointOfCandidate(film, shape.candidate);
  const clear = shape.candidate === undefined ? 0.42 : ringRadius(stage) + 0.06;
  const tag = { middle: bestMiddle(stage, named, clear, half, placed, links), half };
  const colour = colourOf(stage, mark);
  const alpha = ink.alpha * ink.progress;
  const [x, y] = tag.middle;
  const body = roundCorners(rectangle(x - half[0], y - half[1], x + half[0], y + half[1]), height * 0.5);
  const foot = nearestOnLine([x - half[0] * 0.7, y], [x + half[0] * 0.7, y], named);
  const reach = distance(foot, named) - clear;
  const tip: Point = [
    foot[0] + ((named[0] - foot[0]) * reach) / distance(foot, named),
    foot[1] + ((named[1] - foot[1]) * reach) / distance(foot, named),
  ];
  const rim = strokeWidth(stage, 0.03) * 0.8;
  strokePaths(stage, [line(foot, tip)], { colour, width: strokeWidth(stage, 0.04), alpha, cased: true });
  strokePaths(stage, [body], { colour, width: rim, alpha, cased: true });
  fillPaths(stage, [polygon(...body.points)], look.colours.card, alpha);
  writeWords(stage, [
    {
      text: shape.text,
      at: tag.middle,
      height,
      weight: 600,
      colour: casingOf(look.colours, look.colours.card),
      alpha,
      casing: 0,
    },
  ]);
  return tag;
}

/** Of places all round the named point, near and further off, the one that covers least of what is in use. */
function bestMiddle(
  stage: BoardStage,
  named: Point,
  clear: number,
  half: Point,
  placed: readonly Tag[],
  links: readonly PlannedLink[],
): Point {
  const { size } = stage.film.grid;
  const options = [0.16, 0.5, 0.9].flatMap((stem) =>
    directions.map(([sx, sy]): Point => {
      const x = named[0] + sx * (clear + stem * (sy === 0 ? 1 : 0.5) + half[0]);
      const y = named[1] + sy * (clear + stem + half[1]);
      // Above and below, a tag at the board's side is moved in; its stem then stands aslant.
      const inside = Math.min(Math.max(x, half[0] + 0.04), size - half[0] - 0.04);
      return [sy === 0 ? x : inside, y];
    }),
  );
  let best = options[0]!;
  let least = Number.POSITIVE_INFINITY;
  options.forEach((middle, index) => {
    const cost = costOf(stage, { middle, half }, placed, links) + index * 0.08;
    if (cost < least) [best, least] = [middle, cost];
  });
  return best;
}

const directions: readonly Point[] = [
  [0, -1],
  [0, 1],
  [1, 0],
  [-1, 0],
  [0.6, -1],
  [-0.6, -1],
  [0.6, 1],
  [-0.6, 1],
];

function costOf(stage: BoardStage, tag: Tag, placed: readonly Tag[], links: readonly PlannedLink[]): number {
  const { film } = stage;
  const { size } = film.grid;
  const covers = (point: Point, reach: number) =>
    Math.abs(point[0] - tag.middle[0]) < tag.half[0] + reach &&
    Math.abs(point[1] - tag.middle[1]) < tag.half[1] + reach;
  let cost = 0;
  const beyond = Math.max(
    tag.half[0] - tag.middle[0],
    tag.half[1] - tag.middle[1],
    tag.middle[0] + tag.half[0] - size,
    tag.middle[1] + tag.half[1] - size,
  );
  if (beyond > 0) cost += 20 + 20 * beyond;
  for (const candidate of stage.involved.keys()) if (covers(pointOfCandidate(film, candidate), 0.16)) cost += 8;
  for (const { index } of stage.drawing.candidates) {
    const small = film.candidates[index];
    if (small !== undefined && covers(pointOfCandidate(film, small.candidate), 0.08)) cost += 0.5;
  }
  const cells = [...film.standing, ...stage.drawing.written.flatMap(({ index }) => film.written[index] ?? [])];
  for (const { cell } of cells) if (covers(middleOf(film.grid, cell), 0.24)) cost += 3;
  for (const { path } of links)
    cost += 12 * (path.points.filter((point) => covers(point, 0.06)).length / path.points.length);
  for (const other of placed) {
    const apart = [0, 1].some(
      (axis) =>
        Math.abs(other.middle[axis as 0 | 1] - tag.middle[axis as 0 | 1]) >
        other.half[axis as 0 | 1] + tag.half[axis as 0 | 1],
    );
    if (!apart) cost += 30;
  }
  return cost;
}
