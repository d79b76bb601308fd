/** Unique rectangles found in a position, type by type; `unique-rectangles.ts` says what the types are. */
import { type Candidates, difference, has, membersOf, setOf, union } from '../grid/candidates.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { type Cell, candidateAt, candidatesInCell, type Digit, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { needsEverySet } from './minimal-argument.ts';
import { across, type GuardedRectangle, openRectangles } from './rectangles.ts';
import { placementOf, removalsOf } from './removals.ts';
import { cellsOf, digitsOf, ofDigit, seenByAll } from './seen-by-all.ts';
import type { Instance } from './technique.ts';

export function* findType1(position: Position): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    const [corner, ...others] = rectangle.guarded;
    if (corner === undefined || others.length > 0) continue;
    const removed = removalsOf(position, ofDigits(position, [corner], rectangle.digits));
    const [only, ...more] = membersOf(rectangle.set.members);
    const placed = more.length === 0 ? [placementOf(position.grid, only!)] : [];
    yield instance(rectangle, [], [...placed, ...removed]);
  }
}

export function* findType2(position: Position): Generator<Instance> {
  yield* findOneDigit(position, (rectangle) => isSide(position, rectangle.guarded));
}

export function* findType5(position: Position): Generator<Instance> {
  yield* findOneDigit(position, ({ guarded }) => guarded.length > 1 && !isSide(position, guarded));
}

function* findOneDigit(position: Position, isOfType: (rectangle: GuardedRectangle) => boolean): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    const { members } = rectangle.set;
    if (digitsOf(position.grid, members).length !== 1 || !isOfType(rectangle)) continue;
    const conclusions = removalsOf(position, seenByAll(position.grid, members));
    if (conclusions.length > 0) yield instance(rectangle, [], conclusions);
  }
}

export function* findType3(position: Position): Generator<Instance> {
  for (let size = 1; size <= mostOfSubset; size++) {
    for (const rectangle of openRectangles(position)) {
      if (!isSide(position, rectangle.guarded)) continue;
      for (const house of sharedHouses(position.grid, rectangle.guarded)) {
        yield* nakedType3(position, rectangle, house, size);
        yield* hiddenType3(position, rectangle, house, size);
      }
    }
  }
}

/** The most cells that a naked subset has in addition to the roof, and that a hidden one has outside it. */
const mostOfSubset = 4;

function* nakedType3(
  position: Position,
  rectangle: GuardedRectangle,
  house: HouseShape,
  size: number,
): Generator<Instance> {
  const { grid } = position;
  const guardians = rectangle.set.members;
  const sets = openCells(position, house, rectangle.corners)
    .map((cell) => digitsIn(position, cell))
    .filter(({ members }) => digitsOf(grid, union(members, guardians)).length <= size + 1);
  for (const chosen of combinations(sets, size)) {
    const all = chosen.map((set) => set.members).reduce(union, guardians);
    const digits = digitsOf(grid, all);
    if (digits.length !== size + 1) continue;
    const gone = digits.map((digit) => seenByAll(grid, setOf(grid, ofDigit(grid, all, digit)))).reduce(union);
    yield* needed(position, instance(rectangle, chosen, removalsOf(position, difference(gone, all))));
  }
}

function* hiddenType3(
  position: Position,
  rectangle: GuardedRectangle,
  house: HouseShape,
  size: number,
): Generator<Instance> {
  const { grid } = position;
  const more = grid.digits.filter((digit) => !rectangle.digits.includes(digit) && !isPlacedIn(position, house, digit));
  for (const further of combinations(more, size - 1)) {
    const digits = [...rectangle.digits, ...further];
    const sets = digits.map((digit) => placesIn(position, digit, house));
    const all = sets.map((set) => set.members).reduce(union);
    const outside = cellsOf(grid, all).filter((cell) => !rectangle.guarded.includes(cell));
    if (outside.length !== size) continue;
    const inCells = setOf(
      grid,
      outside.flatMap((cell) => candidatesInCell(grid, cell)),
    );
    yield* needed(position, instance(rectangle, sets, removalsOf(position, difference(inCells, all))));
  }
}

export function* findType4(position: Position): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    if (!isSide(position, rectangle.guarded)) continue;
    for (const [linked, other] of bothWays(rectangle.digits)) {
      const link = linkAlong(position, linked, rectangle.guarded);
      const removed = removalsOf(position, ofDigits(position, rectangle.guarded, [other]));
      if (link !== undefined) yield* needed(position, instance(rectangle, [link], removed));
    }
  }
}

