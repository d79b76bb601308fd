import { has } from '../grid/candidates.ts';
import { type Cell, candidatesInCell } from '../grid/grid.ts';
import type { Position } from './kernel.ts';

/** Whether the cell has its digit. */
export function isPlaced(position: Position, cell: Cell): boolean {
  return candidatesInCell(position.grid, cell).some((candidate) => has(position.placed, candidate));
}
