/**
 * The ways of links over many chains made at random (from fixed seeds): what they run over, measured.
 */
import { describe, expect, it } from 'vitest';
import { defaultLook } from '../../src/picture/default-look.ts';
import { drawingAt } from '../../src/picture/drawing.ts';
import { layoutOf } from '../../src/picture/layout.ts';
import { planLinks } from '../../src/picture/link-plan.ts';
import { roomsOf } from '../../src/picture/ring-room.ts';
import { unitOf } from '../../src/picture/safe-area.ts';
import { pointOfCandidate } from '../../src/picture/small-digits.ts';
import type { BoardStage } from '../../src/picture/stage.ts';
import { frameAt } from '../../src/timeline/film.ts';
import { chanceFrom } from '../random.ts';
import { film, link, type MarkWish } from './films.ts';
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
    rooms: roomsOf(shown, defaultLook, standing),
  };
  return { shown, planned: planLinks(stage) };
}

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
