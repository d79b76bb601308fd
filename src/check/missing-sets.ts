/**
 * The sets that an argument lacks: one or two further sets that would prove the conclusion.
 *
 * Guided by the counterexample: one of the new sets must rule it out, so only sets that do are tried. Two sets that
 * rule it out only together are not searched for.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import type { Grid } from '../grid/grid.ts';
import type { Conclusion } from '../grid/terms.ts';
import { digitsIn, type OneOf, type Position, placesIn, prove } from '../proof/kernel.ts';
import { type NamedSet, nameOfSet } from './argument.ts';

/** Beyond this many tries the search gives up: the result is only a suggestion. */
const triesBound = 4_000;
const proveBound = 20_000;

/**
 * The fewest further sets (one or two) that prove all the conclusions together with these; the smallest if there are
 * several.
 */
export function missingSets(
  position: Position,
  sets: readonly NamedSet[],
  conclusions: readonly Conclusion[],
): NamedSet[] | undefined {
  for (const found of waysToComplete(position, sets, conclusions)) return found;
  return undefined;
}

/** Every way to complete them by one further set, the smallest first, then by two. */
export function* waysToComplete(
  position: Position,
  sets: readonly NamedSet[],
  conclusions: readonly Conclusion[],
): Generator<NamedSet[]> {
  const { grid } = position;
  const [conclusion] = conclusions;
  if (conclusion === undefined) return;
  const given = sets.map((named) => named.set);
  const all = allSets(position);
  const tries = { left: triesBound };
  const first = setsThatCatch(position, all, given, conclusion, tries);
  for (const set of first) if (proves(position, [...given, set], conclusions)) yield named(grid, [set]);
  for (const set of first) {
    const second = setsThatCatch(position, all, [...given, set], conclusion, tries);
    for (const other of second) {
      if (tries.left-- <= 0) return;
      if (proves(position, [...given, set, other], conclusions)) yield named(grid, [set, other]);
    }
  }
}

function proves(position: Position, sets: readonly OneOf[], conclusions: readonly Conclusion[]): boolean {
  return conclusions.every((conclusion) => prove(position, sets, conclusion, proveBound).kind === 'proved');
}

/** Every set of a cell or house with more than one member, the smallest first. */
function allSets(position: Position): OneOf[] {
  const { grid } = position;
  const sets = [
    ...grid.houses.flatMap((house) => grid.digits.map((digit) => placesIn(position, digit, house))),
    ...grid.cells.map((cell) => digitsIn(position, cell)),
  ];
  const sizes = new Map(sets.map((set) => [set, countOf(set.members)]));
  return sets.filter((set) => sizes.get(set)! > 1).sort((a, b) => sizes.get(a)! - sizes.get(b)!);
}

/** The sets that have no candidate left given the counterexample to these. */
function setsThatCatch(
  position: Position,
  all: readonly OneOf[],
  sets: readonly OneOf[],
  conclusion: Conclusion,
  tries: { left: number },
): OneOf[] {
  tries.left--;
  const outcome = prove(position, sets, conclusion, proveBound);
  if (outcome.kind !== 'not-shown') return [];
  const { counterexample } = outcome;
  const taken = conclusion.kind === 'impossible' ? [...counterexample, conclusion.candidate] : counterexample;
  return all.filter((set) =>
    membersOf(set.members).every((member) => isCaught(position.grid, member, taken, conclusion)),
  );
}

function isCaught(grid: Grid, member: Candidate, taken: readonly Candidate[], conclusion: Conclusion): boolean {
  if (conclusion.kind === 'one-of' && has(conclusion.candidates, member)) return true;
  return taken.some((candidate) => has(grid.conflicts[candidate]!, member));
}

function named(grid: Grid, sets: readonly OneOf[]): NamedSet[] {
  return sets.map((set) => ({ name: nameOfSet(grid, set), set }));
}
