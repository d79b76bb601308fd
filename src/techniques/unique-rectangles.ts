/**
 * Unique rectangles: four open cells in two rows, two columns and two boxes, which must not be left with the same two
 * digits. A corner is *clean* if it has no candidates except the two; the corners with others are the *roof*.
 *
 * - Type 1: only one corner is not clean; the two digits are removed from it (or its one other digit is placed).
 * - Type 2: the other candidates are in two corners of one side and are one digit, which is removed from what sees
 *   both.
 * - Type 3: the other candidates in two corners of one side count as one cell, which forms a naked subset with further
 *   cells of a house that contains both; or the two digits, at most one of which is in these corners, form a hidden
 *   subset there.
 * - Type 4: one of the two digits has only two corners of one side as places in a house; the other digit is removed
 *   from both.
 * - Type 5: the other candidates are one digit, in two diagonally opposite corners, or in three.
 * - Type 6: the other candidates are in two diagonally opposite corners, and one of the two digits has only the corners
 *   as places in both rows, or in both columns (an X-wing): it is removed from the roof. If only one of the two links
 *   exists, it is accepted with a warning.
 * - Hidden rectangle: one corner is clean; along both sides of the opposite corner one of the two digits has no other
 *   places; the other digit is removed from that corner. Also used if a whole side is clean: the link is from a clean
 *   corner to the roof above it, and the digit that is not the link's is removed from the other roof corner, against
 *   the clean corner below.
 * - Unique rectangle, without a type: every argument from the guardians of such a rectangle, with any other sets.
 *
 * A rectangle that has lost some of its digits is accepted as well. One with placed cells is an avoidable rectangle.
 */
import { type Candidates, has, union } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { columnOf, rowOf, sharedHouses } from '../grid/geometry.ts';
import { type Cell, candidateAt, type Digit, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { type DeadlyReading, placedAmong, type Rectangle, readDeadly, readRectangle } from './deadly-reading.ts';
import { fits, forEachConclusion, loosely } from './recognition.ts';
import { cellsOf, digitsOf } from './seen-by-all.ts';
import { readAsCells, readAsPlaces } from './set-reading.ts';
import { type Recogniser, type Recognition, type Shape, technique } from './technique.ts';
import {
  findHidden,
  findType1,
  findType2,
  findType3,
  findType4,
  findType5,
  findType6,
  findUniqueRectangles,
} from './unique-rectangle-instances.ts';

interface Reading extends DeadlyReading, Rectangle {}

export const uniqueRectangleType1 = technique({
  name: 'unique rectangle type 1',
  plural: 'unique rectangles type 1',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3020, cost: 6 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType1),
  find: findType1,
});

export const uniqueRectangleType2 = technique({
  name: 'unique rectangle type 2',
  plural: 'unique rectangles type 2',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3030, cost: 8 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType2),
  find: findType2,
});

export const uniqueRectangleType3 = technique({
  name: 'unique rectangle type 3',
  plural: 'unique rectangles type 3',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3050, cost: 10 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType3),
  find: findType3,
});

export const uniqueRectangleType4 = technique({
  name: 'unique rectangle type 4',
  plural: 'unique rectangles type 4',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3040, cost: 8 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType4),
  find: findType4,
});

export const uniqueRectangleType5 = technique({
  name: 'unique rectangle type 5',
  plural: 'unique rectangles type 5',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3060, cost: 10 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType5),
  find: findType5,
});

export const uniqueRectangleType6 = technique({
  name: 'unique rectangle type 6',
  plural: 'unique rectangles type 6',
  otherNames: [],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3070, cost: 10 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeType6),
  find: findType6,
});

export const hiddenRectangle = technique({
  name: 'hidden rectangle',
  plural: 'hidden rectangles',
  otherNames: ['hidden unique rectangle'],
  family: 'uniqueness',
  kindOf: ['unique rectangle'],
  teaching: { place: 3080, cost: 10 },
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeHidden),
  find: findHidden,
});

/** The name without a type. */
export const uniqueRectangle = technique({
  name: 'unique rectangle',
  plural: 'unique rectangles',
  otherNames: [],
  family: 'uniqueness',
  kindOf: [],
  teaching: 'under other names',
  isOffered: false,
  phrase: 'step by step',
  page: { under: 'Uniqueness', shows: 'removals' },
  recognise: reading(judgeAny, 'placed too'),
  find: findUniqueRectangles,
});

