/**
 * A path without what it does not need: moves on which nothing rests are dropped, and so are such conclusions. What is
 * left has been tested: without any one of its moves, or of its conclusions, the goal is not reached.
 */

import type { Position } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import type { Move } from './move.ts';
import { type Replay, replay } from './replay.ts';
import { allUnder, placementsIn, restingOf } from './rests-on.ts';

export interface Pruning {
  readonly start: Position;
  readonly free: readonly ArgumentName[];
  readonly isReached: (position: Position) => boolean;
  /** Moves that weigh more are tried first; defaults to their cost. */
  readonly weigh?: (move: Move) => number;
}

/** `moves` are those that are not free, in order. Undefined if they do not reach the goal. */
export function pruned(moves: readonly Move[], pruning: Pruning): readonly Move[] | undefined {
  if (reaching(moves, pruning) === undefined) return undefined;
  return withoutNeedlessConclusions(withoutNeedlessMoves(whatIsUsed(moves, pruning), pruning), pruning);
}

/** In one pass back over the path: the moves and conclusions on which some placement rests. */
function whatIsUsed(moves: readonly Move[], { start, free, isReached }: Pruning): readonly Move[] {
  const { made } = replay(start, moves, { free, keepFree: true });
  const { restsOn } = restingOf(start, made);
  const needed = allUnder(restsOn, placementsIn(made));
  const kept = made.flatMap((each, index) => (needed.has(index) && moves.includes(each.move) ? [each.move] : []));
  return isReached(replay(start, kept, { free, keepFree: false }).end) ? kept : moves;
}

function withoutNeedlessMoves(moves: readonly Move[], pruning: Pruning): readonly Move[] {
  let kept = moves;
  const weights = new Map(moves.map((move) => [move, pruning.weigh?.(move) ?? move.cost]));
  const heaviestFirst = (a: Move, b: Move) => weights.get(b)! - weights.get(a)! || moves.indexOf(b) - moves.indexOf(a);
  for (const move of moves.toSorted(heaviestFirst)) {
    if (!kept.includes(move)) continue;
    const fewer = reaching(
      kept.filter((each) => each !== move),
      pruning,
    );
    if (fewer !== undefined) kept = fewer;
  }
  return kept;
}

function withoutNeedlessConclusions(moves: readonly Move[], pruning: Pruning): readonly Move[] {
  let kept = moves;
  for (let index = kept.length - 1; index >= 0; index--) {
    for (const conclusion of kept[index]!.conclusions) {
      const move = kept[index]!;
      if (move.conclusions.length === 1) break;
      const leaner = { ...move, conclusions: move.conclusions.filter((each) => each !== conclusion) };
      const fewer = reaching(kept.with(index, leaner), pruning);
      if (fewer?.length === kept.length) kept = fewer;
    }
  }
  return kept;
}

/** Those of the moves that could be made, if they reach the goal. */
function reaching(moves: readonly Move[], { start, free, isReached }: Pruning): readonly Move[] | undefined {
  const { end, made }: Replay = replay(start, moves, { free, keepFree: false });
  return isReached(end) ? made.map((each) => each.move) : undefined;
}
