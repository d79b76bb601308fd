/**
 * Wings of cells (common practice, from memory): as many cells as they have digits, with all digits but one restricted,
 * which means that the places of the digit among the cells all see one another. A restricted digit fills at most one of
 * the cells, so the unrestricted one fills at least one of them, and is removed from everything that sees all its
 * places.
 *
 * - XY-wing (Y-wing): a pivot of two digits that sees two pincers, xy with xz and yz.
 * - XYZ-wing: a pivot of three digits that sees two pincers of two, xyz with xz and yz.
 * - WXYZ-wing: four cells with four digits. Either one of them, the pivot, sees the other three, or they lie in a line
 *   and a box that cross. If all four digits are restricted, each of them is removed from what sees all its places.
 * - VWXYZ-wing: the same with five cells and five digits.
 *
 * Cells that all lie in one house are a naked subset and not a wing.
 */
import { type Candidates, has, isWithin, setOf, union } from '../grid/candidates.ts';
import { bitsIn, countOf } from '../grid/counting.ts';
import { sees, sharedHouses } from '../grid/geometry.ts';
import type { Digit, Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { openCells } from './open-cells.ts';
import { orderedInstance } from './ordered-chain.ts';
import { fits, forEachConclusion } from './recognition.ts';
import { plainInstance, removalsOf } from './removals.ts';
import { maskOf } from './search-links.ts';
import { digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import { type CellSet, readAsCells } from './set-reading.ts';
import type { Instance, Recognition, Shape, TechniqueAbout, TechniqueRecord } from './technique.ts';

interface WingShape {
  readonly size: number;
  readonly isShape: (grid: Grid, cells: readonly CellSet[]) => boolean;
  /** The most digits that one of its cells may have. */
  readonly mostDigits: number;
}

const xyShape: WingShape = { size: 3, isShape: isXY, mostDigits: 2 };
const xyzShape: WingShape = { size: 3, isShape: isXYZ, mostDigits: 3 };
const wxyzShape: WingShape = { size: 4, isShape: isBentAroundOne, mostDigits: 4 };
const vwxyzShape: WingShape = { size: 5, isShape: isBentAroundOne, mostDigits: 5 };

export const xyWing = ofShape(xyShape, {
  name: 'XY-wing',
  plural: 'XY-wings',
  otherNames: ['Y-wing'],
  family: 'wings',
  kindOf: ['XY-chain', 'ALS-XZ'],
  teaching: { place: 2060, cost: 7 },
  isOffered: true,
  phrase: 'XY-wing',
  page: { under: 'Wings', shows: 'removals' },
});

export const xyzWing = ofShape(xyzShape, {
  name: 'XYZ-wing',
  plural: 'XYZ-wings',
  otherNames: [],
  family: 'wings',
  kindOf: ['ALS-XZ', 'aligned pair exclusion'],
  teaching: { place: 2120, cost: 8 },
  isOffered: true,
  phrase: 'XY-wing',
  page: { under: 'Wings', shows: 'removals' },
});

export const wxyzWing = ofShape(wxyzShape, {
  name: 'WXYZ-wing',
  plural: 'WXYZ-wings',
  otherNames: [],
  family: 'wings',
  kindOf: [],
  teaching: { place: 4070, cost: 13 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

export const vwxyzWing = ofShape(vwxyzShape, {
  name: 'VWXYZ-wing',
  plural: 'VWXYZ-wings',
  otherNames: [],
  family: 'wings',
  kindOf: [],
  teaching: { place: 4095, cost: 15 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Wings', shows: 'removals' },
});

function ofShape<const Name extends string, const Other extends string = never>(
  wing: WingShape,
  about: TechniqueAbout<Name, Other>,
): TechniqueRecord<Name, Other> {
  return {
    ...about,
    recognise: (shape) => recognise(shape, wing),
    find: (position) => find(position, wing),
  };
}

function recognise(shape: Shape, wing: WingShape): Recognition {
  const { grid } = shape.position;
  const cells = readAsCells(shape.sets);
  if (cells === undefined || cells.length !== wing.size || !isBent(grid, cells) || !wing.isShape(grid, cells))
    return undefined;
  const members = cells.map((cell) => cell.members).reduce(union);
  const [loose, ...others] = looseDigits(grid, members);
  if (others.length > 0) return undefined;
  const free = loose === undefined ? digitsOf(grid, members) : [loose];
  return forEachConclusion(shape, (conclusion) =>
    free.some((digit) => follows(grid, members, digit, conclusion)) ? fits : undefined,
  );
}

/** Whether the wing with this digit unrestricted gives the conclusion. */
function follows(grid: Grid, members: Candidates, digit: Digit, conclusion: Conclusion): boolean {
  const ends = setOf(grid, ofDigit(grid, members, digit));
  return conclusion.kind === 'impossible'
    ? isWithin(ends, grid.conflicts[conclusion.candidate]!)
    : isWithin(ends, conclusion.candidates);
}

/** As many digits as cells, and not all cells in one house. */
function isBent(grid: Grid, cells: readonly CellSet[]): boolean {
  const digits = digitsOf(grid, cells.map((cell) => cell.members).reduce(union));
  return (
    digits.length === cells.length &&
    sharedHouses(
      grid,
      cells.map((cell) => cell.cell),
    ).length === 0
  );
}

/** The digits whose places among these do not all see one another. */
function looseDigits(grid: Grid, members: Candidates): Digit[] {
  return digitsOf(grid, members).filter((digit) => {
    const places = ofDigit(grid, members, digit);
    return places.some((a) => places.some((b) => a < b && !has(grid.conflicts[a]!, b)));
  });
}

function isXY(grid: Grid, cells: readonly CellSet[]): boolean {
  if (cells.some((cell) => countOf(cell.members) !== 2)) return false;
  return cells.some((pivot) => seesAll(grid, pivot, cells));
}

function isXYZ(grid: Grid, cells: readonly CellSet[]): boolean {
  const pivot = cells.find((cell) => countOf(cell.members) === 3);
  if (pivot === undefined || cells.some((cell) => cell !== pivot && countOf(cell.members) !== 2)) return false;
  return seesAll(grid, pivot, cells);
}

function isBentAroundOne(grid: Grid, cells: readonly CellSet[]): boolean {
  if (cells.some((cell) => countOf(cell.members) < 2)) return false;
  return cells.some((pivot) => seesAll(grid, pivot, cells)) || areInLineAndBox(grid, cells);
}

function seesAll(grid: Grid, pivot: CellSet, cells: readonly CellSet[]): boolean {
  return cells.every((cell) => cell === pivot || sees(grid, cell.cell, pivot.cell));
}

function areInLineAndBox(grid: Grid, cells: readonly CellSet[]): boolean {
  const houses = cells.flatMap((cell) => grid.housesOf[cell.cell]!);
  return houses.some((box) => {
    if (box.kind !== 'box') return false;
    const outside = cells.filter((cell) => !box.cells.includes(cell.cell)).map((cell) => cell.cell);
    return sharedHouses(grid, outside).some(
      (line) => line.kind !== 'box' && line.cells.some((cell) => box.cells.includes(cell)),
    );
  });
}

function* find(position: Position, wing: WingShape): Generator<Instance> {
  const { grid } = position;
  for (const cells of candidatesFor(position, wing)) {
    const read = readAsCells(cells);
    if (read === undefined || !isBent(grid, read) || !wing.isShape(grid, read)) continue;
    const members = cells.map((set) => set.members).reduce(union);
    const [loose, ...others] = looseDigits(grid, members);
    if (others.length > 0) continue;
    for (const digit of loose === undefined ? digitsOf(grid, members) : [loose]) {
      const ends = setOf(grid, ofDigit(grid, members, digit));
      const removals = removalsOf(position, seenByAll(grid, ends));
      if (removals.length === 0) continue;
      yield wing === xyShape ? orderedInstance(grid, cells, removals) : plainInstance(cells, removals);
    }
  }
}

/** Open cells with two digits up to as many as the wing allows, around each pivot, each choice once. */
function* candidatesFor(position: Position, { size, mostDigits }: WingShape): Generator<readonly OneOf[]> {
  const { grid } = position;
  const open = openCells(position).filter((set) => countOf(set.members) >= 2 && countOf(set.members) <= mostDigits);
  const masks = new Map(open.map((set) => [set, maskOf(position, set)]));
  const shown = new Set<string>();
  for (const pivot of open) {
    const around = open.filter((set) => sees(grid, set.source.cell, pivot.source.cell));
    for (const others of combinations(around, size - 1)) {
      if (bitsIn(others.reduce((mask, set) => mask | masks.get(set)!, masks.get(pivot)!)) !== size) continue;
      const cells = [pivot, ...others].sort((a, b) => a.source.cell - b.source.cell);
      const key = cells.map((set) => set.source.cell).join();
      if (!shown.has(key)) yield cells;
      shown.add(key);
    }
  }
}
