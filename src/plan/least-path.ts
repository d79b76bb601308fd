/**
 * The path of least cost, and the proof that none costs less.
 *
 * A candidate that is gone takes no proof away, so an argument that proves something in a position proves it in every later
 * one. Take any position short of the goal, however it came about: every path to the goal must at some time leave it, by
 * an argument that says something new in that very position. These arguments are a *demand*: each path makes one of them.
 * The least costly choice that meets all demands found so far is no costlier than any path. Where this choice leads to the
 * goal, it is a path of least cost; where it does not, the position in which it ends is a new demand, and a better one the
 * more was done there that still falls short of the goal. (The same bound is known in planning without deletes:
 * P. Haslum, J. Slaney, S. Thiebaux, *Minimal landmarks for optimal delete-free planning*, ICAPS 2012.)
 *
 * One demand that only costly arguments meet makes the others cheap to look for: whoever meets another demand by an argument
 * that does not meet that one has to pay for both, so that only arguments below the difference matter.
 *
 * What is proved is proved of the arguments that the finders find under the names of the table, and takes one thing for
 * granted: that an argument which is met in some position is still found where more is known, under a name that costs no
 * more, or is known already from elsewhere. That fails where singles cost something: with sets of one candidate left, an
 * argument is not found any longer, and the costly single is (4x4 boards show it). By such a table nothing is called least.
 */
import type { Position } from '../proof/kernel.ts';
import type { Search } from './first-path.ts';
import { close } from './free-moves.ts';
import { leastHitting } from './hitting-set.ts';
import {
  type Findings,
  forcedBy,
  type KnownMove,
  type KnownMoves,
  lookThrough,
  makeKnown,
  noMovesYet,
  provesNew,
} from './known-moves.ts';
import { type Move, positionAfter } from './move.ts';
import { pruned } from './prune.ts';
import { isLess, leastOfAll, play, singlesAreFree } from './teaching.ts';

export interface LeastPath {
  /** Proved to be the least, or why it is not. */
  readonly kind: 'least' | 'time ran out' | 'singles have a price';
  readonly moves: readonly Move[];
  readonly atLeast: number;
}

interface Demand {
  readonly position: Position;
  /** Its position was looked through for arguments below this cost. */
  below: number;
  /** The numbers in `known.all` of what meets it. */
  readonly metBy: Set<number>;
  /** By the same number: with how many conclusions it was asked; an argument that proves more by now is asked again. */
  readonly asked: number[];
}

interface Running extends Search {
  readonly start: Position;
  readonly known: KnownMoves;
  readonly demands: Demand[];
  readonly onBetter: (moves: readonly Move[]) => void;
  readonly foundElsewhere: () => readonly Move[] | undefined;
  best: readonly Move[];
  bestCost: number;
  atLeast: number;
}

/**
 * Goes on from a path that reaches the goal. `onBetter` is told of each that costs less; `foundElsewhere` is asked for paths
 * that others found meanwhile. Of several paths of least cost it is always the same one that is handed back as `least`,
 * unless time runs out after the proof and before it is found again.
 */
export function leastPath(
  start: Position,
  first: readonly Move[],
  search: Search & Pick<Running, 'onBetter' | 'foundElsewhere'>,
): LeastPath {
  const findings: Findings = new Map();
  const known = noMovesYet(search.costs, search.keepGoing, findings);
  const running: Running = { ...search, start, known, demands: [], best: first, bestCost: sumOf(first), atLeast: 0 };
  const isThrough = isProvedLeast(running);
  const { bestCost } = running;
  const isProvable = singlesAreFree(search.costs) || !isLess(leastOfAll(search.costs), bestCost);
  const again = () => (isLess(bestCost, sumOf(first)) ? pathOfCost(start, bestCost, search, findings) : first);
  const moves = (isThrough ? again() : undefined) ?? running.best;
  if (isThrough && isProvable) return { kind: 'least', moves, atLeast: bestCost };
  const kind = isThrough ? 'singles have a price' : 'time ran out';
  return { kind, moves, atLeast: isProvable ? running.atLeast : leastOfAll(search.costs) };
}

