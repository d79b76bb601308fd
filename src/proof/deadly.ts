/**
 * Deadly patterns: what must not be left over if the puzzle has one solution.
 *
 * A pattern of cells and digits is deadly if every way to fill its cells with its digits has a twin that puts the same
 * digits in every house: a solution that held one would have a second one beside it. So one of the cells must hold
 * another digit: the *guardians* are the candidates of its cells other than its digits.
 *
 * The whole grid is deadly where every open cell has two candidates and every digit stands exactly twice, or not at all,
 * among the open cells of each house (a "bivalue universal grave"; common practice). The guardians are the extra
 * candidates without which it would be so. Which they are is a hint from elsewhere, judged here.
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
import type { Deadly, PatternPart } from '../grid/conclusion.ts';
import { type Cell, candidateAt, candidatesInCell, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Board, FindExtras, Guardians } from './terms.ts';

/** How many fillings of a pattern are looked at before it is refused as too large to decide. */
const fillingBound = 100_000;

/** The guardians of the pattern in this position, or why it is refused: never both, never an empty set. */
export function guardians(board: Board, deadly: Deadly, find: FindExtras): Guardians {
  const { grid, possible } = board;
  if (deadly.kind === 'grid') return guardiansOfGrid(board, deadly.without, find);
  const pattern = digitsByCell(grid, deadly.parts);
  const given = membersOf(board.givens).map((candidate) => cellOf(grid, candidate));
  const refused = whyNotDeadly(grid, pattern, given);
  if (refused !== undefined) return { refused };
  const own = [...pattern].flatMap(([cell, digits]) => digits.map((each) => candidateAt(grid, cell, each)));
  const inCells = [...pattern.keys()].flatMap((cell) => candidatesInCell(grid, cell));
  const members = intersection(possible, difference(setOf(grid, inCells), setOf(grid, own)));
  if (isEmpty(members))
    return { refused: 'its cells hold no other candidates, so nothing keeps it from being left over' };
  return { members };
}

/** A copy that cannot be changed, each part read once. Anything that is not a cell or digit of the grid has no effect. */
export function fixedDeadly(grid: Grid, deadly: Deadly): Deadly {
  if (deadly.kind === 'grid') {
    const { without } = deadly;
    return Object.freeze({ kind: 'grid', without: without && setOf(grid, membersOf(without)) });
  }
  const list = <T>(of: readonly T[]): readonly T[] => Object.freeze([...of]);
  const parts = list(deadly.parts).map(({ digits, cells }) =>
    Object.freeze({ digits: list(digits), cells: list(cells) }),
  );
  return Object.freeze({ kind: 'pattern', parts: list(parts) });
}

/** By cell, in the grid's order: its digits, in order. */
function digitsByCell(grid: Grid, parts: readonly PatternPart[]): ReadonlyMap<Cell, readonly Digit[]> {
  const pattern = new Map<Cell, readonly Digit[]>();
  for (const cell of grid.cells) {
    const own = parts.filter((part) => part.cells.includes(cell));
    const isOwn = (digit: Digit) => own.some((part) => part.digits.includes(digit));
    if (own.length > 0) pattern.set(cell, grid.digits.filter(isOwn));
  }
  return pattern;
}

function whyNotDeadly(
  grid: Grid,
  pattern: ReadonlyMap<Cell, readonly Digit[]>,
  givens: readonly Cell[],
): string | undefined {
  const given = givens.find((cell) => pattern.has(cell));
  if (given !== undefined)
    return `r${Math.floor(given / grid.size) + 1}c${(given % grid.size) + 1} is a given, and a given cannot be exchanged`;
  const fillings = fillingsOf(grid, pattern);
  if (fillings === undefined) return 'it has too many fillings to decide';
  if (fillings.length === 0) return 'its digits cannot fill its cells without a clash';
  const seen = new Set<string>();
  const twins = new Set<string>();
  for (const trace of fillings.map((filling) => traceOf(grid, filling))) (seen.has(trace) ? twins : seen).add(trace);
  if (twins.size === seen.size) return undefined;
  return 'its digits cannot be exchanged within every house: it has a filling without a twin';
}

/** All fillings of the pattern that are free of conflicts; undefined past the bound. */
function fillingsOf(grid: Grid, pattern: ReadonlyMap<Cell, readonly Digit[]>): Candidate[][] | undefined {
  let fillings: Candidate[][] = [[]];
  for (const [cell, digits] of pattern) {
    fillings = fillings.flatMap((filling) =>
      digits
        .map((each) => candidateAt(grid, cell, each))
        .filter((candidate) => !filling.some((other) => has(grid.conflicts[candidate]!, other)))
        .map((candidate) => [...filling, candidate]),
    );
    if (fillings.length > fillingBound) return undefined;
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

function guardiansOfGrid(board: Board, without: Candidates | undefined, find: FindExtras): Guardians {
  if (!conflictsComeFromHouses(board.grid))
    return { refused: 'this board has rules beyond its houses, for which it is not known to hold' };
  const hint = find(board, without);
  if ('refused' in hint) return hint;
  const { extras } = hint;
  if (isGraveWithout(board, extras)) return { members: extras };
  const lacking = 'the open cells still do not all have two, each digit twice or not at all in every house';
  return { refused: `without these candidates ${lacking}` };
}

function conflictsComeFromHouses(grid: Grid): boolean {
  return grid.cells.every((cell) => {
    const inHouses = new Set(grid.housesOf[cell]!.flatMap((house) => house.cells));
    return grid.peers[cell]!.every((peer) => inHouses.has(peer));
  });
}

function isGraveWithout({ grid, possible, placed }: Board, extras: Candidates): boolean {
  const holds = (set: Candidates) => (candidate: Candidate) => has(set, candidate);
  const left = difference(possible, extras);
  const open = grid.cells.filter((cell) => !candidatesInCell(grid, cell).some(holds(placed)));
  const inCells = open.map((cell) => candidatesInCell(grid, cell).filter(holds(left)).length);
  const inHouses = grid.houses.flatMap((house) => {
    const own = house.cells.filter((cell) => open.includes(cell));
    return grid.digits.map((digit) => own.map((cell) => candidateAt(grid, cell, digit)).filter(holds(left)).length);
  });
  return inCells.every((count) => count === 2) && inHouses.every((count) => count === 0 || count === 2);
}
