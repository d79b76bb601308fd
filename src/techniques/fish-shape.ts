/**
 * What a fish is: as many base houses as cover houses, with the places of one digit in the base houses all in the cover
 * houses, except for fins. If no fin is true, every cover house has its digit from a base house; so what is in more
 * cover houses than base houses and sees all fins is impossible.
 *
 * The covers are searched for each conclusion separately, with as few fins as possible.
 */
import { type Candidate, type Candidates, has, membersOf } from '../grid/candidates.ts';
import { sees } from '../grid/geometry.ts';
import {
  type Cell,
  candidateAt,
  cellOf,
  type Digit,
  type Grid,
  type HouseKind,
  type HouseShape,
} from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import type { PlacesSet } from './set-reading.ts';

export interface Fish {
  readonly digit: Digit;
  readonly bases: readonly PlacesSet[];
  readonly covers: readonly HouseShape[];
  /** Places in base houses that the covers leave out. */
  readonly fins: readonly Cell[];
}

/** A fish in a position, with the candidates that it makes impossible. */
export interface CaughtFish {
  readonly fish: Fish;
  readonly removed: readonly Candidate[];
}

/** The position, the size of fish, and the conclusions wanted; if `wanted` is undefined, any. */
export interface FishSearch {
  readonly position: Position;
  readonly size: number;
  readonly wanted: readonly Conclusion[] | undefined;
}

/** Which kinds of houses may be bases and covers. */
export interface FishKinds {
  readonly bases: readonly HouseKind[];
  readonly covers: readonly HouseKind[];
}

/** Rows covered by columns, and columns by rows. */
export const basicKinds: readonly FishKinds[] = [
  { bases: ['row'], covers: ['column'] },
  { bases: ['column'], covers: ['row'] },
];
/** Lines of one direction and boxes, covered by lines of the other and boxes. */
export const frankenKinds: readonly FishKinds[] = [
  { bases: ['row', 'box'], covers: ['column', 'box'] },
  { bases: ['column', 'box'], covers: ['row', 'box'] },
];
/** Any houses. */
export const mutantKinds: readonly FishKinds[] = [
  { bases: ['row', 'column', 'box'], covers: ['row', 'column', 'box'] },
];

/**
 * The fish with these bases that make `removed` impossible: those without fins if there are any, otherwise those with
 * the fewest first.
 */
export function fishAgainst(
  grid: Grid,
  bases: readonly PlacesSet[],
  removed: Candidate,
  kinds: readonly FishKinds[],
): Fish[] {
  const digit = bases[0]!.digit;
  const cell = cellOf(grid, removed);
  if (candidateAt(grid, cell, digit) !== removed) return [];
  const found = kinds.flatMap((each) => {
    if (!bases.every((base) => each.bases.includes(base.house.kind))) return [];
    return coverings(grid, bases, cell, each.covers);
  });
  const fish = found
    .map((covers) => ({ digit, bases, covers, fins: finsOf(grid, bases, covers) }))
    .filter((each) => each.fins.every((fin) => sees(grid, fin, cell)))
    .sort((a, b) => a.fins.length - b.fins.length);
  return fish[0]?.fins.length === 0 ? fish.filter((each) => each.fins.length === 0) : fish;
}

/**
 * The fish with these bases for which the places in some cover, together with the fins, all lie within the candidates
 * (so that one of them is true).
 */
export function fishWithin(
  grid: Grid,
  bases: readonly PlacesSet[],
  candidates: Candidates,
  kinds: readonly FishKinds[],
): Fish[] {
  const digit = bases[0]!.digit;
  const within = (cells: readonly Cell[]) => cells.every((cell) => has(candidates, candidateAt(grid, cell, digit)));
  const found: Fish[] = [];
  for (const each of kinds) {
    if (!bases.every((base) => each.bases.includes(base.house.kind))) continue;
    for (const covers of combinations(openCovers(grid, bases, each.covers), bases.length)) {
      const fish = { digit, bases, covers, fins: finsOf(grid, bases, covers) };
      const filled = covers.some((cover) =>
        within(bases.flatMap((base) => bodyOf(grid, base, { ...fish, covers: [cover] }))),
      );
      if (filled && within(fish.fins)) found.push(fish);
    }
  }
  return found;
}

