/**
 * A circle round a candidate. Each group has its own kind of ring beside its colour: plain, double, dashed, notched,
 * beaded, cornered, with a tinted disc within. A circle without a group is a loop as a pencil draws it, its ends not
 * meeting, and nothing within.
 */
import type { Candidate } from '../../grid/candidates.ts';
import type { Point } from '../../scene/scene.ts';
import { arc, begun, circle, dashes, line, onCircle, type Path } from '../path.ts';
import { fillPaths, strokePaths, strokeWidth } from '../pen.ts';
import { roomFor, roundRoom, withinWalls } from '../ring-room.ts';
import { middleOf, pointOfCandidate } from '../small-digits.ts';
import { type BoardStage, colourOf, type Standing } from '../stage.ts';

/** All circles on screen: their discs (under the digits) or their rings (over them). */
export function paintCircles(stage: BoardStage, part: 'discs' | 'rings'): void {
  const uncovered = new Map<Candidate, number>();
  const seen: (readonly [Standing, Candidate, number])[] = [];
  for (const standing of [...stage.standing].reverse()) {
    const { shape } = standing.mark;
    if (shape.kind !== 'circle') continue;
    const left = uncovered.get(shape.candidate) ?? 1;
    seen.unshift([standing, shape.candidate, left]);
    uncovered.set(shape.candidate, left * (1 - standing.ink.progress * standing.ink.alpha));
  }
  for (const [standing, candidate, left] of seen) {
    if (left <= 0) continue;
    if (part === 'discs') paintDisc(stage, standing, candidate, left);
    else paintRing(stage, standing, candidate, left);
  }
}

/** How far from the middle of a cell a ring round its digit runs, in cells: within the frame of a placement. */
export const digitRingRadius = 0.33;

/** The rings round digits that have been written. */
export function paintDigitRings(stage: BoardStage, part: 'discs' | 'rings'): void {
  const width = strokeWidth(stage, stage.look.strokes.circle);
  for (const { mark, ink } of stage.standing) {
    if (mark.shape.kind !== 'ring') continue;
    const centre = middleOf(stage.film.grid, mark.shape.cell);
    const colour = colourOf(stage, mark);
    if (part === 'discs' && mark.group !== undefined) {
      const alpha = stage.look.inks.disc * ink.progress * ink.alpha;
      fillPaths(stage, [circle(centre, digitRingRadius)], colour, alpha);
    }
    if (part === 'discs') continue;
    const ring = ringOf(mark.group?.index, centre, digitRingRadius, width);
    const paths = ring.paths.map((path) => begun(path, ink.progress));
    strokePaths(stage, paths, { colour, width: width * ring.weight, alpha: ink.alpha, cased: true, cap: ring.cap });
  }
}

function paintDisc(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  if (mark.group === undefined) return;
  const centre = pointOfCandidate(stage.film, candidate);
  const alpha = stage.look.inks.disc * ink.progress * ink.alpha * left;
  fillPaths(stage, [roundRoom(centre, roomFor(stage, candidate))], colourOf(stage, mark), alpha);
}

function paintRing(stage: BoardStage, { mark, ink }: Standing, candidate: Candidate, left: number): void {
  const centre = pointOfCandidate(stage.film, candidate);
  const width = strokeWidth(stage, stage.look.strokes.circle);
  const room = roomFor(stage, candidate);
  const ring = ringOf(mark.group?.index, centre, room.radius, width);
  const colour = colourOf(stage, mark);
  const alpha = ink.alpha * left;
  const paths = ring.paths.map((path) => begun(withinWalls(path, centre, room), ink.progress));
  strokePaths(stage, paths, { colour, width: width * ring.weight, alpha, cased: true, cap: ring.cap });
}

interface Ring {
  readonly paths: readonly Path[];
  /** Of the stroke, as a part of the full width. */
  readonly weight: number;
  readonly cap: 'butt' | 'round';
}

/** The lines of a group's ring; each begins at its top, or where a part of it begins. */
function ringOf(group: number | undefined, centre: Point, radius: number, width: number): Ring {
  const round = arc(centre, radius, -0.25, 0.75);
  if (group === undefined) return { paths: [loop(centre, radius)], weight: 1, cap: 'round' };
  switch (group % 6) {
    case 1:
      return {
        paths: [arc(centre, radius + width * 0.75, -0.25, 0.75), arc(centre, radius - width * 0.55, -0.25, 0.75)],
        weight: 0.55,
        cap: 'round',
      };
    case 2:
      return { paths: dashes(circle(centre, radius), radius * 0.66, radius * 0.39), weight: 1, cap: 'butt' };
    case 3: {
      const teeth = [0.125, 0.375, 0.625, 0.875].map((turn) =>
        line(onCircle(centre, radius, turn), onCircle(centre, radius + width * 1.9, turn)),
      );
      return { paths: [round, ...teeth], weight: 1, cap: 'butt' };
    }
    case 4: {
      const beads = Array.from({ length: 12 }, (_, bead) => line(onCircle(centre, radius, bead / 12)));
      return { paths: beads, weight: 1.25, cap: 'round' };
    }
    case 5: {
      const corners = [0.125, 0.375, 0.625, 0.875].map((turn) => onCircle(centre, radius * 1.2, turn));
      return { paths: [{ points: corners, closed: true }], weight: 1, cap: 'round' };
    }
    default:
      return { paths: [round], weight: 1, cap: 'round' };
  }
}

/** Once round and a little further, drawing in, from above the candidate clockwise. */
function loop(centre: Point, radius: number): Path {
  const [start, end] = [-0.3, 0.86];
  const steps = 64;
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const part = step / steps;
    return onCircle(centre, radius * (1.16 - 0.22 * part), start + (end - start) * part);
  });
  return { points, closed: false };
}