type Judge = (rectangle: Reading, shape: Shape) => Recognition;

function reading(judge: Judge, cells: 'open' | 'placed too' = 'open'): Recogniser {
  return (shape) => {
    const read = readDeadly(shape);
    const rectangle = read === undefined ? undefined : readRectangle(shape.position.grid, read.deadly);
    if (read === undefined || rectangle === undefined) return undefined;
    if (cells === 'open' && placedAmong(shape.position, rectangle.corners) > 0) return undefined;
    return judge({ ...read, ...rectangle }, shape);
  };
}

function judgeAny({ position, corners }: Reading): Recognition {
  return placedAmong(position, corners) === 0
    ? fits
    : loosely('cells of this rectangle are already placed: it is an avoidable rectangle');
}

function judgeType1({ guarded, others }: Reading): Recognition {
  return others.length === 0 && guarded.length === 1 ? fits : undefined;
}

function judgeType2(read: Reading): Recognition {
  return isOneDigit(read) && isSide(read.position.grid, read.guarded) ? fits : undefined;
}

function judgeType5(read: Reading): Recognition {
  return isOneDigit(read) && read.guarded.length > 1 && !isSide(read.position.grid, read.guarded) ? fits : undefined;
}

function isOneDigit({ position, guardians, others }: Reading): boolean {
  return others.length === 0 && digitsOf(position.grid, guardians).length === 1;
}

function judgeType3(read: Reading): Recognition {
  const { grid } = read.position;
  if (read.others.length === 0 || !isSide(grid, read.guarded)) return undefined;
  return isNakedSubset(read) || isHiddenSubset(read) ? fits : undefined;
}

/** As many cells of one house, counting the roof as one, as they and the guardians have digits. */
function isNakedSubset({ position: { grid }, guardians, guarded, others, corners }: Reading): boolean {
  const cells = readAsCells(others);
  if (cells === undefined || cells.some((each) => corners.includes(each.cell))) return false;
  const inOneHouse = sharedHouses(grid, [...guarded, ...cells.map((each) => each.cell)]).length > 0;
  const digits = digitsOf(grid, cells.map((each) => each.members).reduce(union, guardians));
  return inOneHouse && digits.length <= cells.length + 1;
}

/** Digits of one house, including the two, with one place fewer outside the roof than there are digits. */
function isHiddenSubset({ position: { grid }, guarded, others, digits }: Reading): boolean {
  const places = readAsPlaces(others);
  const house = places?.[0]?.house;
  if (places === undefined || house === undefined || places.some((each) => each.house !== house)) return false;
  if (!guarded.every((cell) => house.cells.includes(cell))) return false;
  if (!digits.every((digit) => places.some((each) => each.digit === digit))) return false;
  const outside = cellsOf(grid, places.map((each) => each.members).reduce(union)).filter(
    (cell) => !guarded.includes(cell),
  );
  return outside.length < places.length;
}

function judgeType4(read: Reading, shape: Shape): Recognition {
  const { grid } = read.position;
  const [link, ...more] = linksOf(read);
  if (link === undefined || more.length > 0 || read.others.length !== 1) return undefined;
  if (!isSide(grid, read.guarded) || !isWithinCells(grid, link.members, read.guarded)) return undefined;
  return forEachConclusion(shape, (each) =>
    takesDigit(grid, each, otherDigit(read, link.digit), read.guarded) ? fits : undefined,
  );
}

function judgeType6(read: Reading, shape: Shape): Recognition {
  const { grid } = read.position;
  const links = linksOf(read);
  const [first, second] = links;
  if (first === undefined || links.length !== read.others.length || links.length > 2) return undefined;
  if (read.guarded.length !== 2 || isSide(grid, read.guarded)) return undefined;
  if (second !== undefined && (second.digit !== first.digit || overlapsSide(first.side, second.side))) return undefined;
  const floor = read.corners.filter((cell) => !read.guarded.includes(cell));
  const concluded = forEachConclusion(shape, (each) =>
    takesDigit(grid, each, first.digit, read.guarded) || placesDigit(grid, each, first.digit, floor) ? fits : undefined,
  );
  if (concluded === undefined || second !== undefined) return concluded;
  const opposite = read.corners.filter((cell) => !first.side.includes(cell));
  return isLinked(read.position, first.digit, opposite)
    ? concluded
    : loosely(`only one of the two links on ${first.digit} exists, whereas type 6 has an X-wing`);
}