export function* findType6(position: Position): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    const { corners, guarded } = rectangle;
    if (guarded.length !== 2 || isSide(position, guarded)) continue;
    const [a, b, c, d] = corners as readonly [Cell, Cell, Cell, Cell];
    const directions = [
      [
        [a, b],
        [c, d],
      ],
      [
        [a, c],
        [b, d],
      ],
    ] as const;
    for (const digit of rectangle.digits) {
      for (const [side, opposite] of directions) {
        const first = linkAlong(position, digit, side);
        const second = linkAlong(position, digit, opposite);
        if (first === undefined || second === undefined) continue;
        const floor = corners.filter((cell) => !guarded.includes(cell));
        const placed = floor.map((cell) => placementOf(position.grid, candidateAt(position.grid, cell, digit)));
        const removed = removalsOf(position, ofDigits(position, guarded, [digit]));
        yield* needed(position, instance(rectangle, [first, second], [...placed, ...removed]));
        for (const each of removed) {
          for (const link of [first, second]) yield* needed(position, instance(rectangle, [link], [each]));
        }
      }
    }
  }
}

export function* findHidden(position: Position): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    for (const corner of rectangle.corners) {
      const opposite = across(position.grid, rectangle, corner);
      if (rectangle.guarded.includes(opposite)) continue;
      const sides = rectangle.corners.filter((cell) => cell !== corner && cell !== opposite);
      for (const [linked, other] of bothWays(rectangle.digits)) {
        const links = sides.flatMap((cell) => linkAlong(position, linked, [corner, cell]) ?? []);
        if (links.length !== 2) continue;
        yield* needed(
          position,
          instance(rectangle, links, removalsOf(position, ofDigits(position, [corner], [other]))),
        );
      }
    }
  }
  yield* findHiddenOverFloor(position);
}

/** If a side is clean: a link from one of its corners to the roof above, and the clean corner next to it. */
function* findHiddenOverFloor(position: Position): Generator<Instance> {
  for (const rectangle of openRectangles(position)) {
    if (!isSide(position, rectangle.guarded)) continue;
    for (const roof of rectangle.guarded) {
      const nextCorner = across(position.grid, rectangle, roof);
      const linkedRoof = rectangle.guarded.find((cell) => cell !== roof)!;
      for (const [linked, other] of bothWays(rectangle.digits)) {
        const link = linkAlong(position, linked, [linkedRoof, nextCorner]);
        if (link === undefined) continue;
        const below = rectangle.corners.find((cell) => cell !== nextCorner && !rectangle.guarded.includes(cell))!;
        const removed = removalsOf(position, ofDigits(position, [roof], [other]));
        yield* needed(position, instance(rectangle, [link, digitsIn(position, below)], removed));
      }
    }
  }
}

/** Every type, and hidden rectangles. */
export function* findUniqueRectangles(position: Position): Generator<Instance> {
  const finders = [findType1, findType2, findType4, findType5, findType6, findHidden, findType3];
  for (const find of finders) yield* find(position);
}

function instance(
  { deadly, set }: GuardedRectangle,
  others: readonly OneOf[],
  conclusions: readonly Conclusion[],
): Instance {
  return { sets: [...others, set], chain: undefined, deadly, conclusions };
}

function* needed(position: Position, found: Instance): Generator<Instance> {
  if (needsEverySet(position, found)) yield found;
}

/** The digit's places in a house that contains both cells, if it has no others. */
function linkAlong(position: Position, digit: Digit, cells: readonly Cell[]): OneOf | undefined {
  const { grid } = position;
  return sharedHouses(grid, cells)
    .map((house) => placesIn(position, digit, house))
    .find(({ members }) => cellsOf(grid, members).every((cell) => cells.includes(cell)));
}

function ofDigits({ grid }: Position, cells: readonly Cell[], digits: readonly Digit[]): Candidates {
  return setOf(
    grid,
    cells.flatMap((cell) => digits.map((digit) => candidateAt(grid, cell, digit))),
  );
}

function openCells(position: Position, house: HouseShape, except: readonly Cell[]): Cell[] {
  return house.cells.filter((cell) => !except.includes(cell) && !isPlaced(position, cell));
}

function isPlacedIn(position: Position, house: HouseShape, digit: Digit): boolean {
  return house.cells.some((cell) => has(position.placed, candidateAt(position.grid, cell, digit)));
}

function isSide({ grid }: Position, cells: readonly Cell[]): boolean {
  return cells.length === 2 && sharedHouses(grid, cells).some((house) => house.kind !== 'box');
}

function bothWays([a, b]: readonly [Digit, Digit]): readonly (readonly [Digit, Digit])[] {
  return [
    [a, b],
    [b, a],
  ];
}
