/**
 * The ways of links over many chains made at random (from fixed seeds): what they run over, measured.
 */
import { describe, expect, it } from 'vitest';
import { drawingAt } from '../../src/frames/drawing.ts';
import type { Candidate } from '../../src/grid/candidates.ts';
import { ringedBy } from '../../src/marks/paintings.ts';
import { defaultLook } from '../../src/picture/default-look.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { type PlannedLink, planLinks } from '../../src/picture/link-plan.ts';
import { distanceToNode } from '../../src/picture/node-shape.ts';
import { bow } from '../../src/picture/path.ts';
import { roomsOf } from '../../src/picture/ring-room.ts';
import { unitOf } from '../../src/picture/safe-area.ts';
import { pointOfCandidate } from '../../src/picture/small-digits.ts';
import type { BoardStage } from '../../src/picture/stage.ts';
import type { Point } from '../../src/scene/scene.ts';
import { type Film, frameAt, type Mark } from '../../src/timeline/film.ts';
import { chanceFrom } from '../random.ts';
import { during, film, link, type MarkWish } from './films.ts';
import { recorder } from './recording-context.ts';

/** A chain of one digit that goes along rows and columns in turn, to a new cell each time. */
function chain(seed: number, links: number): MarkWish[] {
  const { below } = chanceFrom(seed);
  const digit = 1 + below(9);
  let [row, column] = [1 + below(9), 1 + below(9)];
  const used = new Set([`${row} ${column}`]);
  const marks: MarkWish[] = [];
  while (marks.length < links) {
    const [nextRow, nextColumn] = marks.length % 2 === 0 ? [row, 1 + below(9)] : [1 + below(9), column];
    if (used.has(`${nextRow} ${nextColumn}`)) {
      // A row and a column may be used up; then the chain ends there.
      if (used.size > 60 || below(40) === 0) break;
      continue;
    }
    used.add(`${nextRow} ${nextColumn}`);
    const kind = marks.length % 2 === 0 ? 'strong' : 'weak';
    marks.push(link(kind, `${digit}r${row}c${column}`, `${digit}r${nextRow}c${nextColumn}`));
    [row, column] = [nextRow, nextColumn];
  }
  return marks;
}

function plan(marks: readonly MarkWish[]) {
  const shown = film({ marks });
  const drawing = drawingAt(shown, defaultLook, frameAt(50));
  const layout = layoutOf(shown, undefined);
  const standing = drawing.marks.map((ink) => ({ mark: shown.marks[ink.index]!, ink }));
  const stage: BoardStage = {
    context: recorder().context,
    film: shown,
    look: defaultLook,
    drawing,
    layout,
    place: layout.place!,
    unit: unitOf(shown),
    standing,
    involved: new Map(),
    ringed: ringedBy,
    rooms: roomsOf(shown, defaultLook, standing, ringedBy),
    links: () => planLinks(stage),
  };
  return { shown, planned: planLinks(stage) };
}

/** A chain of many digits: along a row, a column or a box to another place of the digit, or within a cell to another. */
function mixedChain(seed: number, links: number): MarkWish[] {
  const { below } = chanceFrom(seed);
  let at = { digit: 1 + below(9), row: below(9), column: below(9) };
  const written = ({ digit, row, column }: typeof at) => `${digit}r${row + 1}c${column + 1}`;
  const used = new Set([written(at)]);
  const marks: MarkWish[] = [];
  for (let tried = 0; marks.length < links && tried < 200; tried++) {
    const { digit, row, column } = at;
    const box = below(9);
    const next = [
      { digit, row, column: below(9) },
      { digit, row: below(9), column },
      { digit, row: row - (row % 3) + Math.floor(box / 3), column: column - (column % 3) + (box % 3) },
      { digit: 1 + below(9), row, column },
    ][below(4)]!;
    if (used.has(written(next))) continue;
    used.add(written(next));
    marks.push(link(marks.length % 2 === 0 ? 'strong' : 'weak', written(at), written(next)));
    at = next;
  }
  return marks;
}

/** A head and half of it again, in cells. */
const leastShown = 0.258 * 1.5;

function lengthOf(points: readonly Point[]): number {
  return points
    .slice(1)
    .reduce((sum, [x, y], index) => sum + Math.hypot(x - points[index]![0], y - points[index]![1]), 0);
}

/** From the middle of a candidate to the middle of a line that would cover it: half a digit and half a line. */
const covered = 0.16 + 0.034;

/** The candidates of the chain that a line runs over, its own ends left out. */
function crossedBy(shown: Film, mark: Mark, points: readonly Point[]): Candidate[] {
  if (mark.shape.kind !== 'link') return [];
  const own = new Set([...mark.shape.from, ...mark.shape.to]);
  const ends = shown.marks.flatMap(({ shape }) => (shape.kind === 'link' ? [...shape.from, ...shape.to] : []));
  return [...new Set(ends)].filter((other) => {
    if (own.has(other)) return false;
    const [x, y] = pointOfCandidate(shown, other);
    return points.some(([px, py]) => Math.hypot(px - x, py - y) < covered);
  });
}

/**
 * Whether there is a clear way: among 600 curves with one bend, more than the router tries, one that runs over no
 * candidate of the chain, leaves the board by no more than a third of a cell, and has room for a head between its rims.
 */
