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
  membersOf,
  overlaps,
  setOf,
  union,
} from '../grid/candidates.ts';
import type { Conclusion, Deadly } from '../grid/conclusion.ts';
import {
  type Cell,
  candidatesInCell,
  candidatesInHouse,
  type Digit,
  type Grid,
  type HouseShape,
  isLaidOut,
} from '../grid/grid.ts';
import { choiceBound, choose } from './choice.ts';
import { fixedDeadly, guardians } from './deadly.ts';
import type { Assumptions, FindExtras, Made, OneOf, Outcome, Position, Proof, SetSource } from './terms.ts';

export type { OneOf, Outcome, Position, Proof };

/** Every candidate that no given sees, the givens placed. */
export function begin(grid: Grid, givens: readonly Candidate[], options: { readonly oneSolution: boolean }): Position {
  if (!isLaidOut(grid)) throw new Bug('a grid that was not laid out by `gridWith`');
  const all = grid.cells.flatMap((cell) => candidatesInCell(grid, cell));
  const start = remember({
    grid,
    possible: setOf(grid, all),
    placed: setOf(grid, []),
    givens: setOf(grid, givens),
    goneByOneSolution: setOf(grid, []),
    assumesOneSolution: false,
    takenAsRead: Object.freeze([]),
    mayAssumeOneSolution: options.oneSolution,
  });
  return membersOf(start.givens).reduce((position, given) => changed(position, oneOf(grid, given), start), start);
}

/** The one door for outside trust: the conclusion enters unproved, and stays on the position's list. */
export function takeAsRead(position: Position, conclusion: Conclusion): Position {
  const { grid } = recordOf(position);
  const taken = fixedConclusion(grid, conclusion);
  const takenAsRead = Object.freeze([...position.takenAsRead, taken]);
  return changed(position, taken, { assumesOneSolution: false, takenAsRead });
}

/** A cell holds one of the digits still possible there. */
export function digitsIn(position: Position, cell: Cell): OneOf {
  const { grid, setsMade } = recordOf(position);
  return setsMade.get(cell) ?? setFrom(position, candidatesInCell(grid, cell), { kind: 'cell', cell }, false, cell);
}

/** A house holds the digit in one of the places still possible. */
export function placesIn(position: Position, digit: Digit, house: HouseShape): OneOf {
  const { grid, setsMade } = recordOf(position);
  if (grid.houses[house.house] !== house) throw new Bug("not one of the grid's own houses");
  if (grid.digits[digit - 1] !== digit) throw new Bug('not a digit of the grid');
  const key = grid.cellCount * digit + house.house; // there are fewer houses than cells
  const found = setsMade.get(key);
  return (
    found ?? setFrom(position, candidatesInHouse(grid, digit, house), { kind: 'places', digit, house }, false, key)
  );
}

/** What keeps a deadly pattern from giving a second solution; a sentence where the pattern is refused. `find` gives a hint. */
export function guardiansBy(
  position: Position,
  deadly: Deadly,
  find: FindExtras,
): OneOf | { readonly refused: string } {
  const { grid } = recordOf(position);
  if (!position.mayAssumeOneSolution) return { refused: 'no step may assume here that the puzzle has one solution' };
  const pattern = fixedDeadly(grid, deadly);
  const found = guardians(position, pattern, find);
  if ('refused' in found) return found;
  return setFrom(position, membersOf(found.members), { kind: 'guardians', deadly: pattern }, true, undefined);
}

/** An either/or as a set of this position: proved in an earlier one, taken as read, or with a member that stands on the board. */
export function eitherOf(position: Position, either: Proof | Conclusion): OneOf {
  const { grid } = recordOf(position);
  const conclusion = isProof(either) ? either.conclusion : fixedConclusion(grid, either);
  const candidates = conclusion.kind === 'one-of' ? conclusion.candidates : setOf(grid, []);
  const assumes = isProof(either) ? assumesProof(position, either) : assumesStanding(position, candidates);
  if (isEmpty(candidates) || assumes === undefined)
    throw new Bug('an either/or that was not proved in an earlier position');
  return setFrom(position, membersOf(candidates), { kind: 'either', candidates }, assumes, undefined);
}

/** Whether the proof assumes one solution; undefined if it was not made in a position that led to this one. */
function assumesProof(position: Position, proof: Proof): boolean | undefined {
  let at: Position | undefined = position;
  while (at !== undefined && at !== proofs.get(proof)) at = recordOf(at).earlier;
  return at === undefined ? undefined : proof.assumesOneSolution;
}

/** Whether an either/or without a proof stands because there is one solution; undefined if it does not stand at all. */
function assumesStanding({ grid, ...position }: Position, candidates: Candidates): boolean | undefined {
  const isSaid = (said: Conclusion) =>
    said.kind === 'one-of' && `${membersOf(said.candidates)}` === `${membersOf(candidates)}`;
  if (position.takenAsRead.some(isSaid)) return false;
  const standing = membersOf(intersection(candidates, position.placed));
  if (standing.length === 0) return undefined;
  // A digit stands in any case if all that it sees has gone in any case.
  return standing.every((each) => overlaps(grid.conflicts[each]!, position.goneByOneSolution));
}

