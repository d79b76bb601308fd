/**
 * Scenes by chance: sound ones, and ones spoilt in the ways that editors meet. The expected verdict of each step is worked out
 * by the second reading of the rules as the scene grows.
 */
import { candidateAt, digitOf, gridOf } from '../../src/grid/grid.ts';
import { countSolutions, possibleFrom } from '../../src/grid/solutions.ts';
import { randomSolution } from '../proof/positions.ts';
import { type Chance, chanceFrom } from '../random.ts';
import { type JudgedStep, judgeStep, type Step, stepLines, type Truth } from './claims.ts';
import { inventClaims } from './invent-claims.ts';
import {
  type Board,
  boardOf,
  cellIn,
  cellName,
  digitIn,
  entered,
  isPlaced,
  type Position,
  solutionsWithin,
  startOf,
} from './rules.ts';

export interface Tale {
  readonly text: string;
  readonly truth: Truth;
  readonly steps: readonly JudgedStep[];
}

const shapes = ['2x2', '2x3', '2x4', '3x3'] as const;
const boards = new Map(shapes.map((shape) => [shape, boardOf(Number(shape[0]), Number(shape[2]))] as const));

/** One scene of about `length` steps. */
export function inventTale(seed: number, length: number): Tale {
  const chance = chanceFrom(seed);
  for (let warm = 0; warm < 5; warm++) chance.below(2);
  const shape = chance.below(4) > 0 ? '3x3' : chance.pick(shapes);
  const board = boards.get(shape)!;
  const several = chance.below(10) === 0;
  const givens = givensOf(shape, chance, several);
  const start = startOf(board, givens);
  const solutions = solutionsWithin(board, start.possible, 2);
  const barred = chance.below(12) === 0;
  const truth: Truth = {
    board,
    givens,
    oneSolution: solutions.length === 1 && !barred,
    start,
    solutions,
    eithers: new Map(),
  };
  const lines = ['proofreel: 1', 'puzzle:', `  boxes: ${shape}`, '  givens: |', ...givenLines(board, givens)];
  let position = start;
  if (solutions.length === 1 && chance.below(3) > 0) {
    const { placed, removed } = startOnTheWay(board, start, solutions[0]!, chance);
    position = entered(
      board,
      position,
      placed.map((one) => ({ oneOf: [one] })),
    );
    const stillThere = removed.filter((one) => position.possible.has(one));
    position = entered(
      board,
      position,
      stillThere.map((not) => ({ not })),
    );
    const about = (one: number, sign: string) => `${cellName(board, cellIn(board, one))}${sign}${digitIn(board, one)}`;
    lines.push('  start:');
    if (placed.length > 0) lines.push(`    placed: ${placed.map((one) => about(one, '=')).join(' ')}`);
    if (stillThere.length > 0) lines.push(`    removed: ${stillThere.map((one) => about(one, '<>')).join(' ')}`);
    if (placed.length + stillThere.length === 0) lines.pop();
  }
  if (barred) lines.push('  uniqueness: barred');
  lines.push('steps:');
  const steps: JudgedStep[] = [];
  let eithers: Truth['eithers'] = new Map();
  for (let tries = 0; steps.length < length && tries < length * 6; tries++) {
    const setting = { truth, position, eithers, chance };
    const claims = inventClaims(setting);
    if (claims === undefined) continue;
    const hasList = claims.some((claim) => claim.kind === 'so' && claim.so !== undefined && claim.so !== 'all');
    const step: Step = { id: `s${steps.length + 1}`, claims, fails: hasList && chance.below(14) === 0 };
    const judged = judgeStep(truth, step, position, eithers);
    if (judged === undefined) continue;
    steps.push(judged);
    position = judged.after;
    eithers = judged.eithers;
    for (const [index, line] of stepLines(board, step).entries()) lines.push(`${index === 0 ? '  - ' : '    '}${line}`);
  }
  return { text: `${lines.join('\n')}\n`, truth, steps };
}

function givensOf(shape: (typeof shapes)[number], chance: Chance, several: boolean): number[] {
  const grid = gridOf(shape);
  const solution = randomSolution(grid, chance);
  let left = new Set<number>(solution);
  const without = (given: number) => new Set([...left].filter((one) => one !== given));
  const count = (some: ReadonlySet<number>) => {
    const digits = grid.cells.map((cell) => (some.has(solution[cell]!) ? digitOf(grid, solution[cell]!) : undefined));
    return countSolutions(grid, possibleFrom(grid, digits), 2);
  };
  for (const given of chance.shuffled(solution)) if (count(without(given)) === 1) left = without(given);
  if (several) left = without(chance.pick([...left]));
  return solution
    .map((one) => candidateAt(grid, grid.cells[Math.floor(one / grid.size)]!, digitOf(grid, one)))
    .filter((one) => left.has(one));
}

function givenLines(board: Board, givens: readonly number[]): string[] {
  const digitIs = new Map(givens.map((one) => [cellIn(board, one), digitIn(board, one)]));
  const columns = [...Array(board.size).keys()];
  return columns.map((row) => `    ${columns.map((column) => digitIs.get(row * board.size + column) ?? '.').join('')}`);
}

function startOnTheWay(board: Board, start: Position, solution: readonly number[], chance: Chance) {
  const share = chance.below(60);
  const placed = solution.filter((one) => !isPlaced(board, start, cellIn(board, one)) && chance.below(100) < share);
  const removalShare = chance.below(75);
  const removed = [...start.possible].filter((one) => !solution.includes(one) && chance.below(100) < removalShare);
  return { placed, removed };
}
