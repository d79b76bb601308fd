/**
 * Where in a film so many things come and go that it might flash. Nothing is drawn here, and no canvas is needed.
 */
import type { Cell } from '../../grid/grid.ts';
import { coveredBy } from '../../marks/paintings.ts';
import type { Look } from '../../scene/look.ts';
import type { Film, Shown } from '../../timeline/film.ts';

/**
 * What is counted: everything that comes and goes anywhere; or, place by place, only what covers whole cells, and text
 * cards. A place flashes no more often than things come and go there, so `areas` clears nearly every film immediately.
 */
export type Counted = 'all' | 'areas';

/** Spans, in frames, ascending and disjoint; `until` not included. */
export type Span = readonly [from: number, until: number];

/** Fewer than four flashes, of two changes each, cannot be too many (WCAG 2.2, 2.3.1). */
const leastChanges = 8;

/** Spans with enough changes within a second. */
export function busySpans(film: Film, look: Look, counted: Counted): Span[] {
  const perSecond = Number(film.rate.numerator) / Number(film.rate.denominator);
  // Coming and going takes some time.
  const times = Object.values(look.motion).filter((value) => typeof value === 'number');
  const slack = Math.ceil(perSecond * (1 + Math.max(...times)));
  const moves = film.board.map(({ from }) => from);
  const places =
    counted === 'areas'
      ? areasOf(film)
      : [[...film.marks, ...film.written, ...film.candidates, ...film.headings, ...film.said]];
  return joined(
    places.flatMap((things) => {
      const edges = [...things.flatMap(({ from, until }) => [from, until]), ...moves];
      const changes = [...new Set(edges)].sort((a, b) => a - b);
      return changes.flatMap((last, index): Span[] => {
        const first = changes[index - leastChanges + 1];
        if (first === undefined || last - first > slack) return [];
        return [[Math.max(0, first - 1), Math.min(film.frameCount, last + slack)]];
      });
    }),
  );
}

/** For each cell, what comes and goes over all of it; and the text cards. */
function areasOf(film: Film): readonly (readonly Shown[])[] {
  const cards: Shown[] = [];
  const overAll: Shown[] = [];
  const cells = new Map<Cell, Shown[]>(film.grid.cells.map((cell) => [cell, []]));
  for (const mark of film.marks) {
    const covered = coveredBy(mark.shape);
    if (covered === 'card') cards.push(mark);
    else if (covered === 'board') overAll.push(mark);
    else for (const cell of covered) cells.get(cell)?.push(mark);
  }
  return [[...cards, ...overAll], ...[...cells.values()].map((own) => [...own, ...overAll])];
}

function joined(spans: readonly Span[]): Span[] {
  const joint: [number, number][] = [];
  for (const [from, until] of [...spans].sort((a, b) => a[0] - b[0])) {
    const before = joint.at(-1);
    if (before !== undefined && from <= before[1]) before[1] = Math.max(before[1], until);
    else joint.push([from, until]);
  }
  return joint;
}
