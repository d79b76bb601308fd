/**
 * The sets of an argument strung into an alternating chain, regardless of the order in which they were named.
 *
 * Suppose the conclusion is wrong. That strikes one end of a strong link, so its other end is true; this strikes an end
 * of the next strong link, and so on, until the last end strikes the supposition. A strong link is made of
 *
 * - one set, its members split in two: a cell of two digits, the places of a digit in a house, an either/or, guardians;
 * - cells of one house with one more digit than cells (an almost locked set): if one digit is lost, each of the others
 *   stays;
 * - digits of one house with one more cell than digits (an almost hidden set): if one cell is lost, each of the others
 *   is needed.
 *
 * Each end is a node: one digit in one house, or, in an almost hidden set, digits of one cell.
 */
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  intersection,
  isEmpty,
  isWithin,
  membersOf,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { cellOf, digitOf, type Grid, type HouseShape } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf } from '../proof/kernel.ts';
import { combinations } from './combinations.ts';
import { cellsOf, digitsOf, isNode, ofDigit, seenByAll } from './seen-by-all.ts';

export type LinkShape = 'set' | 'almost locked' | 'almost hidden';

/** A strong link of the chain: one of `near` or one of `far` is true. */
export interface StrungLink {
  readonly shape: LinkShape;
  /** One, or several that make an almost locked or hidden set. */
  readonly sets: readonly OneOf[];
  readonly near: Candidates;
  readonly far: Candidates;
}

export interface Stringing {
  readonly grid: Grid;
  readonly sets: readonly OneOf[];
  /** Which links may be made of several sets; none if omitted. */
  readonly shapes?: readonly Exclude<LinkShape, 'set'>[];
}

/** All kinds of link that are made of several sets. */
export const severalSets = ['almost locked', 'almost hidden'] as const;

/** How many links are tried before the search for orders ends. */
const linkBound = 20_000;

/**
 * The chains of all the sets, from what the conclusion rules out back to what it rules out. A chain is yielded in both
 * directions.
 */
export function* strungChains(stringing: Stringing, conclusion: Conclusion): Generator<readonly StrungLink[]> {
  const { grid, sets } = stringing;
  const struck = conclusion.kind === 'impossible' ? grid.conflicts[conclusion.candidate]! : conclusion.candidates;
  const victim = conclusion.kind === 'impossible' ? conclusion.candidate : undefined;
  const makers = makersOf(stringing).filter((maker) => victim === undefined || !has(maker.members, victim));
  const search = { grid, makers, left: linkBound };
  const closes = (links: readonly StrungLink[], isAll: boolean) => {
    if (!isAll || links.length < 2) return false;
    const { far } = links.at(-1)!;
    // A placement may also end in a clash in its own cell or house: everything left there would be ruled out.
    return isWithin(far, struck) || (conclusion.kind === 'one-of' && isWithin(links[0]!.far, seenByAll(grid, far)));
  };
  for (const maker of makers) {
    for (const link of maker.linksWithout(struck)) yield* continued(search, [link], without(sets, maker.sets), closes);
  }
}

/** The chains of all the sets whose last end strikes their first, so that every weak link is a strong one as well. */
export function* strungRings(stringing: Stringing): Generator<readonly StrungLink[]> {
  const { grid, sets } = stringing;
  const first = sets[0];
  if (first === undefined) return;
  const makers = makersOf(stringing);
  const search = { grid, makers, left: linkBound };
  for (const maker of makers) {
    if (!maker.sets.includes(first)) continue;
    for (const near of maker.nears) {
      for (const start of maker.linksFrom(near)) {
        const closes = (links: readonly StrungLink[], isAll: boolean) =>
          isAll && links.length > 1 && isWithin(start.near, seenByAll(grid, links.at(-1)!.far));
        yield* continued(search, [start], without(sets, maker.sets), closes);
      }
    }
  }
}

/** The rings of all the sets that prove the conclusion: a removal, or that one of two of their ends is true. */
export function* ringsTo(stringing: Stringing, conclusion: Conclusion): Generator<readonly StrungLink[]> {
  for (const ring of strungRings(stringing)) if (gives(stringing.grid, ring, conclusion)) yield ring;
}

