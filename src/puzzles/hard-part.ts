/**
 * Whether arguments of certain names solve a puzzle, together with its easy part, and how many of them it takes.
 */

import { has, membersOf } from '../grid/candidates.ts';
import { candidateAt, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import { countSolutions, possibleFrom } from '../grid/solutions.ts';
import type { Conclusion } from '../grid/terms.ts';
import { begin, oneOf, type Position, takeAsRead } from '../proof/kernel.ts';
import type { ArgumentName } from '../techniques/all-techniques.ts';
import { instancesOf } from '../techniques/find-argument.ts';
import { type Board, boardOf, candidatesOf, isFull, rule, solveEasyPart } from './easy-part.ts';

/** What may be used to solve a puzzle. */
export interface Means {
  /** Names in canonical spelling; each may be used more than once. */
  readonly names: readonly ArgumentName[];
  /** Whether locked candidates belong to the easy part. */
  readonly locked: boolean;
}

export type Givens = readonly (Digit | undefined)[];

interface HardStep {
  readonly name: ArgumentName;
  readonly conclusions: readonly Conclusion[];
}

/**
 * The names of the arguments that solve the puzzle, in order, none of which can be left out; empty if the easy part
 * suffices. Undefined if these means do not solve it, or it does not have exactly one solution.
 */
export function hardArguments(grid: Grid, givens: Givens, means: Means): readonly ArgumentName[] | undefined {
  const board = boardOf(grid, givens);
  solveEasyPart(board, means);
  if (isFull(board)) return [];
  if (board.isBroken || means.names.length === 0) return undefined;
  if (countSolutions(grid, possibleFrom(grid, givens), 2) !== 1) return undefined;
  const steps = stepsThrough(board, givens, means);
  return steps && withoutIdle(grid, givens, means, steps).map(({ name }) => name);
}

/** Whether the easy part fills the board on its own. */
export function isEasy(grid: Grid, givens: Givens, { locked }: { readonly locked: boolean }): boolean {
  const board = boardOf(grid, givens);
  solveEasyPart(board, { locked });
  return isFull(board);
}

function stepsThrough(board: Board, givens: Givens, means: Means): readonly HardStep[] | undefined {
  const steps: HardStep[] = [];
  while (!isFull(board)) {
    const step = nextStep(positionOf(board, givens), means.names);
    if (step === undefined) return undefined;
    steps.push(step);
    apply(board, step);
    solveEasyPart(board, means);
    if (board.isBroken) return undefined;
  }
  return steps;
}

function nextStep(position: Position, names: readonly ArgumentName[]): HardStep | undefined {
  for (const name of names) {
    for (const { conclusions } of instancesOf(position, name)) return { name, conclusions };
  }
  return undefined;
}

/** Drops steps, from the first on, without which the remaining ones still succeed. */
function withoutIdle(grid: Grid, givens: Givens, means: Means, steps: readonly HardStep[]): readonly HardStep[] {
  const succeeds = (some: readonly HardStep[]) => {
    const board = boardOf(grid, givens);
    solveEasyPart(board, means);
    for (const step of some) {
      apply(board, step);
      solveEasyPart(board, means);
    }
    return isFull(board);
  };
  let kept = steps;
  for (const step of steps) {
    const others = kept.filter((each) => each !== step);
    if (succeeds(others)) kept = others;
  }
  return kept;
}

function apply(board: Board, { conclusions }: HardStep): void {
  const { grid } = board;
  for (const conclusion of conclusions) {
    if (conclusion.kind === 'impossible') {
      rule(board, cellOf(grid, conclusion.candidate), digitOf(grid, conclusion.candidate));
      continue;
    }
    const [only, ...others] = membersOf(conclusion.candidates);
    if (only === undefined || others.length > 0) continue;
    for (const digit of grid.digits) {
      if (digit !== digitOf(grid, only)) rule(board, cellOf(grid, only), digit);
    }
  }
}

/** The board as a position; what the easy part gave is taken as read. */
function positionOf(board: Board, givens: Givens): Position {
  const { grid, written, open } = board;
  const given = grid.cells.flatMap((cell) => {
    const digit = givens[cell];
    return digit === undefined ? [] : [candidateAt(grid, cell, digit)];
  });
  let position = begin(grid, given, { oneSolution: true });
  for (const cell of grid.cells) {
    if (!written[cell] || givens[cell] !== undefined) continue;
    const digit = grid.digits.find((each) => open[cell] === 1 << (each - 1))!;
    position = takeAsRead(position, oneOf(grid, candidateAt(grid, cell, digit)));
  }
  const left = candidatesOf(board);
  for (const candidate of membersOf(position.possible)) {
    if (!has(left, candidate)) position = takeAsRead(position, { kind: 'impossible', candidate });
  }
  return position;
}