function judgeHidden(read: Reading, shape: Shape): Recognition {
  return forEachConclusion(shape, (each) =>
    isHiddenBySides(read, each) || isHiddenOverFloor(read, each) ? fits : undefined,
  );
}

/** Two links meet in the corner opposite a clean one. */
function isHiddenBySides(read: Reading, conclusion: Conclusion): boolean {
  const { grid } = read.position;
  const links = linksOf(read);
  const [first, second] = links;
  if (first === undefined || second === undefined || links.length > 2 || read.others.length !== 2) return false;
  if (first.digit !== second.digit) return false;
  const meeting = first.side.filter((cell) => second.side.includes(cell));
  const across = read.corners.filter((cell) => !first.side.includes(cell) && !second.side.includes(cell));
  if (meeting.length !== 1 || across.some((cell) => read.guarded.includes(cell))) return false;
  return takesDigit(grid, conclusion, otherDigit(read, first.digit), meeting);
}

/**
 * One link, from a clean corner to the roof above; the conclusion is in the other roof corner, above the other clean
 * one.
 */
function isHiddenOverFloor(read: Reading, conclusion: Conclusion): boolean {
  const { grid } = read.position;
  const [link, ...more] = linksOf(read);
  if (link === undefined || more.length > 0 || !isSide(grid, read.guarded)) return false;
  const floor = read.corners.filter((cell) => !read.guarded.includes(cell));
  const cells = readAsCells(read.others.filter((set) => set !== link.set));
  if (cells === undefined || !cells.every((each) => floor.includes(each.cell))) return false;
  if (link.side.filter((cell) => floor.includes(cell)).length !== 1) return false;
  const opposite = read.guarded.filter((cell) => !link.side.includes(cell));
  return takesDigit(grid, conclusion, otherDigit(read, link.digit), opposite);
}

/** A set that is a link along a side: one of the two digits has no other places in a house. */
interface SideLink {
  readonly set: OneOf;
  readonly digit: Digit;
  readonly side: readonly Cell[];
  readonly members: Candidates;
}

function linksOf({ position: { grid }, others, corners, digits }: Reading): SideLink[] {
  return others.flatMap((set): SideLink[] => {
    const { source, members } = set;
    if (source.kind !== 'places' || !digits.includes(source.digit)) return [];
    const side = corners.filter((cell) => source.house.cells.includes(cell));
    if (!isSide(grid, side) || !isWithinCells(grid, members, side)) return [];
    return [{ set, digit: source.digit, side, members }];
  });
}

function overlapsSide(a: readonly Cell[], b: readonly Cell[]): boolean {
  return a.some((cell) => b.includes(cell));
}

/** Two cells in one row or one column. */
function isSide(grid: Grid, cells: readonly Cell[]): boolean {
  const [a, b, ...more] = cells;
  if (a === undefined || b === undefined || more.length > 0) return false;
  return rowOf(grid, a) === rowOf(grid, b) || columnOf(grid, a) === columnOf(grid, b);
}

/** Whether the digit has no other places than these cells in one of the houses that they share. */
function isLinked(position: Position, digit: Digit, cells: readonly Cell[]): boolean {
  return sharedHouses(position.grid, cells).some((house) =>
    isWithinCells(position.grid, placesIn(position, digit, house).members, cells),
  );
}

function isWithinCells(grid: Grid, members: Candidates, cells: readonly Cell[]): boolean {
  return cellsOf(grid, members).every((cell) => cells.includes(cell));
}

function otherDigit({ digits: [a, b] }: Reading, digit: Digit): Digit {
  return digit === a ? b : a;
}

function takesDigit(grid: Grid, conclusion: Conclusion, digit: Digit, cells: readonly Cell[]): boolean {
  return (
    conclusion.kind === 'impossible' && cells.some((cell) => candidateAt(grid, cell, digit) === conclusion.candidate)
  );
}

function placesDigit(grid: Grid, conclusion: Conclusion, digit: Digit, cells: readonly Cell[]): boolean {
  return (
    conclusion.kind === 'one-of' &&
    countOf(conclusion.candidates) === 1 &&
    cells.some((cell) => has(conclusion.candidates, candidateAt(grid, cell, digit)))
  );
}
