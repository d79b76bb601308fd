/**
 * `puzzle`: the board, its givens, and what is taken as read at the start of the video.
 */
import { type Candidates, difference, has, membersOf } from '../grid/candidates.ts';
import { type BoxShape, boardRules, boxShapes, digitOf, type Grid, gridWith } from '../grid/grid.ts';
import { parseConclusions } from '../grid/notation/conclusions.ts';
import { printCandidate, printConclusion } from '../grid/notation/print.ts';
import { possibleFrom, solutionsOf } from '../grid/solutions.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Faults } from './faults.ts';
import { type Givens, readGivens, shapeByCount } from './givens.ts';
import { readNotation, wordOf } from './reading.ts';
import { readRegions } from './regions.ts';
import type { Located, Puzzle } from './scene.ts';
import { itemsOf, type MapNode, spanIn, textOf, valueOf } from './yaml-tree.ts';

/** The grid of the puzzle, or the likeliest where it cannot be read, so that the steps can be read all the same. */
export function gridOfPuzzle(puzzle: MapNode | undefined): Grid {
  const written =
    puzzle === undefined
      ? []
      : itemsOf(valueOf(puzzle, 'rules')).map((item) => (item.kind === 'text' ? item.text : ''));
  return gridWith({ regions: regionsOf(puzzle), rules: boardRules.filter((rule) => written.includes(rule)) });
}

function regionsOf(puzzle: MapNode | undefined): BoxShape | readonly number[] {
  const drawing = puzzle === undefined ? undefined : textOf(puzzle, 'regions');
  const drawn = drawing === undefined ? undefined : readRegions(drawing.text);
  if (drawn?.kind === 'read') return drawn.regions;
  const givens = puzzle === undefined ? undefined : textOf(puzzle, 'givens');
  const boxes = wordOf(puzzle, 'boxes', boxShapes);
  if (boxes !== undefined) return boxes;
  const isGiven = puzzle !== undefined && (valueOf(puzzle, 'boxes') ?? valueOf(puzzle, 'regions')) !== undefined;
  return (isGiven && givens !== undefined ? shapeByCount(givens.text) : undefined) ?? '3x3';
}

/** The puzzle; undefined after a report. */
export function readPuzzle(map: MapNode, grid: Grid, faults: Faults): Puzzle | undefined {
  const node = textOf(map, 'givens');
  const isKnown = boxesAreKnown(map) && reportRegions(map, faults);
  const givens = node === undefined || !isKnown ? undefined : readGivens(node, grid, faults);
  const start = readStart(map, grid, faults);
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
    setter: textOf(map, 'setter')?.text,
    grid,
    givens,
    givensSpan: node.span,
    start,
    uniqueness: wordOf(map, 'uniqueness', ['allowed', 'barred']) ?? 'allowed',
  };
}

function boxesAreKnown(map: MapNode): boolean {
  return valueOf(map, 'boxes') === undefined || wordOf(map, 'boxes', boxShapes) !== undefined;
}

/** Whether the regions, if they are drawn, can be read. */
function reportRegions(map: MapNode, faults: Faults): boolean {
  const node = textOf(map, 'regions');
  if (node === undefined) return valueOf(map, 'regions') === undefined;
  const boxes = valueOf(map, 'boxes');
  if (boxes !== undefined) {
    const message =
      '"boxes" and "regions" stand together; the regions drawn take the place of boxes, so leave "boxes" out';
    faults.error('boxes-and-regions', boxes.span, message);
  }
  const read = readRegions(node.text);
  if (read.kind === 'read') return true;
  for (const { code, at, length, message } of read.faults) faults.error(code, spanIn(node, at, at + length), message);
  return false;
}

function readStart(puzzle: MapNode, grid: Grid, faults: Faults): readonly Located<Conclusion>[] {
  const start = valueOf(puzzle, 'start');
  if (start?.kind !== 'map') return [];
  return (['placed', 'removed'] as const).flatMap((key) => {
    const node = textOf(start, key);
    const read = node === undefined ? undefined : readNotation(node, parseConclusions, { grid, faults });
    return (read ?? []).flatMap(({ conclusion, at, length }) => {
      const span = spanIn(node!, at, at + length);
      if (isRightKind(conclusion, key)) return [{ value: conclusion, span }];
      const right = key === 'placed' ? 'placements, such as r1c1=4' : 'removals, such as r4c5<>39';
      faults.error('wrong-conclusion', span, `"${key}" holds ${right}; this is none`);
      return [];
    });
  });
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
  /** Two at most. */
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
  // Of more than two solutions only two are at hand: look for one that contradicts.
  if (conclusion.kind === 'one-of') return solutionsOf(grid, difference(possible, conclusion.candidates), 1)[0];
  if (!has(possible, conclusion.candidate)) return undefined;
  return solutionsOf(grid, difference(possible, grid.conflicts[conclusion.candidate]!), 1)[0];
}
