/**
 * Avoidable rectangles, unique loops of six cells and extended rectangles of six, found in a position. Conclusions come
 * from their guardians only or, if these lie in two cells that see each other, with one further set as in types 3 and 4
 * of unique rectangles.
 */
import { type Candidates, difference, has, membersOf, setOf } from '../grid/candidates.ts';
import { bitsIn, countOf } from '../grid/counting.ts';
import { cellAt, sees, sharedHouses } from '../grid/geometry.ts';
import { type Cell, candidateAt, type Digit, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Conclusion, Deadly } from '../grid/terms.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { cellsOfPattern, guardedPattern } from './deadly-reading.ts';
import { needsEverySet } from './minimal-argument.ts';
import { avoidableRectangles } from './rectangles.ts';
import { placementOf, removalsOf } from './removals.ts';
import { cellsOf, digitsOf, seenByAll } from './seen-by-all.ts';
import type { Instance } from './technique.ts';

interface Guarded {
  readonly deadly: Deadly;
  readonly set: OneOf;
}

export function* findAvoidableRectangles(position: Position): Generator<Instance> {
  yield* concluded(position, [...avoidableRectangles(position)]);
}

export function* findUniqueLoops(position: Position): Generator<Instance> {
  yield* concluded(position, [...loops(position)]);
}

export function* findExtendedRectangles(position: Position): Generator<Instance> {
  yield* concluded(position, [...extendedRectangles(position)]);
}

/** First what the guardians prove on their own, then what they prove with a further set. */
function* concluded(position: Position, patterns: readonly Guarded[]): Generator<Instance> {
  for (const pattern of patterns) {
    const conclusions = byGuardiansOnly(position, pattern);
    if (conclusions.length > 0) yield { sets: [pattern.set], chain: undefined, deadly: pattern.deadly, conclusions };
  }
  for (const pattern of patterns) yield* withOneSet(position, pattern);
}

function byGuardiansOnly(position: Position, { set: { members } }: Guarded): Conclusion[] {
  const removed = removalsOf(position, difference(seenByAll(position.grid, members), members));
  const isPlacement = countOf(members) === 1;
  return isPlacement ? [placementOf(position.grid, membersOf(members)[0]!), ...removed] : removed;
}

/** A cell that sees both guarded cells, or a digit of the pattern that has no other places than these in a house. */
function* withOneSet(position: Position, { deadly, set }: Guarded): Generator<Instance> {
  const { grid } = position;
  const guarded = cellsOf(grid, set.members);
  const pattern = cellsOfPattern(grid, deadly)!;
  if (guarded.length !== 2) return;
  for (const house of sharedHouses(grid, guarded)) {
    const digits = new Set(guarded.flatMap((cell) => pattern.get(cell)!));
    for (const digit of digits) {
      const link = placesIn(position, digit, house);
      if (!cellsOf(grid, link.members).every((cell) => guarded.includes(cell))) continue;
      const removed = removalsOf(position, patternIn(position, pattern, guarded));
      yield* needed(position, { sets: [link, set], chain: undefined, deadly, conclusions: removed });
    }
    for (const cell of pairCells(position, house, [...pattern.keys()])) {
      const pair = digitsIn(position, cell);
      if (digitsOf(grid, set.members).join() !== digitsOf(grid, pair.members).join()) continue;
      const inHouse = house.cells.filter((each) => each !== cell && !guarded.includes(each));
      const gone = inHouse.flatMap((each) =>
        digitsOf(grid, pair.members).map((digit) => candidateAt(grid, each, digit)),
      );
      yield* needed(position, {
        sets: [pair, set],
        chain: undefined,
        deadly,
        conclusions: removalsOf(position, setOf(grid, gone)),
      });
    }
  }
}

function* needed(position: Position, found: Instance): Generator<Instance> {
  const proved = found.conclusions.filter((each) => needsEverySet(position, { ...found, conclusions: [each] }));
  if (proved.length > 0) yield { ...found, conclusions: proved };
}

/** The most cells with guardians that can be used here, unless all guardians are one digit. */
const mostGuarded = 2;
/** How many cells are examined in the search for rings of two digits. */
const ringBound = 6_000;

/** Rings of six open cells that hold two digits, with two of them or none in each house. */
function* loops(position: Position): Generator<Guarded> {
  const { grid } = position;
  const masks = openDigits(position);
  for (const digits of combinations(grid.digits, 2)) {
    const pair = maskOf(digits);
    const cells = grid.cells.filter((cell) => (masks[cell]! & pair) === pair);
    const search = { grid, cells, extras: masks.map((mask) => mask & ~pair), left: ringBound };
    for (const start of cells) {
      for (const ring of grown(search, [start])) {
        const pattern = guardedPattern(position, [{ digits, cells: [...ring].sort((a, b) => a - b) }]);
        if (pattern !== undefined) yield pattern;
      }
    }
  }
}

