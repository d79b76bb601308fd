/**
 * The kernel: what may be believed, and why.
 *
 * A **position** is the set of candidates still possible. It begins with the givens, and every candidate in it that is
 * true in a solution of the puzzle stays in it for ever, because it changes in two ways only: by a proof (`after`), and
 * by what the scene's author vouches for (`takeAsRead`), which stays on the position for all to see.
 *
 * A **set** promises that at least one of its members is true in every solution that the position allows. A cell
 * holds some digit; a house holds each digit somewhere; a pattern that would give a second solution must be broken by
 * one of its guardians, if there is one solution; and an either/or that was proved stays true. There is no other way to
 * make a set.
 *
 * Two candidates **conflict** if they are different digits of one cell or one digit in two cells that see each other.
 *
 * **The rule.** An argument is a list of sets.
 * It proves `x` *impossible* if no choice of one candidate from every set is free of conflicts with `x` and within itself.
 * It proves that *one of* some candidates is true if no choice of one candidate from every set, each set taken without
 * those candidates, is free of conflicts. A placement is the case of one candidate.
 *
 * **Why it is sound.** Take any solution. Each set has a member that is true in it; take one such member from each.
 * Candidates that are true together never conflict, so this is a choice free of conflicts. Were `x` true as well, `x`
 * would not conflict with it either, so the search would have found it; hence where it finds none, `x` is true in no
 * solution. Were none of some candidates true, the members taken would not be among them, and again the search would
 * have found the choice; hence where it finds none, one of them is true in every solution.
 *
 * Absent on purpose: names of techniques, chains, search for arguments, the solution, text.
 */
import { Bug } from '../grid/bug.ts';
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  intersection,
  isEmpty,
  membersOf,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import {
  type Cell,
  candidatesInCell,
  candidatesInHouse,
  type Digit,
  type Grid,
  type HouseShape,
} from '../grid/grid.ts';
import type { Conclusion, Deadly } from '../grid/terms.ts';
import { type Choice, choiceBound, choose } from './choice.ts';
import { guardians } from './deadly.ts';

declare const made: unique symbol; // not exported: nobody else can write one of these

export interface Position {
  readonly [made]: true;
  readonly grid: Grid;
  /** The candidates still possible, the placed ones among them. */
  readonly possible: Candidates;
  readonly placed: Candidates;
  readonly givens: Candidates;
  /** What entered without proof, in order. */
  readonly takenAsRead: readonly Conclusion[];
  /** Whether an argument may assume that the puzzle has one solution. */
  readonly mayAssumeOneSolution: boolean;
}

export type SetSource =
  | { readonly kind: 'cell'; readonly cell: Cell }
  | { readonly kind: 'places'; readonly digit: Digit; readonly house: HouseShape }
  | { readonly kind: 'guardians'; readonly deadly: Deadly }
  | { readonly kind: 'either'; readonly candidates: Candidates };

/** At least one of `members` is true in every solution that the position allows. */
export interface OneOf {
  readonly [made]: Position;
  readonly members: Candidates;
  readonly source: SetSource;
}

export interface Proof {
  readonly [made]: Position;
  readonly conclusion: Conclusion;
  readonly assumesOneSolution: boolean;
}

export type Outcome =
  | { readonly kind: 'proved'; readonly proof: Proof; readonly cases: number }
  /** Nothing to conclude: the candidate is gone already, or one of them stands on the board. */
  | { readonly kind: 'spent' }
  /** The choice that escaped: one from every set, free of conflicts, and at odds with the conclusion. */
  | { readonly kind: 'not-shown'; readonly counterexample: readonly Candidate[]; readonly cases: number }
  | { readonly kind: 'too-large' };

/** Every candidate that no given sees, the givens placed. */
export function begin(grid: Grid, givens: readonly Candidate[], options: { readonly oneSolution: boolean }): Position {
  const start: Position = remember({
    grid,
    possible: setOf(
      grid,
      grid.cells.flatMap((cell) => candidatesInCell(grid, cell)),
    ),
    placed: setOf(grid, []),
    givens: setOf(grid, givens),
    takenAsRead: [],
    mayAssumeOneSolution: options.oneSolution,
  });
  return givens.reduce((position, given) => changed(position, oneOf(grid, given), position.takenAsRead), start);
}

/** The one door for outside trust: the conclusion enters unproved, and stays on the position's list. */
export function takeAsRead(position: Position, conclusion: Conclusion): Position {
  return changed(known(position), conclusion, [...position.takenAsRead, conclusion]);
}

/** A cell holds one of the digits still possible there. */
export function digitsIn(position: Position, cell: Cell): OneOf {
  const made = setsMade(position);
  made.cells[cell] ??= setFrom(position, setOf(position.grid, candidatesInCell(position.grid, cell)), {
    kind: 'cell',
    cell,
  });
  return made.cells[cell];
}

/** A house holds the digit in one of the places still possible. */
export function placesIn(position: Position, digit: Digit, house: HouseShape): OneOf {
  const made = setsMade(position);
  const key = house.house * position.grid.size + digit - 1;
  const source = { kind: 'places', digit, house } as const;
  made.places[key] ??= setFrom(position, setOf(position.grid, candidatesInHouse(position.grid, digit, house)), source);
  return made.places[key];
}

/** What keeps a deadly pattern from giving a second solution; a sentence where the pattern is refused. */
export function guardiansOf(position: Position, deadly: Deadly): OneOf | { readonly refused: string } {
  if (!position.mayAssumeOneSolution) return { refused: 'no step may assume here that the puzzle has one solution' };
  const found = guardians(known(position), deadly);
  return 'refused' in found ? found : setFrom(position, found.members, { kind: 'guardians', deadly });
}