function gives(grid: Grid, ring: readonly StrungLink[], conclusion: Conclusion): boolean {
  if (conclusion.kind === 'impossible') return has(clearedByRing(grid, ring), conclusion.candidate);
  const holds = (part: Candidates) => isWithin(part, conclusion.candidates);
  return ring.some(({ near }) => holds(near)) && ring.some(({ far }) => holds(far));
}

/**
 * Everything that a ring rules out: what sees both ends of a weak link, and what an almost locked set, now locked,
 * removes.
 */
export function clearedByRing(grid: Grid, ring: readonly StrungLink[]): Candidates {
  const betweenLinks = ring.map((link, index) =>
    intersection(seenByAll(grid, link.far), seenByAll(grid, ring[(index + 1) % ring.length]!.near)),
  );
  return [...betweenLinks, ...ring.map((link) => clearedInside(grid, link))].reduce(union);
}

/** Whether the sets are cells of one house, or digits of one house: together they are a subset and not a chain. */
export function areOfOneHouse(grid: Grid, sets: readonly OneOf[]): boolean {
  return grid.houses.some((house) =>
    sets.every(
      ({ source }) =>
        (source.kind === 'cell' && house.cells.includes(source.cell)) ||
        (source.kind === 'places' && source.house === house),
    ),
  );
}

/** Whether the chain has a node of several candidates. */
export function hasGroups(links: readonly StrungLink[]): boolean {
  return links.some(({ near, far }) => countOf(near) > 1 || countOf(far) > 1);
}

function clearedInside(grid: Grid, { shape, sets, near, far }: StrungLink): Candidates {
  const members = sets.map((set) => set.members).reduce(union);
  const rest = difference(members, union(near, far));
  if (isEmpty(rest)) return rest;
  if (shape === 'almost locked') {
    return digitsOf(grid, rest)
      .map((digit) => seenByAll(grid, setOf(grid, ofDigit(grid, members, digit))))
      .reduce(union);
  }
  return cellsOf(grid, rest)
    .map((cell) => seenByAll(grid, inCell(grid, members, cell)))
    .reduce(union);
}

interface StringSearch {
  readonly grid: Grid;
  readonly makers: readonly LinkMaker[];
  left: number;
}

type Closes = (links: readonly StrungLink[], isAll: boolean) => boolean;

function* continued(
  search: StringSearch,
  links: readonly StrungLink[],
  remaining: readonly OneOf[],
  closes: Closes,
): Generator<readonly StrungLink[]> {
  if (closes(links, remaining.length === 0)) yield links;
  if (remaining.length === 0) return;
  const seen = seenByAll(search.grid, links.at(-1)!.far);
  for (const maker of search.makers) {
    if (!overlaps(maker.members, seen) || !maker.sets.every((set) => remaining.includes(set))) continue;
    for (const link of maker.linksWithout(seen)) {
      if (--search.left < 0) return;
      yield* continued(search, [...links, link], without(remaining, maker.sets), closes);
    }
  }
}

/** What strong links can be made of. */
interface LinkMaker {
  readonly sets: readonly OneOf[];
  readonly members: Candidates;
  /** Its possible near ends. */
  readonly nears: readonly Candidates[];
  /** The links with this near end. */
  readonly linksFrom: (near: Candidates) => StrungLink[];
  /** The links whose near end lies within what is struck. */
  readonly linksWithout: (struck: Candidates) => StrungLink[];
}

function makersOf({ grid, sets, shapes = [] }: Stringing): LinkMaker[] {
  return [
    ...sets.map((set) => makerOfSet(grid, set)),
    ...(shapes.includes('almost locked') ? almostLocked(grid, sets) : []),
    ...(shapes.includes('almost hidden') ? almostHidden(grid, sets) : []),
  ];
}

