/**
 * The meaning of a mark's targets at a frame: cells and candidates.
 */
import type { Candidate } from '../grid/candidates.ts';
import { type Cell, candidateAt, cellOf, type Digit } from '../grid/grid.ts';
import type { Target } from '../grid/terms.ts';
import type { Frame } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';

/** A cell of a mark. `candidate`: the mark is about it, and disappears with it. */
export interface TargetCell {
  readonly cell: Cell;
  readonly candidate: Candidate | undefined;
}

/** The named cells, and for a bare digit those in which it is still open at that frame; each once. */
export function cellsOfTargets(board: BoardState, targets: readonly Target[], at: Frame): TargetCell[] {
  const cells = new Map<Cell, TargetCell>();
  for (const found of targets.flatMap((target) => cellsOfTarget(board, target, at))) {
    const known = cells.get(found.cell);
    if (known === undefined || found.candidate === undefined) cells.set(found.cell, found);
  }
  return [...cells.values()];
}

function cellsOfTarget(board: BoardState, target: Target, at: Frame): TargetCell[] {
  switch (target.kind) {
    case 'cells':
      return target.cells.map((cell) => ({ cell, candidate: undefined }));
    case 'house':
      return target.house.cells.map((cell) => ({ cell, candidate: undefined }));
    case 'candidates':
      return target.candidates
        .filter((candidate) => board.showsUntil(candidate) > at)
        .map((candidate) => ({ cell: cellOf(board.grid, candidate), candidate }));
    case 'digit':
      return openPlaces(board, target.digit, at).map((candidate) => ({
        cell: cellOf(board.grid, candidate),
        candidate,
      }));
    default:
      return target satisfies never;
  }
}

/** The named candidates that are still on the board at that frame, in text order, each once. */
export function candidatesOfTargets(board: BoardState, targets: readonly Target[], at: Frame): Candidate[] {
  const found = targets.flatMap((target): readonly Candidate[] => {
    switch (target.kind) {
      case 'candidates':
        return target.candidates.filter((candidate) => board.showsUntil(candidate) > at);
      case 'digit':
        return openPlaces(board, target.digit, at);
      // Cells and houses are not candidates; the reader refuses them here.
      case 'cells':
      case 'house':
        return [];
      default:
        return target satisfies never;
    }
  });
  return [...new Set(found)];
}

function openPlaces(board: BoardState, digit: Digit, at: Frame): Candidate[] {
  return board.grid.cells
    .map((cell) => candidateAt(board.grid, cell, digit))
    .filter((candidate) => board.openUntil(candidate) > at);
}