/** An either/or as a set of this position: proved in an earlier one, taken as read, or with a member that stands on the board. */
export function eitherOf(position: Position, either: Proof | Conclusion): OneOf {
  const conclusion = 'conclusion' in either ? either.conclusion : either;
  const holds =
    'conclusion' in either
      ? proofs.has(either) && descends(position, positionOf(either))
      : position.takenAsRead.includes(either) || (either.kind === 'one-of' && isSpent(position, either));
  if (conclusion.kind !== 'one-of' || !holds) throw new Bug('an either/or that was not proved in an earlier position');
  return setFrom(position, conclusion.candidates, { kind: 'either', candidates: conclusion.candidates });
}

/** Decides the conclusion by the rule, from these sets alone. `bound` as in `choose`. */
export function prove(
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
  bound = choiceBound,
): Outcome {
  known(position);
  for (const set of sets) if (positionOf(set) !== position) throw new Bug('a set from another position');
  if (isSpent(position, conclusion)) return { kind: 'spent' };
  const choice = choiceAgainst(position.grid, sets, conclusion, bound);
  switch (choice.kind) {
    case 'too-large':
      return choice;
    case 'free':
      return { kind: 'not-shown', counterexample: [...choice.chosen].sort((a, b) => a - b), cases: choice.cases };
    case 'none': {
      const assumesOneSolution = sets.some((set) => set.source.kind === 'guardians');
      const proof = { conclusion, assumesOneSolution } as Proof;
      proofs.set(proof, position);
      return { kind: 'proved', proof, cases: choice.cases };
    }
  }
}

/** The position after these proofs, all of them made in it: what is impossible goes, what is placed removes what it sees. */
export function after(position: Position, proved: readonly Proof[]): Position {
  known(position);
  for (const proof of proved) if (positionOf(proof) !== position) throw new Bug('a proof from another position');
  return proved.reduce((reached, { conclusion }) => changed(reached, conclusion, reached.takenAsRead), position);
}

/** Whether the conclusion says nothing new. */
export function isSpent(position: Position, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible'
    ? !has(position.possible, conclusion.candidate)
    : overlaps(position.placed, conclusion.candidates);
}

function choiceAgainst(grid: Grid, sets: readonly OneOf[], conclusion: Conclusion, bound: number): Choice {
  if (conclusion.kind === 'impossible') {
    return choose(
      grid,
      sets.map((set) => membersOf(set.members)),
      [conclusion.candidate],
      bound,
    );
  }
  return choose(
    grid,
    sets.map((set) => membersOf(difference(set.members, conclusion.candidates))),
    [],
    bound,
  );
}

function changed(position: Position, conclusion: Conclusion, takenAsRead: readonly Conclusion[]): Position {
  const { grid } = position;
  const next = (possible: Candidates, placed: Candidates) =>
    remember({ ...position, possible, placed, takenAsRead }, position);
  if (conclusion.kind === 'impossible') {
    return next(difference(position.possible, setOf(grid, [conclusion.candidate])), position.placed);
  }
  const [only, ...others] = membersOf(conclusion.candidates);
  if (only === undefined) throw new Bug('one of no candidates');
  if (others.length > 0) return next(position.possible, position.placed);
  return next(difference(position.possible, grid.conflicts[only]!), union(position.placed, conclusion.candidates));
}

function setFrom(position: Position, of: Candidates, source: SetSource): OneOf {
  const members = intersection(of, known(position).possible);
  if (isEmpty(members))
    throw new Bug(`a set without members (${source.kind}): something untrue has entered the position`);
  const set = { members, source } as OneOf;
  sets.set(set, position);
  return set;
}

/** The placement of one candidate, as a conclusion. */
export function oneOf(grid: Grid, candidate: Candidate): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, [candidate]) };
}

/** Whether the cell has its digit. */
export function isPlaced(position: Position, cell: Cell): boolean {
  return candidatesInCell(position.grid, cell).some((candidate) => has(position.placed, candidate));
}

// What this module has made, and where: a literal or a spread copy of any of these is refused.
const positions = new WeakMap<Position, Position | undefined>();
const sets = new WeakMap<OneOf, Position>();
const proofs = new WeakMap<Proof, Position>();

// The same set is asked for over and over in one position: it is made once. (Half the time of a check, when measured.)
const madeSets = new WeakMap<Position, { readonly cells: OneOf[]; readonly places: OneOf[] }>();

function setsMade(position: Position): { readonly cells: OneOf[]; readonly places: OneOf[] } {
  const made = madeSets.get(position) ?? { cells: [], places: [] };
  madeSets.set(known(position), made);
  return made;
}

function remember(position: Omit<Position, typeof made>, earlier?: Position): Position {
  const kept = Object.freeze(position) as Position;
  positions.set(kept, earlier);
  return kept;
}

function known(position: Position): Position {
  if (!positions.has(position)) throw new Bug('a position that the kernel did not make');
  return position;
}

function positionOf(thing: OneOf | Proof): Position | undefined {
  return sets.get(thing as OneOf) ?? proofs.get(thing as Proof);
}

function descends(position: Position, ancestor: Position | undefined): boolean {
  let at: Position | undefined = position;
  while (at !== undefined && at !== ancestor) at = positions.get(at);
  return at !== undefined;
}
