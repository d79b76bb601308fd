/**
 * Links of a chain, judged by the same search as proofs.
 *
 * A node is a statement: k digits in m cells says, for k up to m, that each of the digits stands in one of the cells;
 * for k above m, that the cells hold no other digits than these.
 * A weak link holds if no choice free of conflicts makes both ends true.
 * A strong link holds if its sets leave no choice free of conflicts that makes both ends false.
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
  setOf,
  union,
} from '../grid/candidates.ts';
import { sharedHouses } from '../grid/geometry.ts';
import { candidateAt, type Grid } from '../grid/grid.ts';
import type { ChainNode } from '../grid/terms.ts';
import { choose } from './choice.ts';
import { digitsIn, type OneOf, type Position, placesIn } from './kernel.ts';

/** Whether both ends cannot be true; if they can, a choice that makes them so. */
export function judgeWeak(
  position: Position,
  a: ChainNode,
  b: ChainNode,
): { readonly holds: boolean; readonly brokenBy: readonly Candidate[] } {
  const choice = choose(position.grid, [...truthOf(position, a), ...truthOf(position, b)]);
  if (choice.kind === 'none') return { holds: true, brokenBy: [] };
  return { holds: false, brokenBy: choice.kind === 'free' ? ascending(choice.chosen) : [] };
}

export interface StrongLink {
  readonly holds: boolean;
  /** The sets that make it hold; where it does not hold, those that come nearest (none where the ends share nothing). */
  readonly sets: readonly OneOf[];
  readonly brokenBy: readonly Candidate[];
}

/** Whether both ends cannot be false, by a cell, an almost locked set, a house, or one of `others` (guardians, either/ors). */
export function judgeStrong(position: Position, a: ChainNode, b: ChainNode, others: readonly OneOf[]): StrongLink {
  const ends = union(candidatesOf(position.grid, a), candidatesOf(position.grid, b));
  const ways = waysToLink(position, a, b, ends, others).map((sets): StrongLink => {
    const way = bothFalse(position, a, b, sets);
    if (way === undefined) return { holds: true, sets, brokenBy: [] };
    const strangers = sets.map((set) => difference(set.members, ends)).reduce(union);
    return { holds: false, sets, brokenBy: isEmpty(strangers) ? ascending(way) : membersOf(strangers) };
  });
  const nearest = standsInTheSameCells(a, b) ? ways[0] : ways.toSorted((x, y) => placesOf(x) - placesOf(y))[0];
  return ways.find((way) => way.holds) ?? nearest ?? { holds: false, sets: [], brokenBy: [] };
}

/** All candidates that a node speaks of, possible or not. */
export function candidatesOf(grid: Grid, node: ChainNode): Candidates {
  return setOf(
    grid,
    node.cells.flatMap((cell) => node.digits.map((digit) => candidateAt(grid, cell, digit))),
  );
}

/** For each way to link the ends, its sets. */
function waysToLink(
  position: Position,
  a: ChainNode,
  b: ChainNode,
  ends: Candidates,
  others: readonly OneOf[],
): OneOf[][] {
  const ways: OneOf[][] = [];
  if (standsInTheSameCells(a, b)) ways.push(a.cells.map((cell) => digitsIn(position, cell)));
  const digits = [...new Set([...a.digits, ...b.digits])].sort((x, y) => x - y);
  for (const house of sharedHouses(position.grid, [...a.cells, ...b.cells])) {
    ways.push(digits.map((digit) => placesIn(position, digit, house)));
  }
  const standing = intersection(ends, position.possible);
  for (const set of others) if (isWithin(standing, set.members)) ways.push([set]);
  return ways;
}

function standsInTheSameCells(a: ChainNode, b: ChainNode): boolean {
  return a.cells.join() === b.cells.join();
}

/** A choice from the sets that leaves both ends false, if there is one. */
function bothFalse(
  position: Position,
  a: ChainNode,
  b: ChainNode,
  sets: readonly OneOf[],
): readonly Candidate[] | undefined {
  for (const missingFromA of falsehoodsOf(position.grid, a)) {
    for (const missingFromB of falsehoodsOf(position.grid, b)) {
      const missing = union(missingFromA, missingFromB);
      const choice = choose(
        position.grid,
        sets.map((set) => membersOf(difference(set.members, missing))),
      );
      if (choice.kind === 'free') return choice.chosen;
      if (choice.kind === 'too-large') return [];
    }
  }
  return undefined;
}

/** The sets from which one candidate each must be chosen for the node to be true. */
function truthOf(position: Position, node: ChainNode): Candidate[][] {
  const { grid, possible } = position;
  const standing = (candidates: readonly Candidate[]) => candidates.filter((candidate) => has(possible, candidate));
  return node.digits.length <= node.cells.length
    ? node.digits.map((digit) => standing(node.cells.map((cell) => candidateAt(grid, cell, digit))))
    : node.cells.map((cell) => standing(node.digits.map((digit) => candidateAt(grid, cell, digit))));
}

/** The ways in which the node can be false, each as the candidates of which none is then true. */
function falsehoodsOf(grid: Grid, node: ChainNode): Candidates[] {
  return node.digits.length <= node.cells.length
    ? node.digits.map((digit) =>
        setOf(
          grid,
          node.cells.map((cell) => candidateAt(grid, cell, digit)),
        ),
      )
    : node.cells.map((cell) =>
        setOf(
          grid,
          node.digits.map((digit) => candidateAt(grid, cell, digit)),
        ),
      );
}

function placesOf(link: StrongLink): number {
  return membersOf(link.sets.map((set) => set.members).reduce(union)).length;
}

function ascending(candidates: readonly Candidate[]): Candidate[] {
  return [...candidates].sort((x, y) => x - y);
}
