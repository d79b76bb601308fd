/**
 * Lines as lists of points, the curves already flattened: so they can be cut, dashed and measured, and mapped onto a
 * board filmed at an angle. Units are the caller's; the marks use cells.
 */
import type { Point } from '../scene/scene.ts';

/** A line through at least one point; a closed one leads from its last point back to its first. */
export interface Path {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** An angle in turns: 0 points right, 0.25 down, as on the frame. */
export function arc(centre: Point, radius: number, fromTurn: number, toTurn: number): Path {
  const steps = Math.max(2, Math.ceil(Math.abs(toTurn - fromTurn) * 56));
  const points = Array.from({ length: steps + 1 }, (_, step) =>
    onCircle(centre, radius, fromTurn + ((toTurn - fromTurn) * step) / steps),
  );
  return { points, closed: false };
}

/** Closed, from the right clockwise. */
export function circle(centre: Point, radius: number): Path {
  return { points: arc(centre, radius, 0, 1).points.slice(0, -1), closed: true };
}

/** The point of a circle at an angle in turns. */
export function onCircle(centre: Point, radius: number, turn: number): Point {
  const angle = turn * 2 * Math.PI;
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
}

/** Straight from point to point, open. */
export function line(...points: readonly Point[]): Path {
  return { points, closed: false };
}

/** Straight from point to point, and back to the first. */
export function polygon(...points: readonly Point[]): Path {
  return { points, closed: true };
}

/** Closed, from the top left clockwise. */
export function rectangle(left: number, top: number, right: number, bottom: number): Path {
  return polygon([left, top], [right, top], [right, bottom], [left, bottom]);
}

/** A quadratic curve. */
export function bow(from: Point, handle: Point, to: Point, steps = 40): Path {
  const points = Array.from({ length: steps + 1 }, (_, step): Point => {
    const part = step / steps;
    const rest = 1 - part;
    const at = (axis: 0 | 1) => rest * rest * from[axis] + 2 * rest * part * handle[axis] + part * part * to[axis];
    return [at(0), at(1)];
  });
  return { points, closed: false };
}

/** A cubic curve. */
export function curve(from: Point, leaving: Point, entering: Point, to: Point, steps = 24): Path {
  const points = Array.from({ length: steps + 1 }, (_, step): Point => {
    const part = step / steps;
    const rest = 1 - part;
    const at = (axis: 0 | 1) =>
      rest ** 3 * from[axis] +
      3 * rest * rest * part * leaving[axis] +
      3 * rest * part * part * entering[axis] +
      part ** 3 * to[axis];
    return [at(0), at(1)];
  });
  return { points, closed: false };
}

/** The same outline with every corner rounded; a corner between short sides gets a smaller radius. */
export function roundCorners(path: Path, radius: number): Path {
  const { points } = path;
  const rounded: Point[] = [];
  points.forEach((corner, index) => {
    const before = points[(index + points.length - 1) % points.length]!;
    const after = points[(index + 1) % points.length]!;
    const least = Math.min(length(line(before, corner)), length(line(corner, after))) / 2;
    const reach = Math.min(radius, least);
    rounded.push(...bow(towards(corner, before, reach), corner, towards(corner, after, reach), 8).points);
  });
  return { points: rounded, closed: true };
}

/** The point at a distance from `from` in the direction of `to`. */
export function towards(from: Point, to: Point, distance: number): Point {
  const whole = length(line(from, to));
  if (whole === 0) return from;
  return [from[0] + ((to[0] - from[0]) * distance) / whole, from[1] + ((to[1] - from[1]) * distance) / whole];
}

/** The length of the line, including the way back to the start if it is closed. */
export function length(path: Path): number {
  const { points } = opened(path);
  let sum = 0;
  for (let index = 1; index < points.length; index++) sum += stretch(points[index - 1]!, points[index]!);
  return sum;
}

/** The part of the line between two distances from its start; a closed line is opened at its first point. */
export function cut(path: Path, fromDistance: number, toDistance: number): Path {
  const { points } = opened(path);
  const kept: Point[] = [];
  let walked = 0;
  for (let index = 1; index < points.length; index++) {
    const [a, b] = [points[index - 1]!, points[index]!];
    const step = stretch(a, b);
    if (walked + step > fromDistance && walked < toDistance) {
      if (kept.length === 0) kept.push(walked >= fromDistance ? a : towards(a, b, fromDistance - walked));
      kept.push(walked + step <= toDistance ? b : towards(a, b, toDistance - walked));
    }
    walked += step;
  }
  return { points: kept.length > 0 ? kept : points.slice(0, 1), closed: false };
}

/** The first part of a line; the whole keeps its closing. */
export function begun(path: Path, part: number): Path {
  return part >= 1 ? path : cut(path, 0, length(path) * part);
}

/**
 * The line as dashes of about this length with gaps of about that, fitted so that it ends with a dash (closed: with a
 * gap).
 */
export function dashes(path: Path, dash: number, gap: number): Path[] {
  const whole = length(path);
  const count = Math.max(1, Math.round((whole + (path.closed ? 0 : gap)) / (dash + gap)));
  const period = path.closed ? whole / count : whole / (count - gap / (dash + gap));
  const inked = (period * dash) / (dash + gap);
  return Array.from({ length: count }, (_, index) => cut(path, index * period, index * period + inked));
}

/** The dashes of the whole line as far as a part of it reaches, so that they do not shift while it grows. */
export function begunDashes(path: Path, dash: number, gap: number, part: number): Path[] {
  const whole = length(path);
  const all = dashes(path, dash, gap);
  const inked = length(all[0]!);
  const period = all.length === 1 ? whole : path.closed ? whole / all.length : (whole - inked) / (all.length - 1);
  return all.flatMap((each, index) => {
    const left = whole * part - index * period;
    return left <= 0 && index > 0 ? [] : [cut(each, 0, Math.max(left, 1e-6))];
  });
}

/** The point at this distance from the start. */
export function pointAlong(path: Path, distance: number): Point {
  return cut(path, 0, Math.max(distance, 1e-9)).points.at(-1)!;
}

function opened(path: Path): Path {
  return path.closed ? { points: [...path.points, path.points[0]!], closed: false } : path;
}

function stretch(a: Point, b: Point): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}