function makerOfSet(grid: Grid, set: OneOf): LinkMaker {
  const linksFrom = (near: Candidates): StrungLink[] => {
    const far = difference(set.members, near);
    return isInOneHouse(grid, near) && isInOneHouse(grid, far) ? [{ shape: 'set', sets: [set], near, far }] : [];
  };
  return {
    sets: [set],
    members: set.members,
    get nears() {
      return partsThatAreNodes(grid, set.members);
    },
    linksFrom,
    linksWithout: (struck) => {
      const near = intersection(set.members, struck);
      return isWithin(set.members, near)
        ? membersOf(near).flatMap((each) => linksFrom(setOf(grid, [each])))
        : linksFrom(near);
    },
  };
}

/** The parts of two or more places that are nodes and leave a node. */
function partsThatAreNodes(grid: Grid, members: Candidates): Candidates[] {
  const all = membersOf(members);
  const found: Candidates[] = [];
  for (let size = 1; size < all.length; size++) {
    for (const part of combinations(all, size)) {
      const near = setOf(grid, part);
      if (isNode(grid, near) && isNode(grid, difference(members, near))) found.push(near);
    }
  }
  return found;
}

/** Two or more cells of one house with one more digit than cells. */
function almostLocked(grid: Grid, sets: readonly OneOf[]): LinkMaker[] {
  const inHouse = (house: HouseShape) =>
    sets.filter((set) => set.source.kind === 'cell' && house.cells.includes(set.source.cell));
  return gathered(grid, inHouse).flatMap((cells) => {
    const members = cells.map((set) => set.members).reduce(union);
    const digits = digitsOf(grid, members);
    if (digits.length !== cells.length + 1) return [];
    return [
      makerOfParts(
        'almost locked',
        cells,
        members,
        digits.map((digit) => setOf(grid, ofDigit(grid, members, digit))),
      ),
    ];
  });
}

/** Two or more digits of one house with one more cell than digits. */
function almostHidden(grid: Grid, sets: readonly OneOf[]): LinkMaker[] {
  const inHouse = (house: HouseShape) =>
    sets.filter((set) => set.source.kind === 'places' && set.source.house === house);
  return gathered(grid, inHouse).flatMap((places) => {
    const members = places.map((set) => set.members).reduce(union);
    const cells = cellsOf(grid, members);
    if (cells.length !== places.length + 1) return [];
    return [
      makerOfParts(
        'almost hidden',
        places,
        members,
        cells.map((cell) => inCell(grid, members, cell)),
      ),
    ];
  });
}

/** Each choice of two or more sets that belong to one house, once. */
function gathered(grid: Grid, inHouse: (house: HouseShape) => readonly OneOf[]): (readonly OneOf[])[] {
  const found = new Map<string, readonly OneOf[]>();
  const numbers = new Map<OneOf, number>();
  for (const house of grid.houses) {
    const own = inHouse(house);
    for (const set of own) if (!numbers.has(set)) numbers.set(set, numbers.size);
    for (let size = 2; size <= own.length; size++) {
      for (const choice of combinations(own, size)) found.set(choice.map((set) => numbers.get(set)).join(), choice);
    }
  }
  return [...found.values()];
}

function makerOfParts(
  shape: LinkShape,
  sets: readonly OneOf[],
  members: Candidates,
  parts: readonly Candidates[],
): LinkMaker {
  const linksFrom = (near: Candidates) =>
    parts.filter((far) => !overlaps(near, far)).map((far): StrungLink => ({ shape, sets, near, far }));
  return {
    sets,
    members,
    nears: parts,
    linksFrom,
    linksWithout: (struck) => parts.filter((near) => isWithin(near, struck)).flatMap(linksFrom),
  };
}

/** Whether these are one or more candidates of one digit in cells of one house. */
function isInOneHouse(grid: Grid, part: Candidates): boolean {
  if (isEmpty(part)) return false;
  const [first, ...others] = membersOf(part);
  if (others.length === 0) return true;
  const digit = digitOf(grid, first!);
  return others.every((other) => digitOf(grid, other) === digit) && sharedHouses(grid, cellsOf(grid, part)).length > 0;
}

function inCell(grid: Grid, members: Candidates, cell: number): Candidates {
  return setOf(
    grid,
    membersOf(members).filter((member: Candidate) => cellOf(grid, member) === cell),
  );
}

function without(sets: readonly OneOf[], taken: readonly OneOf[]): readonly OneOf[] {
  return sets.filter((set) => !taken.includes(set));
}
