/**
 * Which move of a path rests on which: a set is smaller than it was at the start because earlier moves removed
 * candidates from it, and an argument rests on those moves.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { candidatesInCell, candidatesInHouse } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { guardiansOf } from '../proof/guardians.ts';
import { isPlaced } from '../proof/is-placed.ts';
import { digitsIn, type Position } from '../proof/kernel.ts';
import type { MadeMove, MoveSet } from './move.ts';

/** By move of the path: the earlier moves that it rests on, as ascending numbers from 0, and which of their conclusions. */
export interface Resting {
  readonly restsOn: readonly (readonly number[])[];
  /** By move: those of its conclusions on which a later move rests. */
  readonly used: readonly ReadonlySet<Conclusion>[];
}

/** `start` is the position of the first move; `made` is the whole path, its free moves included. */
export function restingOf(start: Position, made: readonly MadeMove[]): Resting {
  const goneBy = new Map<Candidate, { readonly move: number; readonly conclusion: Conclusion }>();
  const restsOn: number[][] = [];
  const used = made.map(() => new Set<Conclusion>());
  for (const [index, step] of made.entries()) {
    const on = new Set<number>();
    for (const candidate of missedBy(start, step)) {
      const by = goneBy.get(candidate);
      if (by === undefined) continue;
      on.add(by.move);
      used[by.move]!.add(by.conclusion);
    }
    restsOn.push([...on].sort((a, b) => a - b));
    for (const conclusion of step.instance.conclusions) {
      for (const candidate of removedBy(start, conclusion)) {
        if (!goneBy.has(candidate)) goneBy.set(candidate, { move: index, conclusion });
      }
    }
  }
  return { restsOn, used };
}

/** What the conclusion removes, as far as it was possible at the start. */
export function removedBy(start: Position, conclusion: Conclusion): Candidate[] {
  if (conclusion.kind === 'impossible') return [conclusion.candidate];
  const [only, ...others] = membersOf(conclusion.candidates);
  if (only === undefined || others.length > 0) return [];
  return membersOf(start.grid.conflicts[only]!).filter((candidate) => has(start.possible, candidate));
}

/** The candidates that were in the argument's sets at the start and no longer are. */
function missedBy(start: Position, { move, instance }: MadeMove): Candidate[] {
  return move.sets.flatMap((set, index) => {
    const now = instance.sets[index]!.members;
    return atStart(start, move, set).filter((candidate) => !has(now, candidate));
  });
}

function atStart(start: Position, { deadly }: MadeMove['move'], set: MoveSet): Candidate[] {
  const { grid, possible } = start;
  const possibleOf = (candidates: readonly Candidate[]) => candidates.filter((candidate) => has(possible, candidate));
  switch (set.kind) {
    case 'cell':
      return possibleOf(candidatesInCell(grid, set.cell));
    case 'places':
      return possibleOf(candidatesInHouse(grid, set.digit, grid.houses[set.house]!));
    case 'guardians': {
      if (deadly === undefined) return [];
      if (deadly.kind === 'pattern') {
        const guardians = guardiansOf(start, deadly);
        return 'refused' in guardians ? [] : membersOf(guardians.members);
      }
      // The whole grid is the pattern: every removed candidate matters.
      const open = grid.cells.filter((cell) => !isPlaced(start, cell));
      return open.flatMap((cell) => membersOf(digitsIn(start, cell).members));
    }
    default:
      return set satisfies never;
  }
}

/** The moves without which the last ones would not hold: everything that `wanted` rests on, itself included. */
export function allUnder(restsOn: readonly (readonly number[])[], wanted: readonly number[]): ReadonlySet<number> {
  const under = new Set<number>(wanted);
  for (const index of under) for (const below of restsOn[index]!) under.add(below);
  return under;
}

export function placementsIn(made: readonly MadeMove[]): number[] {
  return made.flatMap(({ instance }, index) =>
    instance.conclusions.some((conclusion) => conclusion.kind === 'one-of') ? [index] : [],
  );
}