function hasClearWay(shown: Film, { mark, from, to }: PlannedLink): boolean {
  if (mark.shape.kind !== 'link') return true;
  const [a, b] = [mark.shape.from, mark.shape.to].map((node) => pointOfCandidate(shown, node[0]!));
  const [dx, dy] = [b![0] - a![0], b![1] - a![1]];
  const long = Math.hypot(dx, dy);
  for (let off = 0; off <= 3; off += 0.1) {
    for (const along of [0.3, 0.4, 0.5, 0.6, 0.7]) {
      for (const side of [1, -1]) {
        const handle: Point = [
          a![0] + dx * along - (dy / long) * off * side,
          a![1] + dy * along + (dx / long) * off * side,
        ];
        const { points } = bow(a!, handle, b!, 60);
        const isOn = points.every(([x, y]) => Math.min(x, y) > -0.33 && Math.max(x, y) < 9.33);
        const seen = points.filter((point) => distanceToNode(from, point) > 0.06 && distanceToNode(to, point) > 0.06);
        if (isOn && lengthOf(seen) > leastShown && crossedBy(shown, mark, points).length === 0) return true;
      }
    }
  }
  return false;
}

describe('over 80 chains of many digits', () => {
  it('no link runs over a candidate of the chain where there is a clear way', () => {
    const faults: string[] = [];
    let [counted, without] = [0, 0];
    for (let seed = 1; seed <= 80; seed++) {
      const { shown, planned } = plan(mixedChain(seed, 12));
      for (const link of planned) {
        const { mark, path } = link;
        counted++;
        const crossed = crossedBy(shown, mark, path.points);
        if (crossed.length === 0) continue;
        if (hasClearWay(shown, link)) faults.push(`chain ${seed}: ${JSON.stringify(mark.shape)} over ${crossed}`);
        else without++;
      }
    }
    expect(faults).toEqual([]);
    expect(counted).toBeGreaterThan(800);
    // That there is none must be rare, or the test says nothing.
    expect(without).toBeLessThan(counted / 50);
  });

  it('and the count finds a line that does', () => {
    const { shown, planned } = plan([link('strong', '5r1c1', '5r1c9'), link('weak', '5r1c5', '5r9c5')]);
    const straight = bow([0.5, 0.5], [4.5, 0.5], [8.5, 0.5]).points;
    expect(crossedBy(shown, planned[0]!.mark, straight)).toHaveLength(1);
    expect(hasClearWay(shown, planned[0]!)).toBe(true);
    expect(crossedBy(shown, planned[0]!.mark, planned[0]!.path.points)).toEqual([]);
  });
});

describe('links of two steps', () => {
  const kept = link('strong', '5r1c1', '5r9c9');
  const later = (from: number): MarkWish => ({ ...during(link('strong', '5r1c1', '5r9c9'), from, 100), step: 'two' });
  /** The part of a line that lies on the other, closer than a quarter of a cell. */
  const shared = (one: readonly Point[], other: readonly Point[]) =>
    one.filter(([x, y]) => other.some(([px, py]) => Math.hypot(px - x, py - y) < 0.25)).length / one.length;

  it('keep off one another where both are on screen', () => {
    const { planned } = plan([kept, later(40)]);
    expect(shared(planned[0]!.path.points, planned[1]!.path.points)).toBeLessThan(0.35);
  });
  it('take the same way where they are not', () => {
    const alone = plan([later(40)]).planned[0]!.path;
    expect(plan([during(kept, 0, 40), later(40)]).planned[0]!.path).toEqual(alone);
  });
  it('stand where they stood when the other comes', () => {
    const before = plan([kept, later(60)]).planned;
    expect(before).toHaveLength(1);
    expect(plan([kept, later(40)]).planned[0]!.path).toEqual(before[0]!.path);
  });
});

describe('over 60 chains of twelve links', () => {
  const plans = Array.from({ length: 60 }, (_, seed) => plan(chain(seed + 1, 12)));

  it('no link runs over a candidate of the chain', () => {
    const crossed: string[] = [];
    let counted = 0;
    plans.forEach(({ shown, planned }, seed) => {
      const ends = shown.marks.flatMap(({ shape }) => (shape.kind === 'link' ? [...shape.from, ...shape.to] : []));
      for (const { mark, path } of planned) {
        if (mark.shape.kind !== 'link') continue;
        const own = [...mark.shape.from, ...mark.shape.to];
        counted++;
        for (const other of new Set(ends.filter((each) => !own.includes(each)))) {
          const [x, y] = pointOfCandidate(shown, other);
          const nearest = Math.min(...path.points.map(([px, py]) => Math.hypot(px - x, py - y)));
          // The digit itself, half of its height and half of the link's width.
          if (nearest < 0.16 + 0.034) crossed.push(`chain ${seed + 1}: ${own} over ${other}`);
        }
      }
    });
    expect(counted).toBeGreaterThan(500);
    expect(crossed).toEqual([]);
  });

  it('every link has room for its head, and stays on the board but for a little', () => {
    for (const { planned } of plans) {
      for (const { path } of planned) {
        const { points } = path;
        const long = points
          .slice(1)
          .reduce((sum, [x, y], index) => sum + Math.hypot(x - points[index]![0], y - points[index]![1]), 0);
        expect(long).toBeGreaterThan(0.258);
        for (const [x, y] of points) {
          expect(Math.min(x, y)).toBeGreaterThan(-0.3);
          expect(Math.max(x, y)).toBeLessThan(9.3);
        }
      }
    }
  });

  it('the same chain takes the same ways', () => {
    expect(plan(chain(7, 12)).planned).toEqual(plan(chain(7, 12)).planned);
  });
});
