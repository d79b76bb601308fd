/**
 * All moves found so far in a search, in any position. One argument is one entry, whatever its sets contained in the
 * positions where it was found.
 */
import { membersOf } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import type { TeachingCosts } from '../techniques/teaching.ts';
import { movesBelow } from './available.ts';
import { argumentKey, forced, type MadeMove, type Move, make, positionKey, provesAnything } from './move.ts';
import { isLess } from './teaching.ts';

export interface KnownMove {
  readonly key: string;
  /** The least that it cost anywhere. */
  cost: number;
  /** As it was found in different positions: once under each name and with each content of its sets. */
  variants: readonly Move[];
  /** Every conclusion that it was found to prove anywhere; each variant has them all. */
  conclusions: readonly Conclusion[];
}

/**
 * By position: what the finders found there below some cost. Shared by searches, since it depends only on the position.
 */
export type Findings = Map<string, { readonly moves: readonly Move[]; readonly below: number }>;

export interface KnownMoves {
  readonly costs: TeachingCosts;
  readonly keepGoing: () => boolean;
  readonly findings: Findings;
  readonly all: KnownMove[];
  readonly byKey: Map<string, KnownMove>;
  /** By position that was searched: what it offered, and up to which cost it was searched. */
  readonly offered: Map<string, { readonly moves: readonly KnownMove[]; readonly below: number }>;
}

export function noMovesYet(costs: TeachingCosts, keepGoing: () => boolean, findings: Findings): KnownMoves {
  return { costs, keepGoing, findings, all: [], byKey: new Map(), offered: new Map() };
}

/**
 * All moves of the position that cost less than `below`, the least costly first, now known; undefined if time ran out.
 */
export function searchPosition(known: KnownMoves, position: Position, below: number): readonly KnownMove[] | undefined {
  const key = positionKey(position);
  const before = known.offered.get(key);
  if (before !== undefined && !isLess(before.below, below)) return before.moves;
  const moves = findingsIn(known, position, below);
  if (moves === undefined) return undefined;
  const met = moves.map((move) => meet(known, move));
  known.offered.set(key, { moves: met, below });
  return met;
}

/** The same result whether the search ran just now or earlier up to a higher cost. */
function findingsIn({ costs, keepGoing, findings }: KnownMoves, position: Position, below: number) {
  const key = positionKey(position);
  const before = findings.get(key);
  if (before !== undefined && !isLess(before.below, below))
    return before.moves.filter(({ cost }) => isLess(cost, below));
  const moves = movesBelow(position, costs, below, keepGoing);
  if (moves === 'out of time') return undefined;
  findings.set(key, { moves, below });
  return moves;
}

export function meet(known: KnownMoves, move: Move): KnownMove {
  const key = argumentKey(move);
  const earlier = known.byKey.get(key);
  if (earlier === undefined) {
    const entry: KnownMove = { key, cost: move.cost, variants: [move], conclusions: move.conclusions };
    known.byKey.set(key, entry);
    known.all.push(entry);
    return entry;
  }
  if (isLess(move.cost, earlier.cost)) earlier.cost = move.cost;
  const stated = new Set(earlier.conclusions.map(keyOfConclusion));
  const fresh = move.conclusions.filter((conclusion) => !stated.has(keyOfConclusion(conclusion)));
  if (fresh.length > 0) earlier.conclusions = [...earlier.conclusions, ...fresh];
  const signature = signatureOf(move);
  const isNew = !earlier.variants.some((variant) => signatureOf(variant) === signature);
  if (isNew || fresh.length > 0) {
    const { conclusions } = earlier;
    earlier.variants = [...earlier.variants, ...(isNew ? [move] : [])].map((each) => ({ ...each, conclusions }));
  }
  return earlier;
}

/** The move made in this position, as one of its variants; undefined if none says anything new under its name. */
export function makeKnown(position: Position, { variants }: KnownMove): MadeMove | undefined {
  for (const variant of variants) {
    const made = make(position, variant);
    if (made !== undefined) return made;
  }
  return undefined;
}

/** Whether the argument proves something new in this position, under any name. */
export function provesNew(position: Position, { variants }: KnownMove): boolean {
  return provesAnything(position, variants[0]!);
}

/** The position after all that the argument proves; undefined if it proves nothing new. */
export function forcedBy(position: Position, { variants }: KnownMove): Position | undefined {
  return forced(position, variants[0]!);
}

function signatureOf({ name, members }: Move): string {
  return JSON.stringify([name, members]);
}

function keyOfConclusion(conclusion: Conclusion): string {
  return conclusion.kind === 'impossible' ? `-${conclusion.candidate}` : membersOf(conclusion.candidates).join();
}
