/**
 * The ring around a candidate or a digit. Each group has its own kind of ring in addition to its colour: plain, double,
 * dashed, notched, beaded, cornered. A ring without a group is a pencil-like loop whose ends do not meet.
 */
import type { Point } from '../scene/scene.ts';
import { arc, circle, dashes, line, onCircle, type Path } from './path.ts';

/** The radius of a ring around a written digit, in cells: inside the frame of a placement. */
export const digitRingRadius = 0.33;

/** The pieces of a ring. */
export interface Ring {
  readonly paths: readonly Path[];
  /** Of the stroke, as a part of the full width. */
  readonly weight: number;
  readonly cap: 'butt' | 'round';
}

/** The lines of a group's ring; each begins at its top, or where a part of it begins. */
export function ringOf(group: number | undefined, centre: Point, radius: number, width: number): Ring {
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

/** Once around and a little further, spiralling in, from above the candidate clockwise. */
function loop(centre: Point, radius: number): Path {
  const [start, end] = [-0.3, 0.86];
  const steps = 64;
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const part = step / steps;
    return onCircle(centre, radius * (1.16 - 0.22 * part), start + (end - start) * part);
  });
  return { points, closed: false };
}
