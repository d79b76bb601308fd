/**
 * What the verbs that start from a puzzle take.
 */
import { one, text } from './kinds.ts';

export const puzzleGiven = one(
  'PUZZLE',
  'the puzzle: its symbols, row by row (. 0 _ are blank), a file that contains them, or a scene',
);

/** `verb` is what stops at the goal. */
export function until(verb: 'plan' | 'draft') {
  return text('<cells>', `${verb} no further than these cells or digits: 'r5c5', 'r5c5=3 r2c7=1'`);
}
