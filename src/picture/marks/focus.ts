/**
 * Focus: a veil over every cell but those named. Marks are drawn above it, and stay.
 */
import type { Cell } from '../../grid/grid.ts';
import { rectangle } from '../path.ts';
import { fillPaths } from '../pen.ts';
import { cornerOf } from '../small-digits.ts';
import type { BoardStage } from '../stage.ts';

/** One veil for all that is in focus at the time. */
export function paintVeil(stage: BoardStage): void {
  const clear = new Map<Cell, number>();
  let strongest = 0;
  for (const { mark, ink } of stage.standing) {
    if (mark.shape.kind !== 'focus') continue;
    const part = ink.progress * ink.alpha;
    strongest = Math.max(strongest, part);
    for (const cell of mark.shape.cells) clear.set(cell, Math.max(clear.get(cell) ?? 0, part));
  }
  if (strongest === 0) return;
  const { film, look } = stage;
  const veiled = film.grid.cells.filter((cell) => !clear.has(cell));
  const areas = veiled.map((cell) => {
    const [x, y] = cornerOf(film.grid, cell);
    return rectangle(x, y, x + 1, y + 1);
  });
  fillPaths(stage, areas, look.colours.veil, look.inks.veil * strongest);
}