/**
 * A path of this cost, looked for anew with nothing known but the cost: which one it is does not hang on what was found
 * elsewhere, and when. Undefined where none is found in the time.
 */
function pathOfCost(start: Position, cost: number, search: Search, findings: Findings): readonly Move[] | undefined {
  const aim = { bestCost: cost + 2 * play };
  const keepGoing = () => isLess(cost, aim.bestCost) && search.keepGoing();
  const known = noMovesYet(search.costs, keepGoing, findings);
  const beside = { onBetter: () => undefined, foundElsewhere: () => undefined };
  const running: Running = Object.assign(aim, {
    ...search,
    ...beside,
    keepGoing,
    start,
    known,
    demands: [],
    best: [],
    atLeast: 0,
  });
  isProvedLeast(running);
  return isLess(cost, running.bestCost) ? undefined : running.best;
}

function isProvedLeast(running: Running): boolean {
  const { start, costs } = running;
  while (running.keepGoing()) {
    const other = running.foundElsewhere();
    if (other !== undefined) offer(running, other);
    const choice = leastChoice(running);
    if (choice === undefined) return false;
    if (choice === 'none less costly') return true;
    running.atLeast = choice.cost;
    const walk = walkWith(running, close(start, costs.free), choice.moves);
    if (running.isReached(walk.end)) {
      if (walk.isNamed) {
        offer(running, walk.moves);
        if (!isLess(choice.cost, running.bestCost)) return true;
      }
      if (!hasLearnt(running, walk)) return false;
      continue;
    }
    const demand = grown(running, walk, choice.moves);
    if (demand === undefined) return false;
    running.demands.push({ ...demand, metBy: new Set(), asked: [] });
  }
  return false;
}

interface Choice {
  readonly moves: readonly KnownMove[];
  readonly cost: number;
}

function leastChoice(running: Running): Choice | 'none less costly' | undefined {
  const { known, demands, bestCost } = running;
  do askAll(running);
  while (!isLookedThrough(running));
  if (!running.keepGoing()) return undefined;
  const isCheap = (index: number) => isLess(known.all[index]!.cost, bestCost);
  const hitting = leastHitting(
    demands.map(({ metBy }) => [...metBy].filter(isCheap)),
    known.all.map(({ cost }) => cost),
    bestCost,
  );
  if (hitting === undefined) return undefined;
  if (!isLess(hitting.cost, bestCost)) return 'none less costly';
  return { moves: hitting.chosen.map((index) => known.all[index]!), cost: hitting.cost };
}

function askAll({ known, demands }: Running): void {
  for (const demand of demands) {
    for (const [index, move] of known.all.entries()) {
      if (demand.asked[index] === move.conclusions.length || demand.metBy.has(index)) continue;
      demand.asked[index] = move.conclusions.length;
      if (provesNew(demand.position, move)) demand.metBy.add(index);
    }
  }
}

/** Looks further through what was not looked through far enough; whether nothing was, or no time is left. */
function isLookedThrough(running: Running): boolean {
  const { known, demands, keepGoing } = running;
  const below = lookedBelow(running);
  for (const demand of demands) {
    if (!isLess(demand.below, below)) continue;
    if (!keepGoing() || lookThrough(known, demand.position, below) === undefined) return true;
    demand.below = below;
    return false;
  }
  return true;
}

/** What an argument must cost less than to be part of a less costly path without meeting the costliest demand. */
function lookedBelow({ known, demands, bestCost }: Running): number {
  const least = demands
    .filter(({ below }) => !isLess(below, bestCost))
    .map(({ metBy }) => Math.min(bestCost, ...[...metBy].map((index) => known.all[index]!.cost)));
  return bestCost - Math.max(0, ...least);
}

interface Walk {
  readonly end: Position;
  /** The moves that could be made under a name. */
  readonly moves: readonly Move[];
  /** Whether all that was done was done under a name, each move once. */
  readonly isNamed: boolean;
  /** Where a move proved something that it does not prove under its name. */
  readonly nameless: readonly Position[];
}

