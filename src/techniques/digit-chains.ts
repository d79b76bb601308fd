/**
 * All chains of one digit: strong links in houses, joined by weak links, the shortest first.
 *
 * Only chains without a short cut, unless needless links are kept: a far end that strikes the near end of a link after the next would make the links
 * between needless. The search ends after a number of steps, so that no position can stall it.
 */
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  intersection,
  isWithin,
  membersOf,
  overlaps,
  setOf,
} from '../grid/candidates.ts';
import { countOf, isSame } from '../grid/counting.ts';
import { candidatesInHouse, cellOf, type Digit, digitOf, type Grid } from '../grid/grid.ts';
import type { Chain, ChainNode, Conclusion } from '../grid/terms.ts';
import { type OneOf, type Position, placesIn } from '../proof/kernel.ts';
import type { OrderedLink } from './chain-order.ts';
import { placementOf, removalsOf } from './removals.ts';
import { cellsOf, digitsOf, isNode, seenByAll } from './seen-by-all.ts';
import type { Instance, Needless } from './technique.ts';

export interface DigitChain {
  readonly digit: Digit;
  /** Two or more, from end to end. */
  readonly links: readonly OrderedLink[];
}

/** The most links of a chain that is searched for, and the most steps of the search for one digit and length. */
const mostLinks = 7;
const stepBound = 30_000;

/**
 * Chains of these digits, with two to `longest` strong links, by length, then digit; with or without groups as nodes.
 */
export function* digitChains(
  position: Position,
  {
    digits,
    grouped,
    longest = mostLinks,
    needless = 'left out',
  }: {
    readonly digits: readonly Digit[];
    readonly grouped: boolean;
    readonly longest?: number | undefined;
    readonly needless?: Needless;
  },
): Generator<DigitChain> {
  const linksOfDigits = digits.map((digit) => ({ digit, links: strongLinks(position, digit, grouped) }));
  for (let length = 2; length <= longest; length++) {
    for (const { digit, links } of linksOfDigits) {
      const search = { links, length, left: stepBound, needless };
      for (const link of links) yield* grown(search, digit, [link]);
    }
  }
}

/** Whether the chain's ends say anything new on their own: a quick test, before the chain is built. */
export function concludesSomething({ grid, possible }: Position, { links }: DigitChain): boolean {
  const [start, end] = [links[0]!.near, links.at(-1)!.far];
  return (countOf(start) === 1 && isSame(start, end)) || overlaps(seenFrom(grid, start), seenFrom(grid, end), possible);
}

/** Ends of links are few, and chains many. */
const seenFromEnds = new WeakMap<Candidates, Candidates>();

function seenFrom(grid: Grid, end: Candidates): Candidates {
  const known = seenFromEnds.get(end) ?? seenByAll(grid, end);
  seenFromEnds.set(end, known);
  return known;
}

/**
 * The chain as an instance: what sees both ends is removed; if both ends are the same candidate, it is true; and the
 * either/ors that are asked for.
 */
export function instanceOfChain(position: Position, { links }: DigitChain, eithers: readonly Conclusion[]): Instance {
  const { grid } = position;
  const [start, end] = [links[0]!.near, links.at(-1)!.far];
  const gone = membersOf(intersection(seenByAll(grid, start), seenByAll(grid, end))).filter((candidate) =>
    takesWhole(grid, links, candidate),
  );
  const isOneCandidate = isSame(start, end) && countOf(start) === 1;
  return {
    sets: links.map((link) => link.set),
    chain: asChain(grid, links),
    deadly: undefined,
    conclusions: [
      ...(isOneCandidate ? [placementOf(grid, membersOf(start)[0]!)] : []),
      ...removalsOf(position, setOf(grid, gone)),
      ...eithers,
    ],
  };
}

/**
 * Whether no link rules the candidate out on its own, and no link contains it (a part of the chain would then suffice).
 */
function takesWhole(grid: Grid, links: readonly OrderedLink[], candidate: Candidate): boolean {
  return links.every(({ set }) => !has(set.members, candidate) && !isWithin(set.members, grid.conflicts[candidate]!));
}

/** The links as a chain is written: strong, weak, strong, to the last far end. */
export function asChain(grid: Grid, links: readonly OrderedLink[]): Chain {
  const nodes = links.flatMap((link) => [nodeOf(grid, link.near), nodeOf(grid, link.far)]);
  return {
    nodes,
    links: nodes
      .slice(1)
      .map((_, index) => ({ kind: index % 2 === 0 ? 'strong' : 'weak', from: index, to: index + 1 })),
    loop: false,
    concludes: [],
  };
}

