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
 * **What it assumes.** What was taken as read, and, where guardians come in, that the puzzle has one solution. A position
 * remembers which candidates have gone on that assumption alone. A proof carries it if one of its sets does, or if a
 * choice is left once its sets have those candidates back; whatever is proved from it, or reached by it, carries it too.
 *
 * **Why it cannot be forged.** A position, a set and a proof are values that this module alone makes, and it knows each of
 * its own again: a literal, a copy or a proxy is another thing and is refused. What is handed in is copied, every part
 * read once, and what is given out is frozen to its last word, the grid's tables too. (Whoever replaces parts of the
 * language itself, such as `Object.freeze` or `Array.prototype.filter`, is beyond any defence from within.)
 *
 * Absent on purpose: names of techniques, chains, search for arguments, the solution, text.
 */
import { Bug } from '../grid/bug.ts';
import {
  type Candidate,
  type Candidates,
  difference,
  has,
  inGrid,
  intersection,
  isEmpty,
  isSame,
  membersOf,
  noCandidates,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import {
  type Cell,
  candidatesInCell,
  candidatesInHouse,
  cellNumbered,
  type Digit,
  digit as digitIn,
  type Grid,
  type HouseShape,
  isLaidOut,
} from '../grid/grid.ts';
import type { Conclusion, Deadly } from '../grid/terms.ts';
import { type Choice, choiceBound, choose } from './choice.ts';
import { fixedDeadly, guardians } from './deadly.ts';

declare const made: unique symbol; // not exported: nobody else can write one of these

/** What must hold for a position or a proof to be right. */
interface Assumptions {
  readonly assumesOneSolution: boolean;
  /** What entered without proof, in order. */
  readonly takenAsRead: readonly Conclusion[];
}

export interface Position extends Assumptions {
  readonly [made]: true;
  readonly grid: Grid;
  /** The candidates still possible, the placed ones among them. */
  readonly possible: Candidates;
  readonly placed: Candidates;
  readonly givens: Candidates;
  /** Those that would still be possible if nothing had assumed that the puzzle has one solution. */
  readonly goneByOneSolution: Candidates;
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
  /** Whether its promise assumes one solution by itself, whatever its position assumes. */
  readonly assumesOneSolution: boolean;
}

/** The conclusion is true in every solution that the position allows in which it was proved. */
export interface Proof extends Assumptions {
  readonly [made]: Position;
  readonly conclusion: Conclusion;
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
  if (!isLaidOut(grid)) throw new Bug('a grid that was not laid out by `gridWith`');
  const given = setOf(grid, givens);
  const nothing = noCandidates(grid);
  const all = Array.from({ length: grid.candidateCount }, (_, candidate) => candidate as Candidate);
  const start = remember({
    grid,
    possible: setOf(grid, all),
    placed: nothing,
    givens: given,
    goneByOneSolution: nothing,
    assumesOneSolution: false,
    takenAsRead: Object.freeze([]),
    mayAssumeOneSolution: options.oneSolution,
  });
  return membersOf(given).reduce((position, each) => changed(position, oneOf(grid, each), start), start);
}

/** The one door for outside trust: the conclusion enters unproved, and stays on the position's list. */
export function takeAsRead(position: Position, conclusion: Conclusion): Position {
  const { grid } = known(position);
  const taken = fixedConclusion(grid, conclusion);
  const takenAsRead = Object.freeze([...position.takenAsRead, taken]);
  return changed(position, taken, { assumesOneSolution: false, takenAsRead });
}

/** A cell holds one of the digits still possible there. */
export function digitsIn(position: Position, cell: Cell): OneOf {
  const { grid, setsMade } = known(position);
  const found = setsMade.get(cell);
  if (found !== undefined) return found;
  const set = setFrom(position, candidatesInCell(grid, cellNumbered(grid, cell)), { kind: 'cell', cell });
  setsMade.set(cell, set);
  return set;
}

/** A house holds the digit in one of the places still possible. */
export function placesIn(position: Position, digit: Digit, house: HouseShape): OneOf {
  const { grid, setsMade } = known(position);
  if (grid.houses[house.house] !== house) throw new Bug("not one of the grid's own houses");
  const key = grid.cellCount + house.house * grid.size + digitIn(grid, digit) - 1;
  const found = setsMade.get(key);
  if (found !== undefined) return found;
  const set = setFrom(position, candidatesInHouse(grid, digit, house), { kind: 'places', digit, house });
  setsMade.set(key, set);
  return set;
}

/** What keeps a deadly pattern from giving a second solution; a sentence where the pattern is refused. */
export function guardiansOf(position: Position, deadly: Deadly): OneOf | { readonly refused: string } {
  const { grid } = known(position);
  if (!position.mayAssumeOneSolution) return { refused: 'no step may assume here that the puzzle has one solution' };
  const pattern = fixedDeadly(grid, deadly);
  const found = guardians(position, pattern);
  if ('refused' in found) return found;
  return setFrom(position, membersOf(found.members), { kind: 'guardians', deadly: pattern }, true);
}

/** An either/or as a set of this position: proved in an earlier one, taken as read, or with a member that stands on the board. */
export function eitherOf(position: Position, either: Proof | Conclusion): OneOf {
  const { grid } = known(position);
  const proved = isProof(either);
  const conclusion = proved ? either.conclusion : fixedConclusion(grid, either);
  if (conclusion.kind !== 'one-of') throw new Bug('no either/or');
  const { candidates } = conclusion;
  const source = { kind: 'either', candidates } as const;
  const set = (assumes: boolean) => setFrom(position, membersOf(candidates), source, assumes);
  if (proved && descends(position, proofs.get(either))) return set(either.assumesOneSolution);
  if (!proved && isTaken(position, candidates)) return set(false);
  if (!proved && isSpent(position, conclusion)) return set(standsByOneSolution(position, candidates));
  throw new Bug('an either/or that was not proved in an earlier position');
}

/** Decides the conclusion by the rule, from these sets alone. `bound` as in `choose`. */
export function prove(
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
  bound = choiceBound,
): Outcome {
  const { grid } = known(position);
  const own = Array.from(sets, (set) => madeIn(position, set));
  const claimed = fixedConclusion(grid, conclusion);
  if (isSpent(position, claimed)) return spent;
  const members = own.map((set) => set.members);
  const choice = choiceAgainst(grid, members, claimed, bound);
  switch (choice.kind) {
    case 'too-large':
      return choice;
    case 'free': {
      const counterexample = Object.freeze([...choice.chosen].sort((a, b) => a - b));
      return Object.freeze({ kind: 'not-shown', counterexample, cases: choice.cases });
    }
    case 'none': {
      const assumesOneSolution =
        own.some((set) => set.assumesOneSolution) || !holdsInAnyCase(grid, own, claimed, bound);
      const { takenAsRead } = position;
      const proof = Object.freeze({ conclusion: claimed, assumesOneSolution, takenAsRead }) as Proof;
      proofs.set(proof, position);
      return Object.freeze({ kind: 'proved', proof, cases: choice.cases });
    }
  }
}

/** The position after these proofs, all of them made in it: what is impossible goes, what is placed removes what it sees. */
export function after(position: Position, proved: readonly Proof[]): Position {
  known(position);
  let reached = position;
  for (const proof of proved) {
    if (proofs.get(proof) !== position) throw new Bug('a proof from another position');
    reached = changed(reached, proof.conclusion, proof);
  }
  return reached;
}

/** Whether the conclusion says nothing new. */
export function isSpent(position: Position, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible'
    ? !has(position.possible, conclusion.candidate)
    : overlaps(position.placed, conclusion.candidates);
}

function choiceAgainst(
  grid: Grid,
  sets: readonly (readonly Candidate[])[],
  conclusion: Conclusion,
  bound: number,
): Choice {
  if (conclusion.kind === 'impossible') return choose(grid, sets, [conclusion.candidate], bound);
  const { candidates } = conclusion;
  const without = sets.map((members) => members.filter((member) => !has(candidates, member)));
  return choose(grid, without, [], bound);
}

/** Whether the sets prove it also with what they have lost because there is one solution. */
function holdsInAnyCase(grid: Grid, sets: readonly SetRecord[], conclusion: Conclusion, bound: number): boolean {
  if (sets.every((set) => set.lost.length === 0)) return true;
  const whole = sets.map((set) => [...set.members, ...set.lost]);
  return choiceAgainst(grid, whole, conclusion, bound).kind === 'none';
}

function changed(
  position: Position,
  conclusion: Conclusion,
  { assumesOneSolution, takenAsRead }: Assumptions,
): Position {
  const { grid, possible, goneByOneSolution } = position;
  const [only, ...others] = conclusion.kind === 'impossible' ? [] : membersOf(conclusion.candidates);
  const placed = others.length === 0 ? only : undefined;
  const gone =
    placed !== undefined
      ? grid.conflicts[placed]!
      : setOf(grid, conclusion.kind === 'impossible' ? [conclusion.candidate] : []);
  return remember(
    {
      ...position,
      possible: difference(possible, gone),
      placed: placed === undefined ? position.placed : union(position.placed, setOf(grid, [placed])),
      goneByOneSolution: assumesOneSolution
        ? union(goneByOneSolution, intersection(possible, gone))
        : difference(goneByOneSolution, gone),
      assumesOneSolution: position.assumesOneSolution || assumesOneSolution,
      takenAsRead,
    },
    position,
  );
}

function setFrom(position: Position, of: Iterable<Candidate>, source: SetSource, assumesOneSolution = false): OneOf {
  const promised = setOf(position.grid, of);
  const members = intersection(promised, position.possible);
  if (isEmpty(members))
    throw new Bug(`a set without members (${source.kind}): something untrue has entered the position`);
  const set = Object.freeze({ members, source: Object.freeze(source), assumesOneSolution }) as OneOf;
  const lost = membersOf(intersection(promised, position.goneByOneSolution));
  sets.set(set, { position, members: membersOf(members), lost, assumesOneSolution });
  return set;
}

function isTaken(position: Position, candidates: Candidates): boolean {
  return position.takenAsRead.some((taken) => taken.kind === 'one-of' && isSame(taken.candidates, candidates));
}

/** What stands on the board does so in any case where nothing that it sees has gone because there is one solution. */
function standsByOneSolution({ grid, placed, goneByOneSolution }: Position, candidates: Candidates): boolean {
  const standing = membersOf(intersection(candidates, placed));
  return standing.every((candidate) => overlaps(grid.conflicts[candidate]!, goneByOneSolution));
}

/** The placement of one candidate, as a conclusion. */
export function oneOf(grid: Grid, candidate: Candidate): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, [candidate]) };
}

