/**
 * The path of least cost, and the proof that no path costs less.
 *
 * Removing a candidate never invalidates a proof, so an argument that proves something in a position proves it in every
 * later one. Take any position short of the goal, however it came about: every path to the goal must leave it at some
 * point, by an argument that says something new in that very position. These arguments are a *landmark*: each path
 * makes one of them. The least costly choice that meets all landmarks found so far costs no more than any path. If this
 * choice leads to the goal, it is a path of least cost; if it does not, the position in which it ends is a new
 * landmark, and the more has been done there while still falling short of the goal, the stronger the landmark. (The
 * same bound is known from delete-free planning: P. Haslum, J. Slaney, S. Thiebaux, *Minimal landmarks for optimal
 * delete-free planning*, ICAPS 2012.)
 *
 * One landmark that only costly arguments meet makes the others fast to search: a path that meets another landmark by
 * an argument that does not meet that one pays for both, so only arguments below the difference matter.
 *
 * The proof covers the arguments that the finders find under the names of the table, and makes one assumption: an
 * argument found in some position is still found when more is known, under a name that costs no more, or is already
 * known from elsewhere. That fails when singles have a cost: once a set has one candidate left, the argument is no
 * longer found, and only the costly single remains (4x4 boards show it). With such a table no path is called least.
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
  makeKnown,
  noMovesYet,
  provesNew,
  searchPosition,
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

interface Landmark {
  readonly position: Position;
  /** Its position was searched for arguments below this cost. */
  below: number;
  /** The numbers in `known.all` of the moves that meet it. */
  readonly metBy: Set<number>;
  /** By the same number: with how many conclusions it was tested; an argument that now proves more is tested again. */
  readonly asked: number[];
}

interface Running extends Search {
  readonly start: Position;
  readonly known: KnownMoves;
  readonly landmarks: Landmark[];
  readonly onBetter: (moves: readonly Move[]) => void;
  readonly foundElsewhere: () => readonly Move[] | undefined;
  best: readonly Move[];
  bestCost: number;
  atLeast: number;
}

/**
 * Continues from a path that reaches the goal. `onBetter` receives each path that costs less; `foundElsewhere` is asked
 * for paths that others found meanwhile. Of several paths of least cost it always returns the same one as `least`,
 * unless time runs out between the proof and finding it again.
 */
