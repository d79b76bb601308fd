/**
 * Moves made one after the other from a start, with all free moves made between them.
 */

import type { Position } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { close } from './free-moves.ts';
import { type MadeMove, type Move, make, positionAfter } from './move.ts';

export interface Replay {
  readonly end: Position;
  /** The moves that could be made, in order; the free ones among them if they were requested. */
  readonly made: readonly MadeMove[];
}

/** A move that says nothing new when its turn comes, or does not hold there, is skipped. */
export function replay(
  start: Position,
  moves: readonly Move[],
  { free, keepFree }: { readonly free: readonly ArgumentName[]; readonly keepFree: boolean },
): Replay {
  const made: MadeMove[] = [];
  const report = keepFree ? (each: MadeMove) => void made.push(each) : undefined;
  let position = close(start, free, report);
  for (const move of moves) {
    const step = make(position, move);
    if (step === undefined) continue;
    made.push(step);
    position = close(positionAfter(step), free, report);
  }
  return { end: position, made };
}
