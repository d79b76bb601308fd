/**
 * A puzzle as symbols only, one a cell: the form for calls that need no scene.
 */
import { type Grid, gridOf } from '../grid/grid.ts';
import type { Diagnostic } from './diagnostic.ts';
import { gatherFaults } from './faults.ts';
import { type Givens, readGivens, shapeByCount } from './givens.ts';
import type { TextNode } from './yaml-tree.ts';

export interface BarePuzzle {
  readonly grid: Grid;
  readonly givens: Givens;
}

/**
 * Reads 16, 36, 64 or 81 symbols as a board of 2x2, 2x3, 2x4 or 3x3 boxes; any other number is a fault of a 9x9 board.
 * Spaces, line breaks and `| - +` are ignored. Undefined after a fault.
 */
export function readBarePuzzle(text: string): {
  readonly puzzle: BarePuzzle | undefined;
  readonly diagnostics: readonly Diagnostic[];
} {
  const grid = gridOf(shapeByCount(text) ?? '3x3');
  const faults = gatherFaults();
  const node: TextNode = {
    kind: 'text',
    text,
    span: { start: 0, end: text.trimEnd().length },
    offsets: Array.from({ length: text.length + 1 }, (_, index) => index),
    comment: undefined,
  };
  const givens = readGivens(node, grid, faults);
  return { puzzle: givens === undefined ? undefined : { grid, givens }, diagnostics: faults.inOrder() };
}