export function leastPath(
  start: Position,
  first: readonly Move[],
  search: Search & Pick<Running, 'onBetter' | 'foundElsewhere'>,
): LeastPath {
  const findings: Findings = new Map();
  const known = noMovesYet(search.costs, search.keepGoing, findings);
  const running: Running = { ...search, start, known, landmarks: [], best: first, bestCost: sumOf(first), atLeast: 0 };
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
 * A path of this cost, searched again knowing only the cost, so that the result does not depend on what was found
 * elsewhere, and when. Undefined if none is found in the time.
 */
function pathOfCost(start: Position, cost: number, search: Search, findings: Findings): readonly Move[] | undefined {
  const aim = { bestCost: cost + 2 * play };
  const keepGoing = () => isLess(cost, aim.bestCost) && search.keepGoing();
  const known = noMovesYet(search.costs, keepGoing, findings);
  const unobserved = { onBetter: () => undefined, foundElsewhere: () => undefined };
  const running: Running = Object.assign(aim, {
    ...search,
    ...unobserved,
    keepGoing,
    start,
    known,
    landmarks: [],
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
      if (!hasLearned(running, walk)) return false;
      continue;
    }
    const landmark = grown(running, walk, choice.moves);
    if (landmark === undefined) return false;
    running.landmarks.push({ ...landmark, metBy: new Set(), asked: [] });
  }
  return false;
}

interface Choice {
  readonly moves: readonly KnownMove[];
  readonly cost: number;
}

function leastChoice(running: Running): Choice | 'none less costly' | undefined {
  const { known, landmarks, bestCost } = running;
  do askAll(running);
  while (!isSearched(running));
  if (!running.keepGoing()) return undefined;
  const isAffordable = (index: number) => isLess(known.all[index]!.cost, bestCost);
  const hitting = leastHitting(
    landmarks.map(({ metBy }) => [...metBy].filter(isAffordable)),
    known.all.map(({ cost }) => cost),
    bestCost,
  );
  if (hitting === undefined) return undefined;
  if (!isLess(hitting.cost, bestCost)) return 'none less costly';
  return { moves: hitting.chosen.map((index) => known.all[index]!), cost: hitting.cost };
}

function askAll({ known, landmarks }: Running): void {
  for (const landmark of landmarks) {
    for (const [index, move] of known.all.entries()) {
      if (landmark.asked[index] === move.conclusions.length || landmark.metBy.has(index)) continue;
      landmark.asked[index] = move.conclusions.length;
      if (provesNew(landmark.position, move)) landmark.metBy.add(index);
    }
  }
}

/** Searches the first landmark not searched far enough; true if there was none, or no time is left. */
function isSearched(running: Running): boolean {
  const { known, landmarks, keepGoing } = running;
  const below = searchedBelow(running);
  for (const landmark of landmarks) {
    if (!isLess(landmark.below, below)) continue;
    if (!keepGoing() || searchPosition(known, landmark.position, below) === undefined) return true;
    landmark.below = below;
    return false;
  }
  return true;
}

/** What an argument must cost less than to be part of a less costly path without meeting the costliest landmark. */
function searchedBelow({ known, landmarks, bestCost }: Running): number {
  const least = landmarks
    .filter(({ below }) => !isLess(below, bestCost))
    .map(({ metBy }) => Math.min(bestCost, ...[...metBy].map((index) => known.all[index]!.cost)));
  return bestCost - Math.max(0, ...least);
}

interface Walk {
  readonly end: Position;
  /** The moves that could be made under a name. */
  readonly moves: readonly Move[];
  /** Whether every move was made under a name, each move once. */
  readonly isNamed: boolean;
  /** Positions in which a move proved something that it does not prove under its name. */
  readonly nameless: readonly Position[];
}

/** All of these made as far as possible, in any order that works, from a closed position. */
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

/** Searches the positions where names failed; whether that found a new move, or a lower cost for a known one. */
function hasLearned(running: Running, { nameless }: Walk): boolean {
  const { known, bestCost } = running;
  const before = signature(known);
  for (const position of nameless) if (searchPosition(known, position, bestCost) === undefined) return false;
  return signature(known) !== before;
}

function signature({ all }: KnownMoves): string {
  return `${all.length} ${all.reduce((sum, { cost }) => sum + cost, 0)} ${all.reduce((sum, { variants, conclusions }) => sum + variants.length + conclusions.length, 0)}`;
}

/**
 * From the end of a walk, makes every move that still falls short of the goal, the least costly first, and the choice
 * again whenever it proves more by then. In the end every argument that says something new reaches the goal together
 * with the choice: the landmark is met by as few as possible, and not by the choice. Undefined if time ran out.
 */
function grown(
  running: Running,
  walk: Walk,
  choice: readonly KnownMove[],
): Pick<Landmark, 'position' | 'below'> | undefined {
  const { known, costs, isReached } = running;
  const moves = [...walk.moves];
  const reachesGoal = new Set<KnownMove>();
  let position = walk.end;
  const take = (each: KnownMove): boolean => {
    if (reachesGoal.has(each)) return false;
    const made = makeKnown(position, each);
    const further = made === undefined ? forcedBy(position, each) : positionAfter(made);
    if (further === undefined) return false;
    const next = walkWith(running, close(further, costs.free), choice);
    if (isReached(next.end)) {
      reachesGoal.add(each);
      if (made !== undefined && reachesGoal.size === 1) offer(running, [...moves, made.move, ...next.moves]);
      return false;
    }
    if (made !== undefined) moves.push(made.move);
    moves.push(...next.moves);
    position = next.end;
    return true;
  };
  for (const each of known.all.toSorted((a, b) => a.cost - b.cost)) take(each);
  for (let tier = 0; ; ) {
    const most = searchedBelow(running);
    const below = Math.min(tiers[tier]!, most);
    const offered = searchPosition(known, position, below);
    if (offered === undefined || !running.keepGoing()) return undefined;
    if (offered.filter(take).length > 0) tier = 0;
    else if (!isLess(below, most)) return { position, below };
    else tier++;
  }
}

/**
 * Costs below which to search first: what is costly to teach is slow to find, and often not needed to make progress.
 */
const tiers = [5, 10, 16, Number.POSITIVE_INFINITY];

/** Takes the path, pruned, if it reaches the goal at less cost than the best. */
function offer(running: Running, moves: readonly Move[]): void {
  const { start, costs, isReached } = running;
  const path = pruned(moves, { start, free: costs.free, isReached });
  if (path === undefined) return; // some move on the way has no name
  const cost = sumOf(path);
  if (!isLess(cost, running.bestCost)) return;
  running.best = path;
  running.bestCost = cost;
  running.onBetter(path);
}

export function sumOf(moves: readonly Move[]): number {
  return moves.reduce((sum, { cost }) => sum + cost, 0);
}
