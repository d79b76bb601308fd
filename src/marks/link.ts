/**
 * A link as an arrow. Strong: a heavy solid line with a filled head. Weak: a lighter dashed line with an open head.
 * It is drawn on from its first node, the head last; its nodes get a rim if there is no circle around them yet.
 */

import { nothingToJudge } from '../check/marks.ts';
import type { CheckedLink } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { candidateAt, cellOf } from '../grid/grid.ts';
import { spokenCandidates } from '../grid/notation/spoken.ts';
import type { LinkKind } from '../grid/terms.ts';
import { headLength, type PlannedLink } from '../picture/link-plan.ts';
import { nodeShapeOn, outlineOf } from '../picture/node-shape.ts';
import { each, type MarkPainting, none } from '../picture/painting.ts';
import { begun, begunDashes, cut, length, line, type Path, pointAlong, polygon } from '../picture/path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../picture/pen.ts';
import { digitRingRadius } from '../picture/ring-lines.ts';
import { roomFor, roundRoom } from '../picture/ring-room.ts';
import { distance, lengthOfLink, middleOf, pointOfCandidate } from '../picture/small-digits.ts';
import type { BoardStage, Standing } from '../picture/stage.ts';
import { claimsFor, type MarkReading, markReading } from '../scene/beats.ts';
import { divide, type Fraction, fraction, multiply } from '../scene/fraction.ts';
import { notation } from '../scene/language-values.ts';
import type { Point } from '../scene/scene.ts';
import { drawableLinks } from '../staging/links.ts';
import { evenly, exactFramesIn, linkApartMost } from '../staging/pacing.ts';
import type { StagedBeat, StagedMarks } from '../staging/staged-beat.ts';
import { type BeatContext, type Stroke, spread } from '../staging/strokes.ts';
import type { Frame, MarkGroup } from '../timeline/film.ts';
import { halfSecond, linkCount, oneByOne } from '../timeline/pace.ts';
import { earlierOf } from '../timeline/seconds.ts';
import { readLinks } from './link-ranges.ts';
import type { BeatRecord } from './record.ts';
import { type MarkWords, never } from './words.ts';

export const reading = (): MarkReading<'link'> =>
  markReading(
    {
      link: notation("Draws the chain's arrows: all, by number (1-3), or of another chain (2:1-3).", [
        'all',
        '1-3',
        '2:1-3',
      ]),
    },
    ({ keys, values: { link } }, context) => {
      const claims = claimsFor(keys.link, context);
      return link && claims && readLinks(link.node, keys.link ?? link.node, claims, context);
    },
  );

export const beat = {
  judge: nothingToJudge,
  seconds: ({ links }, step) => {
    const named = links === 'all' ? linkCount(step) : links.reduce((sum, { first, last }) => sum + last - first + 1, 0);
    return oneByOne(halfSecond, named);
  },
  strokes,
} satisfies BeatRecord<'link'>['beat'];

export const words = {
  clause: ([shape], { grid, sound }) => {
    if (shape === undefined) return '';
    const claim = sound ? `: not both ${shape.link === 'strong' ? 'false' : 'true'}` : '';
    return `an arrow runs from ${spokenCandidates(grid, shape.from)} to ${spokenCandidates(grid, shape.to)}${claim}`;
  },
  isClaim: true,
  areJoined: false,
  isNews: true,
  answers: never,
} satisfies MarkWords<'link'>;

export const painting = {
  comesIn: ({ from, to }, motion, film) => {
    const part = Math.min(1, lengthOfLink(film, from, to) / film.grid.size);
    return motion.linkShortest + (motion.linkLongest - motion.linkShortest) * part;
  },
  candidates: ({ from, to }) => [...from, ...to],
  isRinged: true,
  covers: none,
  onBoard: {
    hulls: (stage, standing) => paintNodes(stage, standing, 'hulls'),
    rims: (stage, standing) => paintNodes(stage, standing, 'rims'),
    line: each(paintLink),
  },
  onFrame: {},
} satisfies MarkPainting<'link'>;

