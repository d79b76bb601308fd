/**
 * Deadly patterns: what must not be left over if the puzzle has one solution.
 *
 * A pattern of cells and digits is deadly if every way to fill its cells with its digits has a twin that puts the same
 * digits in every house: a solution that held one would have a second one beside it. So one of the cells must hold
 * another digit: the *guardians* are the candidates of its cells other than its digits.
 *
 * The whole grid is deadly where every open cell has two candidates and every digit stands exactly twice, or not at all,
 * among the open cells of each house (a "bivalue universal grave"; common practice). The guardians are the extra
 * candidates without which it would be so.
 */
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  intersection,
  isEmpty,
  membersOf,
  setOf,
} from '../grid/candidates.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Deadly, PatternPart } from '../grid/terms.ts';
import { gravesOf } from './grave.ts';

export type Guardians = { readonly members: Candidates } | { readonly refused: string };

interface Board {
  readonly grid: Grid;
  readonly possible: Candidates;
  readonly placed: Candidates;
  readonly givens: Candidates;
}

/** How many fillings of a pattern are looked at before it is refused as too large to decide. */
const fillingBound = 100_000;

/** The guardians of the pattern in this position, or why it is refused: never both, never an empty set. */
export function guardians(board: Board, deadly: Deadly): Guardians {
  if (deadly.kind === 'grid') return guardiansOfGrid(board, deadly.without);
  const pattern = digitsByCell(board.grid, deadly.parts);
  const refused = whyNotDeadly(board, pattern);
  if (refused !== undefined) return { refused };
  const own = [...pattern].flatMap(([cell, digits]) => digits.map((digit) => candidateAt(board.grid, cell, digit)));
  const inCells = [...pattern.keys()].flatMap((cell) => candidatesInCell(board.grid, cell));
  const members = intersection(board.possible, difference(setOf(board.grid, inCells), setOf(board.grid, own)));
  if (isEmpty(members))
    return { refused: 'its cells hold no other candidates, so nothing keeps it from being left over' };
  return { members };
}

function guardiansOfGrid(board: Board, without: Candidates | undefined): Guardians {
  if (!conflictsComeFromHouses(board.grid))
    return { refused: 'this board has rules beyond its houses, for which it is not known to hold' };
  const found = gravesOf(board, without);
  if (found.kind === 'refused') return { refused: found.why };
  if (isEmpty(found.extras))
    return { refused: 'every open cell has two candidates already, so nothing keeps it from being left over' };
  return { members: found.extras };
}

function whyNotDeadly(board: Board, pattern: Map<Cell, readonly Digit[]>): string | undefined {
  const given = membersOf(board.givens).find((candidate) => pattern.has(cellOf(board.grid, candidate)));
  if (given !== undefined)
    return `${nameOf(board.grid, cellOf(board.grid, given))} is a given, and a given cannot be exchanged`;
  const fillings = fillingsOf(board.grid, pattern);
  if (fillings === undefined) return 'it has too many fillings to decide';
  if (fillings.length === 0) return 'its digits cannot fill its cells without a clash';
  const alike = new Map<string, number>();
  for (const filling of fillings) {
    const trace = traceOf(board.grid, filling);
    alike.set(trace, (alike.get(trace) ?? 0) + 1);
  }
  if ([...alike.values()].every((count) => count >= 2)) return undefined;
  return 'its digits cannot be exchanged within every house: it has a filling without a twin';
}

/** All fillings of the pattern that are free of conflicts; undefined past the bound. */
function fillingsOf(grid: Grid, pattern: Map<Cell, readonly Digit[]>): Candidate[][] | undefined {
  let fillings: Candidate[][] = [[]];
  for (const [cell, digits] of pattern) {
    const longer: Candidate[][] = [];
    for (const filling of fillings) {
      for (const digit of digits) {
        const candidate = candidateAt(grid, cell, digit);
        if (!filling.some((other) => has(grid.conflicts[candidate]!, other))) longer.push([...filling, candidate]);
      }
    }
    if (longer.length > fillingBound) return undefined;
    fillings = longer;
  }
  return fillings;
}

/**
 * What the rest of the grid notices of a filling: the digits in every house, and those that each cell outside sees.
 * The second follows from the first where all conflicts come from houses, and is needed where they do not.
 */
function traceOf(grid: Grid, filling: readonly Candidate[]): string {
  const digitOfCell = new Map(filling.map((candidate) => [cellOf(grid, candidate), digitOf(grid, candidate)]));
  const seen = (cells: readonly Cell[]) =>
    [...new Set(cells.flatMap((cell) => digitOfCell.get(cell) ?? []))].sort((a, b) => a - b).join('');
  const houses = grid.houses.map((house) => seen(house.cells));
  const outside = grid.cells.map((cell) => (digitOfCell.has(cell) ? '' : seen(grid.peers[cell]!)));
  return [...houses, ...outside].join(',');
}

function digitsByCell(grid: Grid, parts: readonly PatternPart[]): Map<Cell, readonly Digit[]> {
  const digits = new Map<Cell, Set<Digit>>();
  for (const part of parts) {
    for (const cell of part.cells) digits.set(cell, new Set([...(digits.get(cell) ?? []), ...part.digits]));
  }
  const cells = grid.cells.filter((cell) => digits.has(cell));
  return new Map(cells.map((cell) => [cell, [...digits.get(cell)!].sort((a, b) => a - b)]));
}

function conflictsComeFromHouses(grid: Grid): boolean {
  return grid.cells.every((cell) => {
    const inHouses = new Set(grid.housesOf[cell]!.flatMap((house) => house.cells));
    return grid.peers[cell]!.every((peer) => inHouses.has(peer));
  });
}

function nameOf(grid: Grid, cell: Cell): string {
  return `r${Math.floor(cell / grid.size) + 1}c${(cell % grid.size) + 1}`;
}
