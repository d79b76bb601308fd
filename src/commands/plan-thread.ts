/** The thread that `plan-helper.ts` starts. */
import { workerData } from 'node:worker_threads';
import pc from 'picocolors';
import { improve } from '../plan/improve.ts';
import { goalOf } from '../plan/plan.ts';
import { readGivenPuzzle } from './given-puzzle.ts';
import type { HelperTask } from './plan-helper.ts';
import type { Terminal } from './terminal.ts';

const { given, costs, until, shared, port } = workerData as HelperTask;
const bound = new Float64Array(shared);
const plain = pc.createColors(false);
/** The other thread has already reported what is wrong with the puzzle. */
const silent: Terminal = {
  out: () => undefined,
  err: () => undefined,
  outPaint: plain,
  errPaint: plain,
  isWatched: false,
  columns: undefined,
};

const read = readGivenPuzzle(given, silent);
if (read !== undefined) {
  improve(read.start, {
    costs,
    isReached: goalOf(until),
    keepGoing: () => bound[0]! > 0,
    below: () => bound[0]!,
    chance: chanceFrom(1),
    onBetter: (moves) => port.postMessage(moves),
  });
}
port.close();

/**
 * From 0 to 1: the 32-bit xorshift with the shifts 13, 17, 5 of G. Marsaglia, Journal of Statistical Software 8(14),
 * 2003.
 */
function chanceFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