/** The part of a link's time in which its line is drawn; the head and the far rim take the rest. */
const lineTime = 0.8;

/** How far from the middle of a cell its digit, and a ring around it, leave room for a line, in cells. */
const digitRoom = digitRingRadius + 0.09;

/** In cells: a weak link shorter than this has its last dash before its head. */
const shortWeak = 1.4;

/** The line and the head of one link; its nodes are drawn by `paintNodes`. */
function paintLink(stage: BoardStage, { mark, ink }: Standing<'link'>): void {
  const plan = stage.links().find((each) => each.mark === mark);
  if (plan === undefined) return;
  const { strokes } = stage.look;
  const kind = mark.shape.link;
  const colour = linkColour(stage, mark.group, kind);
  const width = strokeWidth(stage, kind === 'strong' ? strokes.link : strokes.weakLink);
  const path = clearOfDigits(stage, plan);
  const long = length(path);
  // Overlapping nodes leave no room for a line; their rims say enough.
  if (long < 1e-6) return;
  const head = Math.min(headLength(stage, kind), long * 0.75);
  // An open head ends a dashed line; within a cell there is no room for both, and the dashes end before it.
  const headShare = kind === 'strong' ? 0.75 : long < shortWeak ? 1.15 : 0.12;
  const shaft = cut(path, 0, long - head * headShare);
  const drawn = begun(shaft, Math.min(1, ink.progress / lineTime));
  const lines = kind === 'strong' ? [drawn] : begunDashes(shaft, 0.13, 0.13, Math.min(1, ink.progress / lineTime));
  const alpha = ink.alpha;
  const headPart = Math.max(0, (ink.progress - lineTime) / (1 - lineTime));
  const tip = headPart > 0 ? headOf(path, long, head * headPart, kind) : [];
  if (kind === 'weak') {
    strokePaths(stage, [...lines, ...tip], { colour, width, alpha, cased: true });
    return;
  }
  strokePaths(stage, lines, { colour, width, alpha, cased: true });
  strokePaths(stage, tip, { colour, width: width * 0.35, alpha, cased: true });
  // The line once more, so that the casing of the head does not cut it off.
  strokePaths(stage, lines, { colour, width, alpha, cased: false, cap: 'butt' });
  fillPaths(stage, tip, colour, alpha);
}

/** The nodes of all links on screen, each once: the hulls of several candidates, or the rims of single ones. */
function paintNodes(stage: BoardStage, standing: readonly Standing<'link'>[], part: 'hulls' | 'rims'): void {
  const circled = new Set<Candidate>();
  for (const { mark } of stage.standing) if (mark.shape.kind === 'circle') circled.add(mark.shape.candidate);
  const written = writtenCandidates(stage);
  const nodes = new Map<string, { candidates: readonly Candidate[]; inked: number; colour: string }>();
  for (const { mark, ink } of standing) {
    const arrived = Math.max(0, (ink.progress - lineTime) / (1 - lineTime));
    const colour = linkColour(stage, mark.group, 'strong');
    for (const [candidates, come] of [
      [mark.shape.from, Math.min(1, ink.progress / 0.4)],
      [mark.shape.to, arrived],
    ] as const) {
      const key = candidates.join(' ');
      const known = nodes.get(key);
      const inked = Math.max(come * ink.alpha, known?.inked ?? 0);
      nodes.set(key, { candidates, inked, colour: known?.colour ?? colour });
    }
  }
  for (const { candidates, inked, colour } of nodes.values()) {
    const [only, ...others] = candidates;
    if (inked <= 0 || only === undefined || others.length > 0 !== (part === 'hulls')) continue;
    if (others.length === 0 && (circled.has(only) || written.has(only))) continue;
    const room = roomFor(stage, only);
    const outline =
      others.length > 0
        ? outlineOf(nodeShapeOn(stage, candidates))
        : [roundRoom(pointOfCandidate(stage.film, only), room)];
    const width = strokeWidth(stage, 0.03);
    fillPaths(stage, outline, colour, 0.08 * inked);
    strokePaths(stage, outline, { colour, width, alpha: inked, cased: true });
  }
}