function nodeOf(grid: Grid, part: Candidates): ChainNode {
  return { digits: digitsOf(grid, part), cells: cellsOf(grid, part) };
}

interface Step extends OrderedLink {
  /** The first place of the near end: a quick test before the thorough one. */
  readonly first: Candidate;
  readonly seenByFar: Candidates;
  /** The links whose near ends the far end strikes; computed when first asked for. */
  next: readonly Step[] | undefined;
}

interface ChainSearch {
  readonly links: readonly Step[];
  readonly length: number;
  readonly needless: Needless;
  left: number;
}

function* grown(search: ChainSearch, digit: Digit, chain: readonly Step[]): Generator<DigitChain> {
  const [first, last] = [chain[0]!, chain.at(-1)!];
  if (chain.length === search.length) {
    if (isInReadingOrder(first.near, last.far, first.far, last.near)) yield { digit, links: chain };
    return;
  }
  last.next ??= search.links.filter((link) => has(last.seenByFar, link.first) && isWithin(link.near, last.seenByFar));
  for (const next of last.next) {
    if (--search.left < 0) return;
    if (
      search.needless === 'kept'
        ? chain.some(({ set }) => isSame(set.members, next.set.members))
        : hasShortCut(chain, next)
    )
      continue;
    yield* grown(search, digit, [...chain, next]);
  }
}

/** Whether the new link has the places of an earlier one, or one of its ends ties it to a link before the last. */
function hasShortCut(chain: readonly Step[], next: Step): boolean {
  return chain.some(
    (earlier, index) =>
      isSame(earlier.set.members, next.set.members) ||
      (index < chain.length - 1 && isWithin(next.near, earlier.seenByFar)) ||
      overlaps(earlier.far, next.far) ||
      overlaps(earlier.near, next.near),
  );
}

/**
 * A chain is found from both ends; it is kept from the one that comes first on the board (if both ends are the same,
 * the node after it decides).
 */
function isInReadingOrder(start: Candidates, end: Candidates, second: Candidates, lastButOne: Candidates): boolean {
  const order = membersOf(start)[0]! - membersOf(end)[0]!;
  return order === 0 ? membersOf(second)[0]! <= membersOf(lastButOne)[0]! : order < 0;
}

const known = new WeakMap<Position, Map<string, readonly Step[]>>();

/** The strong links of the digit; computed once, since a position never changes. */
function strongLinks(position: Position, digit: Digit, grouped: boolean): readonly Step[] {
  const ofPosition = known.get(position) ?? new Map<string, readonly Step[]>();
  known.set(position, ofPosition);
  const key = `${digit}${grouped ? ' grouped' : ''}`;
  const links = ofPosition.get(key) ?? makeLinks(position, digit, grouped);
  ofPosition.set(key, links);
  return links;
}

/** The ways to split the places of the digit in a house into two nodes, each way in both directions. */
function makeLinks(position: Position, digit: Digit, grouped: boolean): Step[] {
  const { grid } = position;
  return grid.houses.flatMap((house) => {
    const set = placesIn(position, digit, house);
    if (countOf(set.members) < 2 || (!grouped && countOf(set.members) > 2)) return [];
    return splits(grid, set).map((near): Step => {
      const far = difference(set.members, near);
      return { set, near, far, first: membersOf(near)[0]!, seenByFar: seenByAll(grid, far), next: undefined };
    });
  });
}

/** The near ends: single places, and places that also lie in a second house, if the rest is a node too. */
function splits(grid: Grid, set: OneOf): Candidates[] {
  const digit = digitOf(grid, membersOf(set.members)[0]!);
  const parts = new Map<string, Candidates>();
  const offer = (part: Candidates) => {
    if (isNode(grid, part) && isNode(grid, difference(set.members, part))) parts.set(membersOf(part).join(), part);
  };
  for (const member of membersOf(set.members)) {
    const single = setOf(grid, [member]);
    offer(single);
    offer(difference(set.members, single));
  }
  const houses = new Set(membersOf(set.members).flatMap((member) => grid.housesOf[cellOf(grid, member)]!));
  for (const house of houses) {
    const inHouse = intersection(set.members, setOf(grid, candidatesInHouse(grid, digit, house)));
    offer(inHouse);
    offer(difference(set.members, inHouse));
  }
  return [...parts.values()];
}