/** The places of a base that lie in the covers. */
export function bodyOf(grid: Grid, base: PlacesSet, { covers }: Fish): readonly Cell[] {
  return membersOf(base.members)
    .map((place) => cellOf(grid, place))
    .filter((cell) => covers.some((cover) => cover.cells.includes(cell)));
}

/**
 * The choices of covers that contain every place not seen by the removed candidate, and contain the removed one once
 * more than the bases do. Covers beyond those needed are chosen to cover what would be fins or, if nothing is left to
 * cover, are the first houses available.
 */
function coverings(
  grid: Grid,
  bases: readonly PlacesSet[],
  removed: Cell,
  kinds: readonly HouseKind[],
): HouseShape[][] {
  const open = openCovers(grid, bases, kinds);
  const times = timesInBases(grid, bases);
  const inBases = times.get(removed) ?? 0;
  const found = new Map<string, HouseShape[]>();
  const keep = (chosen: readonly HouseShape[]) => {
    const filled = [...chosen, ...open.filter((house) => !chosen.includes(house))].slice(0, bases.length);
    if (filled.length < bases.length || countIn(filled, removed) <= inBases) return;
    const sorted = filled.sort((a, b) => a.house - b.house);
    found.set(sorted.map((house) => house.name).join(), sorted);
  };
  const cover = (chosen: readonly HouseShape[]) => {
    const bare = [...times]
      .filter(([cell, count]) => cell !== removed && countIn(chosen, cell) < count)
      .map(([cell]) => cell);
    const missing = bare.find((cell) => !sees(grid, cell, removed));
    if (missing === undefined) keep(chosen);
    if (chosen.length === bases.length) return;
    const wanted = missing === undefined ? bare : [missing];
    for (const house of open) {
      if (!chosen.includes(house) && wanted.some((cell) => house.cells.includes(cell))) cover([...chosen, house]);
    }
  };
  for (const home of open) if (home.cells.includes(removed)) cover([home]);
  return [...found.values()];
}

/** The houses that may be covers: of these kinds, not bases themselves, with a place of a base in them. */
function openCovers(grid: Grid, bases: readonly PlacesSet[], kinds: readonly HouseKind[]): HouseShape[] {
  const digit = bases[0]!.digit;
  return grid.houses.filter(
    (house) =>
      kinds.includes(house.kind) &&
      !bases.some((base) => base.house === house) &&
      house.cells.some((cell) => bases.some((base) => has(base.members, candidateAt(grid, cell, digit)))),
  );
}

/** Places in more base houses than cover houses. */
function finsOf(grid: Grid, bases: readonly PlacesSet[], covers: readonly HouseShape[]): Cell[] {
  return [...timesInBases(grid, bases)].filter(([cell, count]) => count > countIn(covers, cell)).map(([cell]) => cell);
}

/** For each place: how many of the bases contain it. */
function timesInBases(grid: Grid, bases: readonly PlacesSet[]): Map<Cell, number> {
  const times = new Map<Cell, number>();
  for (const place of bases.flatMap((base) => membersOf(base.members))) {
    const cell = cellOf(grid, place);
    times.set(cell, (times.get(cell) ?? 0) + 1);
  }
  return times;
}

function countIn(houses: readonly HouseShape[], cell: Cell): number {
  return houses.filter((house) => house.cells.includes(cell)).length;
}

/** Whether the fish has a base with fewer than two places left in the covers. */
export function isDegenerate(grid: Grid, fish: Fish): boolean {
  return fish.bases.some((base) => bodyOf(grid, base, fish).length < 2);
}

/** Whether some base with fins has no place of its body in the box of a fin. */
export function lacksCorner(grid: Grid, fish: Fish): boolean {
  return fish.bases.some((base) => {
    const fins = fish.fins.filter((fin) => base.house.cells.includes(fin));
    if (fins.length === 0) return false;
    const body = bodyOf(grid, base, fish);
    return !fins.some((fin) => body.some((cell) => shareBox(grid, fin, cell)));
  });
}

function shareBox(grid: Grid, a: Cell, b: Cell): boolean {
  return grid.housesOf[a]!.some((house) => house.kind === 'box' && house.cells.includes(b));
}