/** All of these done as far as they go, in whatever order they can be, from a position that is closed. */
function walkWith({ costs }: Running, from: Position, choice: readonly KnownMove[]): Walk {
  const moves: Move[] = [];
  const nameless: Position[] = [];
  let waiting = choice;
  let end = from;
  for (let before = -1; before !== moves.length; ) {
    before = moves.length;
    for (const each of waiting) {
      const made = makeKnown(end, each);
      if (made === undefined) continue;
      moves.push(made.move);
      waiting = waiting.filter((other) => other !== each);
      end = close(positionAfter(made), costs.free);
    }
  }
  for (let goesOn = true; goesOn; ) {
    goesOn = false;
    for (const each of choice) {
      const further = forcedBy(end, each);
      if (further === undefined) continue;
      nameless.push(end);
      end = close(further, costs.free);
      goesOn = true;
    }
  }
  return { end, moves, isNamed: nameless.length === 0, nameless };
}

/** Looks through the positions where names failed; whether that brought a move that was not known, or is less costly than was known. */
function hasLearnt(running: Running, { nameless }: Walk): boolean {
  const { known, bestCost } = running;
  const before = signature(known);
  for (const position of nameless) if (lookThrough(known, position, bestCost) === undefined) return false;
  return signature(known) !== before;
}

function signature({ all }: KnownMoves): string {
  return `${all.length} ${all.reduce((sum, { cost }) => sum + cost, 0)} ${all.reduce((sum, { variants, conclusions }) => sum + variants.length + conclusions.length, 0)}`;
}

/**
 * From the end of a walk, all that still falls short of the goal, the least costly first, and the choice again wherever it
 * proves more by then. In the end everything that says something new leads to the goal together with the choice: as little
 * as can be meets the demand, and the choice does not. Undefined where time ran out.
 */
function grown(
  running: Running,
  walk: Walk,
  choice: readonly KnownMove[],
): Pick<Demand, 'position' | 'below'> | undefined {
  const { known, costs, isReached } = running;
  const moves = [...walk.moves];
  const leadsThere = new Set<KnownMove>();
  let position = walk.end;
  const take = (each: KnownMove): boolean => {
    if (leadsThere.has(each)) return false;
    const made = makeKnown(position, each);
    const further = made === undefined ? forcedBy(position, each) : positionAfter(made);
    if (further === undefined) return false;
    const next = walkWith(running, close(further, costs.free), choice);
    if (isReached(next.end)) {
      leadsThere.add(each);
      if (made !== undefined && leadsThere.size === 1) offer(running, [...moves, made.move, ...next.moves]);
      return false;
    }
    if (made !== undefined) moves.push(made.move);
    moves.push(...next.moves);
    position = next.end;
    return true;
  };
  for (const each of known.all.toSorted((a, b) => a.cost - b.cost)) take(each);
  for (let tier = 0; ; ) {
    const most = lookedBelow(running);
    const below = Math.min(tiers[tier]!, most);
    const offered = lookThrough(known, position, below);
    if (offered === undefined || !running.keepGoing()) return undefined;
    if (offered.filter(take).length > 0) tier = 0;
    else if (!isLess(below, most)) return { position, below };
    else tier++;
  }
}

/** Costs below which is looked first: what is costly to teach is slow to find, and often not needed to go on. */
const tiers = [5, 10, 16, Number.POSITIVE_INFINITY];

/** Takes the path, without what it does not need, if it reaches the goal at less cost than the best. */
function offer(running: Running, moves: readonly Move[]): void {
  const { start, costs, isReached } = running;
  const path = pruned(moves, { start, free: costs.free, isReached });
  if (path === undefined) return; // something on the way was done without a name
  const cost = sumOf(path);
  if (!isLess(cost, running.bestCost)) return;
  running.best = path;
  running.bestCost = cost;
  running.onBetter(path);
}

export function sumOf(moves: readonly Move[]): number {
  return moves.reduce((sum, { cost }) => sum + cost, 0);
}
