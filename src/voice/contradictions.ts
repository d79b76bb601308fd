/**
 * What is spoken held against what its step claims and shows. Only a contradiction counts: what is said of something
 * else on the board, or of the step before or after, is left alone.
 */
import type { CheckedStep } from '../check/verdict.ts';
import { type Candidate, has } from '../grid/candidates.ts';
import { cellAt, columnOf, rowOf } from '../grid/geometry.ts';
import { type Cell, candidateAt, cellOf, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import { printCandidates, printCell, printHouse } from '../grid/notation/print.ts';
import type { Code } from '../scene/codes.ts';
import type { Involved } from './involved.ts';
import type { Statement } from './statements.ts';

export interface Contradiction {
  readonly code: Extract<Code, `spoken-${string}`>;
  /** What the step shows instead, and what would put it right. */
  readonly message: string;
}

export interface StepHeard {
  readonly grid: Grid;
  readonly step: CheckedStep;
  readonly own: Involved;
  /** The steps before and after: a voice is early or late. */
  readonly around: readonly Involved[];
  /** Names that fit an earlier step, for "the kite" of before; and those of the next. */
  readonly earlierNames: ReadonlySet<string>;
  readonly nextNames: ReadonlySet<string>;
}

/** How the statement contradicts the step; undefined if it does not. */
export function contradictionOf(statement: Statement, heard: StepHeard): Contradiction | undefined {
  switch (statement.kind) {
    case 'cell':
      return ofCell(statement.cell, heard);
    case 'placed':
      return ofPlacement(candidateAt(heard.grid, statement.cell, statement.digit), heard);
    case 'removed':
      return statement.cell === undefined
        ? ofDigit(statement.digit, heard)
        : ofRemoval(candidateAt(heard.grid, statement.cell, statement.digit), heard);
    case 'places':
      return ofPlaces(statement.digit, statement.house, heard);
    case 'name':
      return ofName(statement, heard);
    default:
      return statement satisfies never;
  }
}

/** Row and column exchanged. */
function ofCell(cell: Cell, { grid, step, own, around }: StepHeard): Contradiction | undefined {
  const swapped = cellAt(grid, columnOf(grid, cell), rowOf(grid, cell));
  if (swapped === cell || own.cells.has(cell) || !own.cells.has(swapped)) return undefined;
  if (around.some(({ cells }) => cells.has(cell)) || standsIn(grid, step, cell)) return undefined;
  const [said, shown] = [printCell(grid, cell), printCell(grid, swapped)];
  return { code: 'spoken-cell', message: `the step shows ${shown}, not ${said}; say ${shown}, or move the mark` };
}

function standsIn(grid: Grid, { placedBefore }: CheckedStep, cell: Cell): boolean {
  return grid.digits.some((each) => has(placedBefore, candidateAt(grid, cell, each)));
}

function ofPlacement(candidate: Candidate, { grid, step, own, around }: StepHeard): Contradiction | undefined {
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  if (has(step.placedBefore, candidate) || [own, ...around].some(({ placed }) => placed.get(cell) === digit))
    return undefined;
  const other = own.placed.get(cell);
  if (other !== undefined) {
    const place = printCell(grid, cell);
    return { code: 'spoken-digit', message: `the step places ${other} in ${place}, not ${digit}` };
  }
  if (!own.cells.has(cell)) {
    const elsewhere = [...own.placed].find(([, each]) => each === digit);
    if (elsewhere === undefined) return undefined;
    const [shown, said] = [printCell(grid, elsewhere[0]), printCell(grid, cell)];
    return { code: 'spoken-cell', message: `the step places ${digit} in ${shown}, not in ${said}` };
  }
  if (!has(step.possibleBefore, candidate) && own.placed.size > 0)
    return { code: 'spoken-digit', message: `${digit} is no longer possible in ${printCell(grid, cell)}` };
  return undefined;
}

function ofRemoval(candidate: Candidate, { grid, step, own, around }: StepHeard): Contradiction | undefined {
  const [cell, digit] = [cellOf(grid, candidate), digitOf(grid, candidate)];
  if (own.removed.size === 0 || !has(step.possibleBefore, candidate)) return undefined;
  if ([own, ...around].some(({ removed }) => removed.has(candidate)) || own.argument.has(candidate)) return undefined;
  const inCell = [...own.removed].filter((each) => cellOf(grid, each) === cell);
  const ofSame = [...own.removed].filter((each) => digitOf(grid, each) === digit);
  if (inCell.length > 0) {
    const shown = printCandidates(grid, inCell);
    return { code: 'spoken-digit', message: `the step removes ${shown}, not the ${digit} of ${printCell(grid, cell)}` };
  }
  if (ofSame.length > 0 && !own.cells.has(cell)) {
    const shown = printCandidates(grid, ofSame);
    return { code: 'spoken-cell', message: `the step removes ${shown}, and nothing from ${printCell(grid, cell)}` };
  }
  return undefined;
}

/** "not a seven" while only 8s are struck. */
function ofDigit(digit: number, { grid, own, around }: StepHeard): Contradiction | undefined {
  if (own.removed.size === 0 || [...own.argument].some((each) => digitOf(grid, each) === digit)) return undefined;
  if ([own, ...around].some(({ removed }) => [...removed].some((each) => digitOf(grid, each) === digit)))
    return undefined;
  const shown = printCandidates(grid, [...own.removed]);
  return { code: 'spoken-digit', message: `the step removes ${shown}, and no ${digit}` };
}

/** "the sevens in row five" while the argument is about the sevens of row three. */
function ofPlaces(digit: number, house: HouseShape, heard: StepHeard): Contradiction | undefined {
  const { own, around } = heard;
  const named = own.sets.flatMap((set) => {
    const [, of, kind, number] = /^(\d+)([rcb])(\d+)$/.exec(set) ?? [];
    return Number(of) === digit ? [{ kind: kind!, number: Number(number), set }] : [];
  });
  if (named.length === 0 || [own, ...around].some(({ cells }) => house.cells.some((cell) => cells.has(cell))))
    return undefined;
  const letter = house.kind[0];
  const likely = named.find(({ kind, number }) => kind === letter || number === house.number);
  if (likely === undefined) return undefined;
  const shown = likely.set.replace(/^\d+/, '');
  return {
    code: 'spoken-house',
    message: `the step is about the ${digit}s of ${shown}, and shows nothing in ${printHouse(house)}`,
  };
}

function ofName(
  { name, isReference }: Extract<Statement, { kind: 'name' }>,
  { step, earlierNames, nextNames }: StepHeard,
): Contradiction | undefined {
  const judged = step.name;
  if (judged?.judged !== 'fits' || judged.fits.includes(name)) return undefined;
  if (nextNames.has(name) || (isReference && earlierNames.has(name))) return undefined;
  return { code: 'spoken-name', message: `the step's argument is ${judged.given}, and ${name} does not fit it` };
}
