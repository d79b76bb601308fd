/**
 * A move: an argument with its conclusions, as plain data that names its sets and is not tied to a particular position.
 * Searches pass it around; the kernel proves it wherever it is made.
 */
import { type Candidate, membersOf, setOf } from '../grid/candidates.ts';
import { isSame, wordsIn } from '../grid/counting.ts';
import type { Cell, Digit, House } from '../grid/grid.ts';
import type { Chain, Conclusion, Deadly } from '../grid/terms.ts';
import { guardiansOf } from '../proof/guardians.ts';
import {
  after,
  digitsIn,
  isRedundant,
  type OneOf,
  type Position,
  type Proof,
  placesIn,
  prove,
} from '../proof/kernel.ts';
import { type ArgumentName, techniqueNamed } from '../techniques/all-techniques.ts';
import { recogniseIn } from '../techniques/judge-name.ts';
import type { Instance } from '../techniques/technique.ts';

export type MoveSet =
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'places'; readonly digit: Digit; readonly house: House }
  | { readonly kind: 'guardians' };

export interface Move {
  readonly name: ArgumentName;
  /** What it costs to teach; 0 for a free one. */
  readonly cost: number;
  readonly sets: readonly MoveSet[];
  /** The candidates of each set where the move was found. */
  readonly members: readonly (readonly Candidate[])[];
  readonly chain: Chain | undefined;
  readonly deadly: Deadly | undefined;
  /** One conclusion a candidate: removals, or the placement of one. */
  readonly conclusions: readonly Conclusion[];
}

/** A move made in a position: its sets there, and what the kernel proved. */
export interface MadeMove {
  readonly move: Move;
  /** The position in which it was made. */
  readonly position: Position;
  /** The move as an instance of the position, with the conclusions that say something new there. */
  readonly instance: Instance;
  readonly proofs: readonly Proof[];
}

/** How many candidates a proof may try. */
const proofBound = 50_000;

/** An instance as a move of this name; undefined if one of its sets is of neither a cell, a house nor a pattern. */
export function moveOf(name: ArgumentName, cost: number, instance: Instance): Move | undefined {
  const sets = instance.sets.map(setName);
  if (!sets.every((set) => set !== undefined)) return undefined;
  const { chain, deadly, conclusions } = instance;
  const members = instance.sets.map((set) => membersOf(set.members));
  return { name, cost, sets, members, chain, deadly, conclusions };
}

/** The same for the same argument under any name: its sets in a fixed order. */
export function argumentKey(move: Pick<Move, 'sets' | 'deadly'>): string {
  const sets = move.sets.map(keyOfSet).sort().join();
  return move.deadly === undefined ? sets : `${sets} ${JSON.stringify(move.deadly)}`;
}

/**
 * Makes the move in a position; undefined if it proves nothing new there, or would not bear its name: an argument bears
 * it if its sets hold the same candidates as when it was found, else it is recognised again.
 */
export function make(position: Position, move: Move): MadeMove | undefined {
  const sets = setsOf(position, move);
  if (sets === undefined) return undefined;
  const proved = provedBy(position, sets, move.conclusions);
  if (proved.length === 0) return undefined;
  const { chain, deadly } = move;
  const conclusions = proved.map((proof) => proof.conclusion);
  const instance = { sets, chain, deadly, conclusions };
  const isAsFound = sets.every((set, index) => isSame(set.members, setOf(position.grid, move.members[index]!)));
  if (!isAsFound && !bearsName(position, move.name, instance)) return undefined;
  return { move, position, instance, proofs: proved };
}

/** Whether the argument proves something in this position that is not known there, under any name. */
export function provesAnything(position: Position, move: Move): boolean {
  const fresh = move.conclusions.filter((conclusion) => !isRedundant(position, conclusion));
  if (fresh.length === 0) return false;
  const sets = setsOf(position, move);
  if (sets === undefined) return false;
  return fresh.some((conclusion) => prove(position, sets, conclusion, proofBound).kind === 'proved');
}

/** The position after all that the argument proves, under any name; undefined if nothing of it is new. */
export function forced(position: Position, move: Move): Position | undefined {
  if (!move.conclusions.some((conclusion) => !isRedundant(position, conclusion))) return undefined;
  const sets = setsOf(position, move);
  const proofs = sets === undefined ? [] : provedBy(position, sets, move.conclusions);
  return proofs.length === 0 ? undefined : after(position, proofs);
}

/** The position that the move leads to. */
export function positionAfter({ position, proofs }: MadeMove): Position {
  return after(position, proofs);
}

/** Those of the conclusions that these sets prove, and that say something new. */
export function provedBy(
  position: Position,
  sets: readonly OneOf[],
  conclusions: readonly Conclusion[],
): readonly Proof[] {
  return conclusions.flatMap((conclusion) => {
    const outcome = prove(position, sets, conclusion, proofBound);
    return outcome.kind === 'proved' ? [outcome.proof] : [];
  });
}

/** The sets that the move names, in this position; undefined if its pattern is refused. */
export function setsOf(position: Position, move: Pick<Move, 'sets' | 'deadly'>): readonly OneOf[] | undefined {
  const { grid } = position;
  const sets: OneOf[] = [];
  for (const set of move.sets) {
    switch (set.kind) {
      case 'cell':
        sets.push(digitsIn(position, set.cell));
        break;
      case 'places':
        sets.push(placesIn(position, set.digit, grid.houses[set.house]!));
        break;
      case 'guardians': {
        const guardians = move.deadly === undefined ? undefined : guardiansOf(position, move.deadly);
        if (guardians === undefined || 'refused' in guardians) return undefined;
        sets.push(guardians);
        break;
      }
      default:
        return set satisfies never;
    }
  }
  return sets;
}

/** The name of a move's set, as `digitsIn` and `placesIn` take it. */
function setName({ source }: OneOf): MoveSet | undefined {
  switch (source.kind) {
    case 'cell':
      return source;
    case 'places':
      return { kind: 'places', digit: source.digit, house: source.house.house };
    case 'guardians':
      return { kind: 'guardians' };
    case 'either':
      return undefined;
  }
}

/** A chain is given link by link for its own position, so it is not recognised again. */
function bearsName(position: Position, name: ArgumentName, instance: Instance): boolean {
  if (instance.chain !== undefined) return false;
  return recogniseIn(techniqueNamed(name), { ...instance, position, chains: [] })?.kind === 'fits';
}

function keyOfSet(set: MoveSet): string {
  switch (set.kind) {
    case 'cell':
      return `c${set.cell}`;
    case 'places':
      return `${set.digit}h${set.house}`;
    case 'guardians':
      return 'g';
  }
}

/** Identifies a position: its possible candidates, and those placed. */
export function positionKey(position: Position): string {
  return `${wordsOf(position.possible)} ${wordsOf(position.placed)}`;
}

function wordsOf(set: Position['possible']): string {
  let text = '';
  for (const word of wordsIn(set)) text += `${(word >>> 0).toString(36)}.`;
  return text;
}

/** Whether every cell has its digit. */
export function isSolved({ grid, placed }: Position): boolean {
  return membersOf(placed).length === grid.cellCount;
}
