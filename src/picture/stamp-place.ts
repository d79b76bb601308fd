/**
 * Where the stamp of an unproved step is: away from the argument, so that what is wrong can be seen. It takes the far
 * end of the callouts' room; if that is on the board, the end at which the step marks least.
 */
import { type Cell, cellOf } from '../grid/grid.ts';
import type { Mark } from '../timeline/film.ts';
import type { Box } from './board-place.ts';
import type { Layout } from './room-for-words.ts';
import { safeArea } from './safe-area.ts';
import { middleOf } from './small-digits.ts';
import type { Stage, Standing } from './stage.ts';

/** Of a stamp, in pixels of a frame whose shorter side is 1080. */
const tall = 236;

/** The stamp's box, in frame pixels. */
export function stampBox(stage: Stage, { mark }: Standing): Box {
  const { callout, heading, place } = stage.layout;
  const height = tall * stage.unit;
  const atEnd = { ...callout, top: Math.max(callout.top, callout.bottom - height) };
  if (heading !== undefined || place === undefined) return atEnd;
  const safe = safeArea(stage.film);
  const places = [safe.bottom, safe.top + height, (safe.top + safe.bottom + height) / 2].map(
    (bottom): Box => ({ ...safe, top: bottom - height, bottom }),
  );
  const cells = markedCells(stage, mark.step).map((cell) => place.at(middleOf(stage.film.grid, cell)));
  const reach = place.cellPx / 2;
  const covered = ({ top, bottom }: Box) => cells.filter(([, y]) => y > top - reach && y < bottom + reach).length;
  return places.reduce((best, box) => (covered(box) < covered(best) ? box : best));
}

/** The layout while the stamp is shown: callouts avoid it if that leaves them room. */
export function layoutBesides(layout: Layout, stamp: Box, unit: number): Layout {
  const { callout, heading } = layout;
  const left = { ...callout, bottom: Math.min(callout.bottom, stamp.top - 24 * unit) };
  if (stamp.bottom <= callout.top || left.bottom - left.top < 90 * unit) return layout;
  return { ...layout, callout: left, heading: heading === callout ? left : heading };
}

function markedCells({ film, ringed }: Stage, step: string): Cell[] {
  const marks: readonly Mark[] = film.marks.filter((mark) => mark.step === step);
  const cells = new Set([...ringed(marks)].map((candidate) => cellOf(film.grid, candidate)));
  for (const { shape } of marks) if (shape.kind === 'fill') for (const cell of shape.cells) cells.add(cell);
  return [...cells];
}
