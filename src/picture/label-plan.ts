/**
 * Where the tags of labels are: of the places around what a label names, the one that covers least. All labels of a
 * step are placed together, considering what is shown when each appears and what the step marks at any time, so that
 * none moves while it is on screen.
 */
import type { Cell } from '../grid/grid.ts';
import type { Point } from '../scene/scene.ts';
import type { Mark } from '../timeline/film.ts';
import { type PlannedLink, planStepLinks } from './link-plan.ts';
import { ringRadius } from './node-shape.ts';
import { edgesOf } from './patch.ts';
import { length, type Path, pointAlong } from './path.ts';
import { middleOf, pointOfCandidate, smallDigitsAround } from './small-digits.ts';
import type { BoardStage } from './stage.ts';
import { capitalHeight, widthOf } from './type.ts';

/** A label with its place found. */
export interface PlannedLabel {
  readonly mark: Mark;
  readonly text: string;
  /** What the label names, and the distance of its stem from the middle of that. */
  readonly named: Point;
  readonly clear: number;
  readonly middle: Point;
  /** Half of the tag's width and height. */
  readonly half: Point;
  /** Of the capitals. */
  readonly height: number;
}

/** The labels of every step that has one on screen. Lengths and points are in cells. */
export function planLabels(stage: BoardStage): PlannedLabel[] {
  const { film, standing } = stage;
  const steps = new Set(standing.filter(({ mark }) => mark.shape.kind === 'label').map(({ mark }) => mark.step));
  return [...steps].flatMap((step) => {
    const marks = film.marks.filter((mark) => mark.step === step);
    const links = planStepLinks(stage, step);
    const planned: PlannedLabel[] = [];
    for (const mark of marks) {
      const label = planLabel(stage, mark, marks, links, planned);
      if (label !== undefined) planned.push(label);
    }
    return planned;
  });
}

function planLabel(
  stage: BoardStage,
  mark: Mark,
  marks: readonly Mark[],
  links: readonly PlannedLink[],
  before: readonly PlannedLabel[],
): PlannedLabel | undefined {
  if (mark.shape.kind !== 'label') return undefined;
  const { film, look, place } = stage;
  const { text, cell, candidate } = mark.shape;
  const px = Math.min(look.type.labelPx * stage.unit, place.cellPx * 0.36);
  const width = widthOf(stage.context, text, { family: look.type.family, weight: 600, px }) / place.cellPx;
  const height = (px * capitalHeight) / place.cellPx;
  const half: Point = [width / 2 + height * 0.55, height];
  const named = candidate === undefined ? middleOf(film.grid, cell) : pointOfCandidate(film, candidate);
  const clear = candidate === undefined ? 0.42 : ringRadius(stage) + 0.06;
  let middle = named;
  let least = Number.POSITIVE_INFINITY;
  const covers = coverCost(stage, mark, marks, links);
  placesRound(named, clear, half, film.grid.size).forEach((place, index) => {
    const clash = before.some((other) => overlap(place, half, other)) ? 30 : 0;
    const cost = covers(place, half) + clash + index * 0.08;
    if (cost < least) [middle, least] = [place, cost];
  });
  return { mark, text, named, clear, middle, half, height };
}

/** Near ones first; of these above, below, right, left, then diagonal. */
function placesRound(named: Point, clear: number, half: Point, size: number): Point[] {
  return [0.16, 0.5, 0.9].flatMap((stem) =>
    directions.map(([sx, sy]): Point => {
      const x = named[0] + sx * (clear + stem * (sy === 0 ? 1 : 0.5) + half[0]);
      const y = named[1] + sy * (clear + stem + half[1]);
      // Above and below, a tag at the board's side is moved in; its stem is then oblique.
      const inside = Math.min(Math.max(x, half[0] + 0.04), size - half[0] - 0.04);
      return [sy === 0 ? x : inside, y];
    }),
  );
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

/** What a tag at some place would cover, weighed: candidates in use, links, digits, other small digits. */
function coverCost(stage: BoardStage, mark: Mark, marks: readonly Mark[], links: readonly PlannedLink[]) {
  const { film } = stage;
  const { size } = film.grid;
  const isUp = (shown: { readonly from: number; readonly until: number }) =>
    shown.from <= mark.from && mark.from < shown.until;
  const used = [...stage.ringed(marks)].map((candidate) => pointOfCandidate(film, candidate));
  const small = smallDigitsAround(film)
    .filter(isUp)
    .map(({ candidate }) => pointOfCandidate(film, candidate));
  const digits: readonly Cell[] = [...film.standing, ...film.written.filter(isUp)].map(({ cell }) => cell);
  const outlined = marks.flatMap(({ shape }) =>
    shape.kind === 'outline' ? edgesOf(film.grid, shape.cells, 0.03, 0).map(densely) : [],
  );
  return (middle: Point, half: Point): number => {
    const count = (points: readonly Point[], reach: number) =>
      points.filter(([x, y]) => Math.abs(x - middle[0]) < half[0] + reach && Math.abs(y - middle[1]) < half[1] + reach)
        .length;
    const beyond = Math.max(
      half[0] - middle[0],
      half[1] - middle[1],
      middle[0] + half[0] - size,
      middle[1] + half[1] - size,
      0,
    );
    const digitMiddles = digits.map((cell) => middleOf(film.grid, cell));
    const onLinks = links.reduce((sum, { path }) => sum + count(path.points, 0.06) / path.points.length, 0);
    // A word on the line around a patch would look like a part of the line.
    const onOutlines = outlined.filter((points) => count(points, 0.04) > 0).length;
    return (
      (beyond > 0 ? 20 + 20 * beyond : 0) +
      8 * count(used, 0.16) +
      12 * onLinks +
      4 * onOutlines +
      3 * count(digitMiddles, 0.24) +
      0.5 * count(small, 0.08)
    );
  };
}

/** A closed line as points a tenth of a cell apart. */
function densely(path: Path): Point[] {
  const long = length(path);
  return Array.from({ length: Math.ceil(long * 10) }, (_, step) => pointAlong(path, step / 10));
}

function overlap(middle: Point, half: Point, other: PlannedLabel): boolean {
  return (
    Math.abs(middle[0] - other.middle[0]) < half[0] + other.half[0] &&
    Math.abs(middle[1] - other.middle[1]) < half[1] + other.half[1]
  );
}
