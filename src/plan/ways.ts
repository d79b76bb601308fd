/**
 * All named arguments in a position, or all that prove one of some conclusions there: what an author may choose from.
 */
import { type Candidate, difference, has, intersection, membersOf, union } from '../grid/candidates.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isRedundant, type OneOf, type Position, prove } from '../proof/kernel.ts';
import { type ArgumentName, techniqueNamed } from '../techniques/all-techniques.ts';
import type { NameCost, TeachingCosts } from '../techniques/teaching.ts';
import type { Instance } from '../techniques/technique.ts';
import { argumentKey, moveOf, provedBy } from './move.ts';
import { costOf, isLess, leastCostOf } from './teaching.ts';

export interface WaysRequest {
  readonly costs: TeachingCosts;
  /** What is to be proved; if empty, anything that can be. */
  readonly wanted: readonly Conclusion[];
  readonly keepGoing: () => boolean;
}

export interface Way {
  readonly name: ArgumentName;
  /** Further names of the table that fit the same argument, as far as it was found under them. */
  readonly otherNames: readonly ArgumentName[];
  readonly cost: number;
  readonly instance: Instance;
  /** Of what is wanted. */
  readonly proves: readonly Conclusion[];
  /** What else it proves: removals, and placements that the finder gave. */
  readonly others: readonly Conclusion[];
}

export interface Ways {
  /** Those that prove everything wanted first, then by cost. */
  readonly found: readonly Way[];
  /** False if time ran out before every name was searched. */
  readonly finished: boolean;
}

/** How many instances of a name are tried, for each conclusion. */
const instanceBound = 2_000;

export function waysIn(position: Position, request: WaysRequest): Ways {
  const { costs, keepGoing } = request;
  const wanted = request.wanted.filter((conclusion) => !isRedundant(position, conclusion));
  const found = new Map<string, Way>();
  let finished = true;
  for (const name of everyName(costs)) {
    if (!keepGoing()) {
      finished = false;
      break;
    }
    for (const instance of instancesFor(position, name, wanted, keepGoing)) {
      const move = moveOf(
        name.name,
        costs.free.includes(name.name) ? 0 : costOf(costs, name, instance.sets.length),
        instance,
      );
      if (move === undefined) continue;
      const key = argumentKey(move);
      const known = found.get(key);
      if (known !== undefined) {
        if (known.name !== name.name && !known.otherNames.includes(name.name))
          found.set(key, { ...known, otherNames: [...known.otherNames, name.name] });
        continue;
      }
      const way = wayOf(position, name.name, move.cost, instance, request.wanted.length === 0 ? undefined : wanted);
      if (way !== undefined) found.set(key, way);
    }
  }
  const isWhole = (way: Way) => way.proves.length === wanted.length;
  const sorted = [...found.values()].sort(
    (a, b) => Number(isWhole(b)) - Number(isWhole(a)) || (isLess(a.cost, b.cost) ? -1 : isLess(b.cost, a.cost) ? 1 : 0),
  );
  return { found: sorted, finished };
}

/** Free names too, before all others. */
function everyName(costs: TeachingCosts): readonly NameCost[] {
  const free = costs.free.map((name): NameCost => ({ name, cost: 0, sets: 1, each: 0 }));
  const others = costs.names.filter(({ name }) => !costs.free.includes(name));
  return [...free, ...others.toSorted((a, b) => leastCostOf(costs, a) - leastCostOf(costs, b))];
}

/** Searched with each conclusion separately, since an argument may prove only one of them. */
function* instancesFor(
  position: Position,
  { name }: NameCost,
  wanted: readonly Conclusion[],
  keepGoing: () => boolean,
): Generator<Instance> {
  const find = techniqueNamed(name).find;
  if (find === undefined) return;
  const asked = wanted.length === 0 ? [undefined] : wanted.map((each) => [each]);
  for (const each of asked) {
    let left = instanceBound;
    for (const instance of find(position, each)) {
      if (--left < 0 || !keepGoing()) break;
      yield instance;
    }
  }
}

function wayOf(
  position: Position,
  name: ArgumentName,
  cost: number,
  instance: Instance,
  wanted: readonly Conclusion[] | undefined,
): Way | undefined {
  const proves = provedBy(position, instance.sets, wanted ?? []).map((proof) => proof.conclusion);
  if (wanted !== undefined && proves.length === 0) return undefined;
  const isAsked = new Set(proves.map(keyOf));
  const stated = provedBy(position, instance.sets, instance.conclusions).map((proof) => proof.conclusion);
  const all = [...stated.filter((each) => each.kind === 'one-of'), ...removalsBy(position, instance.sets)];
  const others = all.filter((each) => !isAsked.has(keyOf(each)));
  if (wanted === undefined && others.length === 0) return undefined;
  return { name, otherNames: [], cost, instance, proves, others };
}

/** How many candidates a proof of a further removal may try. */
const removalBound = 20_000;

/** Every removal that the sets prove: of what conflicts with some member, or is one. */
function removalsBy(position: Position, sets: readonly OneOf[]): Conclusion[] {
  const { grid, possible, placed } = position;
  const members = sets.map((set) => set.members).reduce(union);
  const near = membersOf(members).map((member) => grid.conflicts[member]!);
  const touched = difference(intersection(possible, [members, ...near].reduce(union)), placed);
  const isGone = (candidate: Candidate) =>
    prove(position, sets, { kind: 'impossible', candidate }, removalBound).kind === 'proved';
  return membersOf(touched)
    .filter((candidate) => has(possible, candidate) && isGone(candidate))
    .map((candidate) => ({ kind: 'impossible', candidate }));
}

function keyOf(conclusion: Conclusion): string {
  return conclusion.kind === 'impossible' ? `-${conclusion.candidate}` : membersOf(conclusion.candidates).join();
}
