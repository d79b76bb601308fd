/**
 * `puzzle`: the board, its givens, and what is taken as read at the start of the video.
 */
import { type Candidates, difference, has, membersOf } from '../grid/candidates.ts';
import { type BoxShape, boardRules, digitOf, type Grid, gridWith } from '../grid/grid.ts';
import { printCandidate, printConclusion } from '../grid/notation/print.ts';
import { possibleFrom, solutionsOf } from '../grid/solutions.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Faults } from './faults.ts';
import { type Givens, readGivens, shapeByCount } from './givens.ts';
import type { PuzzleMap } from './language.ts';
import { readRegions } from './regions.ts';
import type { Located, Puzzle } from './scene.ts';
import { spanIn } from './yaml-tree.ts';

/** The grid of the puzzle, or the likeliest one if it cannot be read, so that the steps can still be read. */
export function gridOfPuzzle(puzzle: PuzzleMap | undefined): Grid {
  const written = (puzzle?.values.rules?.items ?? []).map((rule) => rule?.read());
  return gridWith({ regions: regionsOf(puzzle), rules: boardRules.filter((rule) => written.includes(rule)) });
}

function regionsOf(puzzle: PuzzleMap | undefined): BoxShape | readonly number[] {
  if (puzzle === undefined) return '3x3';
  const { regions, givens, boxes } = puzzle.values;
  const drawn = regions === undefined ? undefined : readRegions(regions.text);
  if (drawn?.kind === 'read') return drawn.regions;
  const shape = boxes?.read();
  if (shape !== undefined) return shape;
  const isGiven = says(puzzle, 'boxes') || says(puzzle, 'regions');
  return (isGiven && givens !== undefined ? shapeByCount(givens.text) : undefined) ?? '3x3';
}

/** Whether anything follows the key, even something that cannot be read. */
function says(puzzle: PuzzleMap, key: 'boxes' | 'regions'): boolean {
  return puzzle.values[key] !== undefined || puzzle.misfits.has(key);
}

/** The puzzle; undefined after a report. */
export function readPuzzle(map: PuzzleMap, grid: Grid, faults: Faults): Puzzle | undefined {
  const { setter, uniqueness, givens: written, start: startMap } = map.values;
  const node = written?.node;
  const isKnown = boxesAreKnown(map) && reportRegions(map, faults);
  const givens = node === undefined || !isKnown ? undefined : readGivens(node, grid, faults);
  const start = startMap === undefined ? [] : readStart(startMap, grid, faults);
  if (node === undefined || givens === undefined) return undefined;
  const possible = possibleFrom(grid, givens);
  const solutions = solutionsOf(grid, possible, 2);
  if (solutions.length === 0) {
    faults.error(
      'no-solution',
      node.span,
      'these givens allow no solution; compare them with the puzzle, cell by cell',
    );
    return undefined;
  }
  if (solutions.length > 1) {
    const message = 'these givens allow several solutions; a conclusion counts as false if one of them contradicts it';
    faults.warning('several-solutions', node.span, message);
  }
  checkStart(start, { grid, givens, possible, solutions }, faults);
  return {
    span: map.span,
    setter: setter?.text,
    grid,
    givens,
    givensSpan: node.span,
    start,
    uniqueness: uniqueness?.read() ?? 'allowed',
  };
}

function boxesAreKnown(map: PuzzleMap): boolean {
  return !says(map, 'boxes') || map.values.boxes?.read() !== undefined;
}

/** Whether the regions, if they are drawn, can be read. */
function reportRegions(map: PuzzleMap, faults: Faults): boolean {
  const { regions, boxes } = map.values;
  if (regions === undefined) return !says(map, 'regions');
  const { node } = regions;
  if (boxes !== undefined) {
    const message = '"boxes" and "regions" are both given; the regions drawn replace boxes, so leave "boxes" out';
    faults.error('boxes-and-regions', boxes.span, message);
  }
  const read = readRegions(node.text);
  if (read.kind === 'read') return true;
  for (const { code, at, length, message } of read.faults) faults.error(code, spanIn(node, at, at + length), message);
  return false;
}

type StartMap = NonNullable<PuzzleMap['values']['start']>;

function readStart(start: StartMap, grid: Grid, faults: Faults): readonly Located<Conclusion>[] {
  return (['placed', 'removed'] as const).flatMap((key) =>
    (start.values[key]?.read({ grid, faults }) ?? []).flatMap((conclusion) => {
      if (isRightKind(conclusion.value, key)) return [conclusion];
      const right = key === 'placed' ? 'placements, such as r1c1=4' : 'removals, such as r4c5<>39';
      faults.error('wrong-conclusion', conclusion.span, `"${key}" holds ${right}; this is not one`);
      return [];
    }),
  );
}

function isRightKind(conclusion: Conclusion, key: 'placed' | 'removed'): boolean {
  if (conclusion.kind === 'impossible') return key === 'removed';
  return key === 'placed' && membersOf(conclusion.candidates).length === 1;
}

interface Facts {
  readonly grid: Grid;
  readonly givens: Givens;
  /** Every candidate that no given sees. */
  readonly possible: Candidates;
  /** At most two. */
  readonly solutions: readonly Candidates[];
}

/** What is taken as read must hold in every solution. */
function checkStart(start: readonly Located<Conclusion>[], facts: Facts, faults: Faults): void {
  for (const { value, span } of start) {
    const against = solutionAgainst(value, facts);
    if (against === undefined) continue;
    const written = printConclusion(facts.grid, value);
    const which = facts.solutions.length > 1 ? 'a solution' : 'the solution';
    faults.error(
      'against-solution',
      span,
      `${written} disagrees with ${which} of the puzzle, ${reasonAgainst(value, against, facts.grid)}`,
    );
  }
}

function reasonAgainst(conclusion: Conclusion, solution: Candidates, grid: Grid): string {
  if (conclusion.kind === 'impossible') return `which has ${printCandidate(grid, conclusion.candidate)}; leave it out`;
  const [placed] = membersOf(conclusion.candidates);
  const inCell = membersOf(solution).find((each) => Math.floor(each / grid.size) === Math.floor(placed! / grid.size));
  return `which has a ${digitOf(grid, inCell!)} there; leave it out or correct it`;
}

/** A solution that contradicts the conclusion. */
function solutionAgainst(conclusion: Conclusion, { grid, possible, solutions }: Facts): Candidates | undefined {
  const contradicts = (solution: Candidates) =>
    conclusion.kind === 'impossible'
      ? has(solution, conclusion.candidate)
      : !membersOf(conclusion.candidates).some((each) => has(solution, each));
  const found = solutions.find(contradicts);
  if (found !== undefined || solutions.length < 2) return found;
  // If there are more than two solutions, only two are known here: search for one that contradicts.
  if (conclusion.kind === 'one-of') return solutionsOf(grid, difference(possible, conclusion.candidates), 1)[0];
  if (!has(possible, conclusion.candidate)) return undefined;
  return solutionsOf(grid, difference(possible, grid.conflicts[conclusion.candidate]!), 1)[0];
}