/** Decides the conclusion by the rule, from these sets alone. `bound` as in `choose`. */
export function prove(
  position: Position,
  sets: readonly OneOf[],
  conclusion: Conclusion,
  bound = choiceBound,
): Outcome {
  const { grid } = recordOf(position);
  const own = [...sets].map((set) => madeIn(position, set));
  const claimed = fixedConclusion(grid, conclusion);
  if (isRedundant(position, claimed)) return Object.freeze({ kind: 'spent' });
  const against = (lists: readonly (readonly Candidate[])[]) => choiceAgainst(grid, lists, claimed, bound);
  const choice = against(own.map((set) => set.members));
  if (choice.kind === 'too-large') return choice;
  const { cases } = choice;
  if (choice.kind === 'free') {
    const counterexample = Object.freeze([...choice.chosen].sort((a, b) => a - b));
    return Object.freeze({ kind: 'not-shown', counterexample, cases });
  }
  const hasLost = own.some((set) => set.lost.length > 0);
  const holdsAnyway = !hasLost || against(own.map((set) => [...set.members, ...set.lost])).kind === 'none';
  const assumesOneSolution = own.some((set) => set.assumes) || !holdsAnyway;
  const proof = Object.freeze({ conclusion: claimed, assumesOneSolution, takenAsRead: position.takenAsRead }) as Proof;
  proofs.set(proof, position);
  return Object.freeze({ kind: 'proved', proof, cases });
}

/** A choice of one candidate from every list that is free of conflicts and at odds with the conclusion. */
function choiceAgainst(grid: Grid, lists: readonly (readonly Candidate[])[], conclusion: Conclusion, bound: number) {
  if (conclusion.kind === 'impossible') return choose(grid, lists, [conclusion.candidate], bound);
  const { candidates } = conclusion;
  const without = lists.map((members) => members.filter((member) => !has(candidates, member)));
  return choose(grid, without, [], bound);
}

/** The position after these proofs, all of them made in it: what is impossible goes, what is placed removes what it sees. */
export function after(position: Position, proved: readonly Proof[]): Position {
  recordOf(position);
  let reached = position;
  for (const proof of proved) {
    if (proofs.get(proof) !== position) throw new Bug('a proof from another position');
    reached = changed(reached, proof.conclusion, proof);
  }
  return reached;
}

function changed(
  position: Position,
  conclusion: Conclusion,
  { assumesOneSolution, takenAsRead }: Assumptions,
): Position {
  const { grid, possible, goneByOneSolution } = position;
  const members = conclusion.kind === 'impossible' ? [] : membersOf(conclusion.candidates);
  const placed = setOf(grid, members.length === 1 ? members : []);
  const removed = setOf(grid, conclusion.kind === 'impossible' ? [conclusion.candidate] : []);
  const gone = membersOf(placed).reduce((all, each) => union(all, grid.conflicts[each]!), removed);
  const next = {
    ...position,
    possible: difference(possible, gone),
    placed: union(position.placed, placed),
    goneByOneSolution: assumesOneSolution
      ? union(goneByOneSolution, intersection(possible, gone))
      : difference(goneByOneSolution, gone),
    assumesOneSolution: position.assumesOneSolution || assumesOneSolution,
    takenAsRead,
  };
  return remember(next, position);
}

/** Whether the conclusion says nothing new. */
export function isRedundant(position: Position, conclusion: Conclusion): boolean {
  return conclusion.kind === 'impossible'
    ? !has(position.possible, conclusion.candidate)
    : overlaps(position.placed, conclusion.candidates);
}

/** The placement of one candidate, as a conclusion. */
export function oneOf(grid: Grid, candidate: Candidate): Conclusion {
  return { kind: 'one-of', candidates: setOf(grid, [candidate]) };
}

/** A copy that cannot be changed, each part read once. */
function fixedConclusion(grid: Grid, conclusion: Conclusion): Conclusion {
  if (conclusion.kind === 'impossible')
    return Object.freeze({ kind: 'impossible', candidate: inGrid(grid, conclusion.candidate) });
  const candidates = setOf(grid, membersOf(conclusion.candidates));
  if (isEmpty(candidates)) throw new Bug('one of no candidates');
  return Object.freeze({ kind: 'one-of', candidates });
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
  /** What else it would hold if nothing had assumed one solution. */
  readonly lost: readonly Candidate[];
  readonly assumes: boolean;
}

function remember(position: Made<Position>, earlier?: Position): Position {
  const kept = Object.freeze(position) as Position;
  positions.set(kept, { grid: position.grid, earlier, setsMade: new Map() });
  return kept;
}

function recordOf(position: Position): PositionRecord {
  const record = positions.get(position);
  if (record === undefined) throw new Bug('a position that the kernel did not make');
  return record;
}

function setFrom(
  position: Position,
  promised: readonly Candidate[],
  source: SetSource,
  assumes: boolean,
  key: number | undefined,
): OneOf {
  const members = promised.filter((each) => has(position.possible, each));
  const lost = promised.filter((each) => has(position.goneByOneSolution, each));
  if (members.length === 0)
    throw new Bug(`a set without members (${source.kind}): something untrue has entered the position`);
  const made = { members: setOf(position.grid, members), source: Object.freeze(source), assumesOneSolution: assumes };
  const set = Object.freeze(made) as OneOf;
  sets.set(set, { position, members, lost, assumes });
  if (key !== undefined) recordOf(position).setsMade.set(key, set);
  return set;
}

function madeIn(position: Position, set: OneOf): SetRecord {
  const record = sets.get(set);
  if (record?.position !== position) throw new Bug('a set from another position');
  return record;
}

function isProof(thing: Proof | Conclusion): thing is Proof {
  return proofs.has(thing);
}