/** Whether the cell has its digit. */
export function isPlaced(position: Position, cell: Cell): boolean {
  return candidatesInCell(position.grid, cell).some((candidate) => has(position.placed, candidate));
}

/** A copy that cannot be changed, each part read once. */
function fixedConclusion(grid: Grid, conclusion: Conclusion): Conclusion {
  switch (conclusion.kind) {
    case 'impossible':
      return Object.freeze({ kind: 'impossible', candidate: inGrid(grid, conclusion.candidate) });
    case 'one-of': {
      const candidates = setOf(grid, membersOf(conclusion.candidates));
      if (isEmpty(candidates)) throw new Bug('one of no candidates');
      return Object.freeze({ kind: 'one-of', candidates });
    }
    default:
      throw new Bug(`a conclusion of no known kind: ${conclusion satisfies never}`);
  }
}

// What this module has made, and where: a literal, a copy or a proxy of any of these is refused.
const positions = new WeakMap<object, PositionRecord>();
const sets = new WeakMap<object, SetRecord>();
const proofs = new WeakMap<object, Position>();

interface PositionRecord {
  readonly grid: Grid;
  readonly earlier: Position | undefined;
  /** The same set is asked for over and over: it is made once. (Half the time of a check, when measured.) */
  readonly setsMade: Map<number, OneOf>;
}

interface SetRecord {
  readonly position: Position;
  readonly members: readonly Candidate[];
  /** What it would hold besides if nothing had assumed one solution. */
  readonly lost: readonly Candidate[];
  readonly assumesOneSolution: boolean;
}

function remember(position: Omit<Position, typeof made>, earlier?: Position): Position {
  const kept = Object.freeze(position) as Position;
  positions.set(kept, { grid: position.grid, earlier, setsMade: new Map() });
  return kept;
}

function known(position: Position): PositionRecord {
  const record = positions.get(position);
  if (record === undefined) throw new Bug('a position that the kernel did not make');
  return record;
}

function madeIn(position: Position, set: OneOf): SetRecord {
  const record = sets.get(set);
  if (record?.position !== position) throw new Bug('a set from another position');
  return record;
}

function isProof(thing: Proof | Conclusion): thing is Proof {
  return proofs.has(thing);
}

function descends(position: Position, ancestor: Position | undefined): boolean {
  let at: Position | undefined = position;
  while (at !== undefined && at !== ancestor) at = positions.get(at)?.earlier;
  return at !== undefined;
}

const spent: Outcome = Object.freeze({ kind: 'spent' });