/** The candidates whose digits are large in their cells by now, written or marked as placed. */
function writtenCandidates({ film, drawing, standing }: BoardStage): ReadonlySet<Candidate> {
  const digits = [
    ...drawing.written.flatMap(({ index }) => film.written[index] ?? []),
    ...standing.flatMap(({ mark: { shape } }) => (shape.kind === 'place' || shape.kind === 'ring' ? [shape] : [])),
  ];
  return new Set(digits.map(({ cell, digit }) => candidateAt(film.grid, cell, digit)));
}

/** The route of a link without the part that would cross a digit written for one of its ends. */
function clearOfDigits(stage: BoardStage, { mark, path }: PlannedLink): Path {
  if (mark.shape.kind !== 'link') return path;
  const written = writtenCandidates(stage);
  const cells = [...mark.shape.from, ...mark.shape.to].filter((each) => written.has(each));
  const middles = cells.map((each) => middleOf(stage.film.grid, cellOf(stage.film.grid, each)));
  const isClear = (point: Point) => middles.every((middle) => distance(middle, point) > digitRoom);
  const [first, last] = [path.points.findIndex(isClear), path.points.findLastIndex(isClear)];
  if (first < 0) return { points: path.points.slice(0, 1), closed: false };
  return first === 0 && last === path.points.length - 1
    ? path
    : { points: path.points.slice(first, last + 1), closed: false };
}

function linkColour(stage: BoardStage, group: MarkGroup | undefined, kind: LinkKind): string {
  const { colours } = stage.look;
  if (group !== undefined) return colours.groups[group.colour];
  return kind === 'strong' ? colours.strong : colours.weak;
}

function headOf(path: Path, long: number, head: number, kind: LinkKind): Path[] {
  const tip = path.points.at(-1)!;
  const root = pointAlong(path, long - head);
  // On a bent end the chord is shorter than the curve; the head keeps its length.
  const chord = distance(root, tip);
  const [dx, dy] = [((tip[0] - root[0]) * head) / chord, ((tip[1] - root[1]) * head) / chord];
  const side = (along: number, across: number): Point => [
    tip[0] - dx * along - dy * across,
    tip[1] - dy * along + dx * across,
  ];
  if (kind === 'weak') return [line(side(1, 0.62), tip, side(1, -0.62))];
  return [polygon(tip, side(1, 0.46), side(0.8, 0), side(1, -0.46))];
}

/** The fraction of a beat's time within which all its links have begun. */
const ofItsTime = fraction(17, 20);

/** The links one after another over the beat's time; each disappears with one of its ends. */
function strokes(context: BeatContext, { links }: StagedMarks['link'], { from, room }: StagedBeat): Stroke[] {
  const { pacing, step } = context;
  const most = exactFramesIn(pacing, linkApartMost);
  const time = multiply(fraction(room - from), ofItsTime);
  const apart = (count: number): Fraction => earlierOf(most, divide(time, fraction(Math.max(1, count))));
  return arrows(context, drawableLinks(step, links), from, (count) => evenly(from, count, apart(count)));
}

/** The links with both ends on the board, on the frames available for that many. */
export function arrows(
  context: BeatContext,
  named: readonly CheckedLink[],
  from: Frame,
  framesFor: (count: number) => readonly Frame[],
): Stroke[] {
  const { board } = context;
  const standing = (candidates: readonly Candidate[]) =>
    candidates.filter((candidate) => board.showsUntil(candidate) > from);
  const shapes = named
    .map((link) => ({
      kind: 'link' as const,
      link: link.kind,
      from: standing(link.fromCandidates),
      to: standing(link.toCandidates),
    }))
    .filter((link) => link.from.length > 0 && link.to.length > 0);
  const things = shapes.map((shape) => ({ shape, on: [...shape.from, ...shape.to] }));
  return spread(context, things, from, framesFor);
}
