/**
 * The routes of all links of a step, planned together: each avoids the digits on the board when it appears, the
 * candidates that are marked alongside it at any time, and the links before it, including kept ones of earlier steps.
 * So no route changes while it is on screen.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { LinkKind } from '../grid/terms.ts';
import type { Film, Mark, Shown } from '../timeline/film.ts';
import { areTogether } from './callout-plan.ts';
import { type Obstacle, routeOf } from './link-route.ts';
import { type NodeShape, nodeShapeOn, ringRadius } from './node-shape.ts';
import { length, type Path, pointAlong } from './path.ts';
import { strokeWidth } from './pen.ts';
import { distance, middleOf, pointOfCandidate, smallDigitsAround } from './small-digits.ts';
import type { BoardStage } from './stage.ts';

/** A link with its route: from the rim of `from` to the rim of `to`, in cells. */
export interface PlannedLink {
  readonly mark: Mark;
  readonly from: NodeShape;
  readonly to: NodeShape;
  readonly path: Path;
}

/** The planned links of every step that has one on screen. */
export function planLinks(stage: BoardStage): PlannedLink[] {
  const steps = new Set(stage.standing.filter(({ mark }) => endsOf(mark) !== undefined).map(({ mark }) => mark.step));
  const plans: Plans = new Map();
  return [...steps].flatMap((step) => planStepLinks(stage, step, plans));
}

/** From the middle of a ring's stroke to its outer edge, and a small gap. */
export function rimGap(stage: BoardStage): number {
  return strokeWidth(stage, stage.look.strokes.circle) / 2 + 0.03;
}

/** The length of an arrowhead, in cells: the same at any length of link; open heads are a little shorter. */
export function headLength(stage: BoardStage, kind: LinkKind): number {
  const { strokes } = stage.look;
  const least = (strokes.leastHeadPx * stage.unit) / stage.place.cellPx;
  return Math.max(least, strokes.link * (kind === 'strong' ? 3.4 : 2.9));
}

/** What has been planned, by step. */
type Plans = Map<string, readonly PlannedLink[]>;

/**
 * The links of one step, in their order. If links of earlier steps are kept, these come first, and what any step marks
 * at the same time is avoided as well.
 */
export function planStepLinks(stage: BoardStage, step: string, plans: Plans = new Map()): readonly PlannedLink[] {
  const known = plans.get(step);
  if (known !== undefined) return known;
  const { film } = stage;
  const marks = film.marks.filter((mark) => mark.step === step);
  const links = marks.filter((mark) => endsOf(mark) !== undefined);
  const besides = film.marks.filter((mark) => mark.step !== step && links.some((link) => areTogether(link, mark)));
  const planned = besidesOf(stage, links, besides, plans);
  const kept = planned.length;
  const radius = ringRadius(stage);
  const head = headLength(stage, 'strong');
  const used = stage.ringed([...marks, ...besides]);
  for (const mark of links) {
    const ends = endsOf(mark);
    if (ends === undefined) continue;
    const [fromCandidates, toCandidates] = ends;
    const [from, to] = [nodeShapeOn(stage, fromCandidates), nodeShapeOn(stage, toCandidates)];
    const own = new Set([...fromCandidates, ...toCandidates]);
    const path = routeOf({
      from,
      to,
      gap: rimGap(stage),
      least: head * 1.5,
      head: mark.shape.kind === 'link' ? head : 0,
      obstacles: obstaclesAt(film, mark, used, own, radius),
      before: planned.map((link) => link.path),
      heads: planned
        .filter((link) => link.mark.shape.kind === 'link')
        .map(({ path }) => pointAlong(path, length(path) - head * 0.6)),
      size: film.grid.size,
    });
    planned.push({ mark, from, to, path });
  }
  const result = planned.slice(kept);
  plans.set(step, result);
  return result;
}

/** The links of earlier steps that are on screen together with these. */
function besidesOf(stage: BoardStage, links: readonly Mark[], besides: readonly Mark[], plans: Plans): PlannedLink[] {
  const first = links[0] === undefined ? 0 : stage.film.marks.indexOf(links[0]);
  const isEarlier = (step: string) =>
    stage.film.marks.findIndex((mark) => mark.step === step && endsOf(mark) !== undefined) < first;
  const steps = new Set(besides.filter((mark) => endsOf(mark) !== undefined).map(({ step }) => step));
  return [...steps]
    .filter(isEarlier)
    .flatMap((step) => planStepLinks(stage, step, plans))
    .filter(({ mark }) => besides.includes(mark));
}

/** The candidates at either end of what needs a route: a link, or a reach. */
function endsOf({ shape }: Mark): readonly [readonly Candidate[], readonly Candidate[]] | undefined {
  if (shape.kind === 'link') return [shape.from, shape.to];
  return shape.kind === 'reach' ? [[shape.from], [shape.to]] : undefined;
}

/** What the link should avoid: most of all candidates in use, then digits, then other small digits. */
export function obstaclesAt(
  film: Film,
  mark: Mark,
  used: ReadonlySet<Candidate>,
  own: ReadonlySet<Candidate>,
  radius: number,
): Obstacle[] {
  const isUp = (shown: Shown) => shown.from <= mark.from && mark.from < shown.until;
  const obstacles: Obstacle[] = [];
  // Half a digit and half a line.
  const cover = 0.2;
  for (const candidate of used) {
    if (!own.has(candidate))
      obstacles.push({ at: pointOfCandidate(film, candidate), radius: radius + 0.08, weight: 8, cover });
  }
  for (const small of smallDigitsAround(film)) {
    const { candidate } = small;
    if (used.has(candidate) || !isUp(small)) continue;
    obstacles.push({ at: pointOfCandidate(film, candidate), radius: 0.19, weight: 1.4, blot: 0.06 });
  }
  const digits = [...film.standing.map(({ cell }) => cell), ...film.written.filter(isUp).map(({ cell }) => cell)];
  for (const cell of digits) obstacles.push({ at: middleOf(film.grid, cell), radius: 0.36, weight: 2.5 });
  const ends = [...own].map((candidate) => pointOfCandidate(film, candidate));
  return obstacles.filter(({ at }) => ends.every((end) => distance(end, at) > 1e-9));
}
