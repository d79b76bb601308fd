/**
 * How much room a ring has around its small digit. If small digits are close by, a ring avoids them and its digit grows
 * less; if two rings would overlap, they meet in a straight wall half-way, as soap bubbles do. The room depends on
 * everything that a step marks and not on the frame, so that no ring changes while it is shown.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Look } from '../scene/look.ts';
import type { Point } from '../scene/scene.ts';
import type { Film, Mark } from '../timeline/film.ts';
import { circle, type Path } from './path.ts';
import { distance, pointOfCandidate, smallColumns, smallDigitsAround } from './small-digits.ts';
import type { RingedBy } from './stage.ts';

/** Lengths in cells. */
export interface RingRoom {
  /** Of the middle of the ring's stroke. */
  readonly radius: number;
  /** How many times its height at rest the digit has within the ring. */
  readonly emphasis: number;
  /** The positions of the rings with which it shares a wall. */
  readonly touching: readonly Point[];
}

/** The room of every candidate with a ring from these marks, according to `ringed`. */
export function ringRooms(film: Film, look: Look, marks: readonly Mark[], ringed: RingedBy): Map<Candidate, RingRoom> {
  const rooms = new Map<Candidate, RingRoom>();
  const used = [...ringed(marks)].map((candidate) => ({ candidate, at: pointOfCandidate(film, candidate) }));
  if (used.length === 0) return rooms;
  const from = Math.min(...marks.map((mark) => mark.from));
  const until = Math.max(...marks.map((mark) => mark.until));
  const inUse = new Set(used.map(({ candidate }) => candidate));
  const others = smallDigitsAround(film)
    .filter((small) => small.from < until && small.until > from && !inUse.has(small.candidate))
    .map(({ candidate }) => pointOfCandidate(film, candidate));
  const { radius } = wideRoom(film, look);
  const half = look.strokes.circle / 2;
  const touch = 2 * radius + half;
  const rim = radius + half + look.strokes.casing;
  for (const { candidate, at } of used) {
    const touching = used.filter((other) => other.candidate !== candidate && distance(other.at, at) < touch);
    const isCrowded = others.some((other) => distanceToDigit(look, other, at) < rim);
    rooms.set(
      candidate,
      roomOf(
        film,
        look,
        at,
        touching.map((other) => other.at),
        isCrowded,
      ),
    );
  }
  return rooms;
}

/** From a point to the box of a small digit at rest; one of IBM Plex Sans is about three quarters as wide as high. */
function distanceToDigit({ type }: Look, digit: Point, [x, y]: Point): number {
  const beyond = [Math.abs(x - digit[0]) - type.candidate * 0.375, Math.abs(y - digit[1]) - type.candidate * 0.5];
  return Math.hypot(Math.max(0, beyond[0]!), Math.max(0, beyond[1]!));
}

/** The rooms of everything marked by the steps that have a mark on screen. */
export function roomsOf(
  film: Film,
  look: Look,
  standing: readonly { readonly mark: Mark }[],
  ringed: RingedBy,
): Map<Candidate, RingRoom> {
  const steps = new Set(standing.map(({ mark }) => mark.step));
  return ringRooms(
    film,
    look,
    film.marks.filter((mark) => steps.has(mark.step)),
    ringed,
  );
}

/** The room of an isolated digit. */
export function wideRoom(film: Film, look: Look): RingRoom {
  const pitch = 1 / smallColumns(film.grid);
  const { candidate, emphasis } = look.type;
  return { radius: Math.min(pitch * 0.67, candidate * emphasis * 0.72), emphasis, touching: [] };
}

/** The room of a candidate on this stage. */
export function roomFor(
  { rooms, film, look }: { readonly rooms: ReadonlyMap<Candidate, RingRoom>; readonly film: Film; readonly look: Look },
  candidate: Candidate,
): RingRoom {
  return rooms.get(candidate) ?? wideRoom(film, look);
}

/** The part of the line within the walls; `centre` is the middle of the ring that it belongs to. */
export function withinWalls(path: Path, centre: Point, { touching }: RingRoom): Path {
  if (touching.length === 0) return path;
  return {
    ...path,
    points: path.points.map((point) => touching.reduce((at, other) => before(at, centre, other), point)),
  };
}

/** The area within a ring. */
export function roundRoom(centre: Point, room: RingRoom): Path {
  return withinWalls(circle(centre, room.radius), centre, room);
}

function roomOf(film: Film, look: Look, at: Point, touching: readonly Point[], isCrowded: boolean): RingRoom {
  const wide = wideRoom(film, look);
  if (touching.length === 0 && !isCrowded) return wide;
  const above = touching.some(([x]) => Math.abs(x - at[0]) < 0.05);
  const most = above ? 1 : touching.length > 0 ? 1.1 : 1.15;
  return { radius: wide.radius * (isCrowded ? 0.77 : 0.9), emphasis: Math.min(wide.emphasis, most), touching };
}

/** A point moved towards the centre until it is no nearer to the other ring's centre than to its own. */
function before(point: Point, centre: Point, other: Point): Point {
  const way: Point = [other[0] - centre[0], other[1] - centre[1]];
  const far = distance(centre, other);
  const reached = ((point[0] - centre[0]) * way[0] + (point[1] - centre[1]) * way[1]) / far;
  if (reached <= far / 2) return point;
  const part = far / 2 / reached;
  return [centre[0] + (point[0] - centre[0]) * part, centre[1] + (point[1] - centre[1]) * part];
}