interface RingSearch {
  readonly grid: Grid;
  readonly cells: readonly Cell[];
  /** For each cell: its other digits. */
  readonly extras: readonly number[];
  left: number;
}

/** Each ring once: its first cell is its lowest, and its second lower than its last. */
function* grown(search: RingSearch, path: readonly Cell[]): Generator<readonly Cell[]> {
  const { grid } = search;
  const [start, last] = [path[0]!, path.at(-1)!];
  if (path.length === 6) {
    if (path[1]! < last && housesHoldTwo(grid, path)) yield path;
    return;
  }
  for (const next of search.cells) {
    if (next <= start || !sees(grid, last, next) || path.includes(next)) continue;
    if (--search.left < 0) return;
    const longer = [...path, next];
    if (!areOfUse(longer.map((cell) => search.extras[cell]!))) continue;
    if (grid.housesOf[next]!.every((house) => longer.filter((cell) => house.cells.includes(cell)).length <= 2)) {
      yield* grown(search, longer);
    }
  }
}

function housesHoldTwo(grid: Grid, cells: readonly Cell[]): boolean {
  return cells.every((cell) =>
    grid.housesOf[cell]!.every((house) => cells.filter((each) => house.cells.includes(each)).length === 2),
  );
}

/** Two lines crossed by three, with three digits, at least two of which each cell holds. */
function* extendedRectangles(position: Position): Generator<Guarded> {
  const { grid } = position;
  const masks = openDigits(position);
  const triples = [...combinations(grid.digits, 3)].map((digits) => ({ digits, mask: maskOf(digits) }));
  for (const cells of crossings(grid)) {
    const own = cells.map((cell) => masks[cell]!);
    if (own.some((mask) => bitsIn(mask) < 2)) continue;
    const all = own.reduce((a, b) => a | b);
    for (const { digits, mask } of triples) {
      if ((all & mask) !== mask || own.some((each) => bitsIn(each & mask) < 2)) continue;
      if (!areOfUse(own.map((each) => each & ~mask))) continue;
      const pattern = guardedPattern(position, [{ digits, cells }]);
      if (pattern !== undefined) yield pattern;
    }
  }
}

/** Whether these digits outside the pattern, cell by cell, leave something to conclude here. */
function areOfUse(extras: readonly number[]): boolean {
  return extras.filter((own) => own !== 0).length <= mostGuarded || bitsIn(extras.reduce((a, b) => a | b)) === 1;
}

/** For each cell: the mask of its digits, digit 1 in the lowest bit; 0 if it is placed. */
function openDigits(position: Position): readonly number[] {
  const { grid, possible } = position;
  return grid.cells.map((cell) => {
    if (isPlaced(position, cell)) return 0;
    return maskOf(grid.digits.filter((digit) => has(possible, candidateAt(grid, cell, digit))));
  });
}

function maskOf(digits: readonly Digit[]): number {
  return digits.reduce((mask, digit) => mask | (1 << (digit - 1)), 0);
}

const laidOut = new WeakMap<Grid, readonly (readonly Cell[])[]>();

/** Two lines crossed by three, where the pairs, or the threes, share a third house, as swapping the digits requires. */
function crossings(grid: Grid): readonly (readonly Cell[])[] {
  const made = laidOut.get(grid) ?? [...layOut(grid)];
  laidOut.set(grid, made);
  return made;
}

function* layOut(grid: Grid): Generator<readonly Cell[]> {
  const lines = grid.digits.map(Number);
  const ways = [
    (two: number, three: number) => cellAt(grid, two, three),
    (two: number, three: number) => cellAt(grid, three, two),
  ];
  for (const at of ways) {
    for (const pair of combinations(lines, 2)) {
      for (const three of combinations(lines, 3)) {
        const across = three.map((each) => pair.map((line) => at(line, each)));
        const along = pair.map((line) => three.map((each) => at(line, each)));
        const share = (cells: readonly Cell[]) => sharedHouses(grid, cells).length > 1;
        if (across.every(share) || along.every(share)) yield across.flat().sort((a, b) => a - b);
      }
    }
  }
}

function pairCells(position: Position, house: HouseShape, except: readonly Cell[]): Cell[] {
  return house.cells.filter((cell) => !except.includes(cell) && countOf(digitsIn(position, cell).members) === 2);
}

/** The candidates that the pattern has in these cells. */
function patternIn(
  { grid }: Position,
  pattern: ReadonlyMap<Cell, readonly Digit[]>,
  cells: readonly Cell[],
): Candidates {
  return setOf(
    grid,
    cells.flatMap((cell) => pattern.get(cell)!.map((digit) => candidateAt(grid, cell, digit))),
  );
}
