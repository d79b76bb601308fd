/**
 * Chains in a position, the shortest first: from every near end together, one strong link longer in each round. From
 * one start each far end is reached only by its shortest chain (by a few, if a conclusion is wanted), so that the
 * search cannot explode in any position; there is also a bound on the links tried.
 */
import {
  type Candidate,
  type Candidates,
  has,
  intersection,
  isWithin,
  membersOf,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import { isSame } from '../grid/counting.ts';
import { cellOf, digitOf, type Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { needsEverySet } from './minimal-argument.ts';
import { orderedChain } from './ordered-chain.ts';
import { placementOf, removalsOf } from './removals.ts';
import { cellsOf, seenByAll } from './seen-by-all.ts';
import { areOfOneHouse, clearedByRing, type StrungLink } from './strung-chains.ts';
import type { Instance, Needless } from './technique.ts';

export interface ChainSearch {
  readonly position: Position;
  readonly links: readonly StrungLink[];
  /** How many strong links a chain has; two or more. */
  readonly fewest: number;
  readonly most: number;
  readonly accepts?: (links: readonly StrungLink[]) => boolean;
  /** Every chain, not only the shortest one to each end: for short chains of a certain shape. */
  readonly every?: boolean;
  /** `ring`: only chains whose ends are linked. */
  readonly only?: 'ring';
  readonly wanted: readonly Conclusion[] | undefined;
  /** Left out where not given. */
  readonly needless?: Needless | undefined;
}

/** How many links are tried in all. */
const linkBound = 600_000;
/** How many chains from a start to an end are kept if a conclusion is wanted: the shortest may have a needless link. */
const waysToWanted = 4;

/**
 * The chains as instances, each with the conclusions that need all of it; among equally long ones, those with the
 * fewest sets first.
 */
export function* searchChains({ accepts, ...search }: ChainSearch): Generator<Instance> {
  const kindOf = accepts === undefined ? () => '' : (links: readonly StrungLink[]) => (accepts(links) ? '' : undefined);
  for (const { instance } of searchKinds({ ...search, kindOf })) yield instance;
}

export interface KindSearch extends Omit<ChainSearch, 'accepts'> {
  /** What kind of chain it is; undefined for one that is not searched for. */
  readonly kindOf: (links: readonly StrungLink[]) => string | undefined;
}

export interface OfKind {
  readonly instance: Instance;
  readonly kind: string;
}

/** The same for several kinds of chain together, each with its kind. */
export function* searchKinds(search: KindSearch): Generator<OfKind> {
  const shown = new Set<string>();
  const web = webOf(search);
  const starts = startsOf(search, web);
  const ways = search.every === true ? Number.POSITIVE_INFINITY : search.wanted === undefined ? 1 : waysToWanted;
  for (let length = 1; length <= search.most; length++) {
    const found: Reached[] = [];
    for (const start of starts) found.push(...advanced(web, start, { length, ways }));
    if (length < search.fewest || length < 2) continue;
    for (const each of found.sort((a, b) => a.setCount - b.setCount)) yield* instancesOf(search, web, each, shown);
  }
}

/**
 * The links without those that contain the wanted candidate: no chain rules out a candidate of its own sets, except in
 * a ring.
 */
function linksClearOf({ links, wanted, only }: KindSearch): readonly StrungLink[] {
  const first = wanted?.[0];
  if (first?.kind !== 'impossible' || only === 'ring') return links;
  return links.filter((link) => !link.sets.some((set) => has(set.members, first.candidate)));
}

/** A far end reached from a near end, with the link that leads to it and the chain before it. */
interface Reached {
  readonly link: StrungLink;
  readonly before: Reached | undefined;
  readonly setCount: number;
}

interface End {
  readonly seen: Candidates;
  readonly first: Candidate;
}

interface Start {
  readonly near: Candidates;
  /** How often each far end was reached. */
  readonly reached: Map<string, number>;
  front: readonly Reached[];
}

interface Web {
  readonly grid: Grid;
  readonly nears: ReadonlyMap<string, Candidates>;
  readonly from: ReadonlyMap<string, readonly StrungLink[]>;
  readonly byDigit: ReadonlyMap<number, readonly Candidates[]>;
  readonly byCell: ReadonlyMap<number, readonly Candidates[]>;
  readonly next: Map<string, readonly StrungLink[]>;
  readonly keys: Map<Candidates, string>;
  /** For each end of a link: what all its candidates see, and the first of them. */
  readonly ends: Map<Candidates, End>;
  /** Where a chain to the wanted conclusion ends: extending it further would be needless. */
  readonly struck: Candidates | undefined;
  left: number;
}

function webOf(search: KindSearch): Web {
  const { grid } = search.position;
  const links = linksClearOf(search);
  const nears = new Map<string, Candidates>();
  const from = new Map<string, StrungLink[]>();
  const keys = new Map<Candidates, string>();
  for (const link of links) {
    const key = keyOf(keys, link.near);
    if (!nears.has(key)) nears.set(key, link.near);
    from.set(key, [...(from.get(key) ?? []), link]);
  }
  const byDigit = new Map<number, Candidates[]>();
  const byCell = new Map<number, Candidates[]>();
  for (const near of nears.values()) {
    const [first] = membersOf(near) as [Candidate];
    push(byDigit, digitOf(grid, first), near);
    if (cellsOf(grid, near).length === 1) push(byCell, cellOf(grid, first), near);
  }
  return {
    grid,
    nears,
    from,
    byDigit,
    byCell,
    next: new Map(),
    keys,
    ends: new Map(),
    struck: struckBy(grid, search.wanted),
    left: linkBound,
  };
}

/** The near ends from which a chain may lead to the wanted conclusion, in board order. */
function startsOf({ position: { grid }, wanted }: KindSearch, web: Web): Start[] {
  const struck = struckBy(grid, wanted);
  const mayLead = (near: Candidates) => {
    if (struck === undefined || isWithin(near, struck)) return true;
    // In a ring, an almost locked set also removes candidates that see no end of a link.
    return web.from.get(keyOf(web.keys, near))!.some((link) => link.shape !== 'set' && isWithin(link.far, struck));
  };
  return [...web.nears.values()]
    .filter(mayLead)
    .sort((a, b) => membersOf(a)[0]! - membersOf(b)[0]!)
    .map((near) => ({ near, reached: new Map<string, number>(), front: [] }));
}

/** What would be false if the first wanted conclusion were wrong: a chain begins and ends there. */
function struckBy(grid: Grid, wanted: readonly Conclusion[] | undefined): Candidates | undefined {
  const first = wanted?.[0];
  return first?.kind === 'impossible' ? grid.conflicts[first.candidate]! : first?.candidates;
}

/** The start's front, advanced to chains of this length. */
function advanced(
  web: Web,
  start: Start,
  { length, ways }: { readonly length: number; readonly ways: number },
): readonly Reached[] {
  const front: Reached[] = [];
  const reach = (link: StrungLink, before: Reached | undefined) => {
    const key = keyOf(web.keys, link.far);
    const count = start.reached.get(key) ?? 0;
    if (count >= ways || sharesSets(link, before)) return;
    start.reached.set(key, count + 1);
    front.push({ link, before, setCount: (before?.setCount ?? 0) + link.sets.length });
  };
  if (length === 1) {
    for (const link of web.from.get(keyOf(web.keys, start.near)) ?? []) reach(link, undefined);
  }
  for (const before of start.front) {
    if (web.left < 0) break;
    if (web.struck !== undefined && isWithin(before.link.far, web.struck)) continue;
    for (const link of linksAfter(web, before.link.far)) {
      web.left--;
      reach(link, before);
    }
  }
  start.front = front;
  return front;
}

/** The links whose near end is ruled out no matter which candidate of the far end is true. */
function linksAfter(web: Web, far: Candidates): readonly StrungLink[] {
  const key = keyOf(web.keys, far);
  const known = web.next.get(key);
  if (known !== undefined) return known;
  const { grid } = web;
  const [first] = membersOf(far) as [Candidate];
  const seen = seenByAll(grid, far);
  const near = [
    ...(web.byDigit.get(digitOf(grid, first)) ?? []),
    ...(cellsOf(grid, far).length === 1 ? (web.byCell.get(cellOf(grid, first)) ?? []) : []),
  ].filter((part) => isWithin(part, seen));
  const next = [...new Set(near)].flatMap((part) => web.from.get(keyOf(web.keys, part)) ?? []);
  web.next.set(key, next);
  return next;
}

function* instancesOf(
  { position, kindOf, only, wanted, needless }: KindSearch,
  web: Web,
  reached: Reached,
  shown: Set<string>,
): Generator<OfKind> {
  const { grid } = position;
  const [start, end] = [startOf(reached), reached.link.far];
  const [atStart, atEnd] = [endOf(web, start), endOf(web, end)];
  const isRing = isWithin(start, atEnd.seen);
  if (only === 'ring' && !isRing) return;
  if (!isRing && atStart.first > atEnd.first) return; // found from its other end
  if (!isRing && !overlaps(atStart.seen, atEnd.seen, position.possible) && !isSame(start, end)) return;
  const links = linksTo(reached);
  const kind = kindOf(links);
  if (kind === undefined) return;
  const sets = links.flatMap((link) => link.sets);
  const cleared = isRing ? clearedByRing(grid, links) : intersection(atStart.seen, atEnd.seen);
  const isPlacement = isSame(start, end) && membersOf(start).length === 1;
  if (!isPlacement && !overlaps(cleared, position.possible)) return;
  const members = sets.map((set) => set.members).reduce(union);
  const removed = removalsOf(position, isRing ? cleared : without(grid, cleared, members, position));
  const conclusions = [...(isPlacement ? [placementOf(grid, membersOf(start)[0]!)] : []), ...removed];
  if (conclusions.length === 0 || !bearsOn(wanted, conclusions) || areOfOneHouse(grid, sets)) return;
  const key = `${kind} ${keyOfInstance(sets, isRing ? [] : conclusions)}`;
  if (shown.has(key)) return;
  shown.add(key);
  if (needless !== 'kept' && !needsEverySet(position, { sets, conclusions })) return;
  const chain = orderedChain(grid, links, { loop: isRing });
  yield { instance: { sets, chain, deadly: undefined, conclusions }, kind };
}

function startOf(reached: Reached): Candidates {
  let first = reached;
  while (first.before !== undefined) first = first.before;
  return first.link.near;
}

/** Computed once for each end: thousands of chains end in it. */
function endOf({ grid, ends }: Web, part: Candidates): End {
  const known = ends.get(part) ?? { seen: seenByAll(grid, part), first: membersOf(part)[0]! };
  ends.set(part, known);
  return known;
}

function linksTo(reached: Reached): StrungLink[] {
  const links: StrungLink[] = [];
  for (let at: Reached | undefined = reached; at !== undefined; at = at.before) links.unshift(at.link);
  return links;
}

/** What is cleared and in no set of the chain. */
function without(grid: Grid, cleared: Candidates, members: Candidates, { possible }: Position): Candidates {
  return setOf(
    grid,
    membersOf(intersection(cleared, possible)).filter((candidate) => !has(members, candidate)),
  );
}

function bearsOn(wanted: readonly Conclusion[] | undefined, conclusions: readonly Conclusion[]): boolean {
  if (wanted === undefined) return true;
  return wanted.every((each) => conclusions.some((conclusion) => isSameConclusion(each, conclusion)));
}

function isSameConclusion(a: Conclusion, b: Conclusion): boolean {
  if (a.kind === 'impossible') return b.kind === 'impossible' && a.candidate === b.candidate;
  return b.kind === 'one-of' && isSame(a.candidates, b.candidates);
}

function sharesSets(link: StrungLink, before: Reached | undefined): boolean {
  for (let at = before; at !== undefined; at = at.before) {
    if (at.link.sets.some((set) => link.sets.includes(set))) return true;
  }
  return false;
}

function keyOf(keys: Map<Candidates, string>, part: Candidates): string {
  const known = keys.get(part) ?? membersOf(part).join();
  keys.set(part, known);
  return known;
}

function keyOfInstance(sets: readonly OneOf[], conclusions: readonly Conclusion[]): string {
  const names = sets.map((set) => membersOf(set.members).join('.')).sort();
  const ends = conclusions.map((each) =>
    each.kind === 'impossible' ? `-${each.candidate}` : membersOf(each.candidates).join('.'),
  );
  return [...names, '=>', ...ends].join();
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}
