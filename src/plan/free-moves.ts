/**
 * Free arguments are made immediately, wherever they occur: a position is closed when no free argument says anything
 * new. Nothing is lost by this, since removing a candidate never invalidates a proof.
 */

import { candidateAt } from '../grid/grid.ts';
import type { Position } from '../proof/kernel.ts';
import { oneOf } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { instancesOf } from '../techniques/find-argument.ts';
import { type MadeMove, make, moveOf, positionAfter } from './move.ts';
import { placeSingles, type Single, singleNames } from './singles.ts';

const isSingle = (name: ArgumentName) => singleNames.some((each) => each === name);

/** The position closed under these names; each move on the way is passed to `report`. */
export function close(start: Position, free: readonly ArgumentName[], report?: (made: MadeMove) => void): Position {
  const [singles, others] = [free.filter(isSingle), free.filter((name) => !isSingle(name))];
  const reportMove = report === undefined ? undefined : (single: Single) => report(asMove(single));
  let position = start;
  for (;;) {
    position = placeSingles(position, singles, reportMove);
    const made = firstOf(position, others);
    if (made === undefined) return position;
    report?.(made);
    position = positionAfter(made);
  }
}

function firstOf(position: Position, names: readonly ArgumentName[]): MadeMove | undefined {
  for (const name of names) {
    for (const instance of instancesOf(position, name)) {
      const move = moveOf(name, 0, instance);
      const made = move === undefined ? undefined : make(position, move);
      if (made !== undefined) return made;
    }
  }
  return undefined;
}

function asMove({ name, cell, digit, set, position }: Single): MadeMove {
  const candidate = candidateAt(position.grid, cell, digit);
  const conclusions = [oneOf(position.grid, candidate)];
  const instance = { sets: [set], chain: undefined, deadly: undefined, conclusions };
  const move = moveOf(name, 0, instance)!;
  return make(position, move)!;
}
