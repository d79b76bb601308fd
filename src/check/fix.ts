/**
 * What would fix conclusions that are true and not proved: a candidate that must go first, or a set that is missing.
 *
 * Everything here is a suggestion and goes through the kernel: a removal is suggested only if the claim holds when it
 * is evaluated again without that candidate; sets only if they prove the conclusion.
 */
import { type Candidate, has, membersOf } from '../grid/candidates.ts';
import { countOf } from '../grid/counting.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { isRedundant, type Position, prove, takeAsRead } from '../proof/kernel.ts';
import type { ProposedStep } from '../scene/step-text.ts';
import { type Eithers, givesAnArgument, type NamedSet } from './argument.ts';
import { type Claim, type Evaluated, evaluate } from './claim.ts';
import { missingSets, waysToComplete } from './missing-sets.ts';
import { isContradicted, type Truth } from './truth.ts';
import type { Fix, FixFor } from './verdict.ts';

/** Finds the simplest named argument that proves the conclusion in the position. */
export type FindArgument = (position: Position, conclusion: Conclusion) => ProposedStep | undefined;

export interface FixKnowledge {
  readonly eithers: Eithers;
  readonly truth: Truth;
  readonly find: FindArgument;
  /** The position when the step begins: what is put before the step must hold there. */
  readonly before: Position;
  /** Whether the given name fits the claim's argument; if not, the names that do. */
  readonly judge: (position: Position, evaluated: Evaluated) => { readonly fits: readonly string[] } | undefined;
}

/** At most this many fixes for each claim: the rest are found by the next check, once these are made. */
const fixesBound = 4;

/**
 * Fixes for these conclusions, each for as many of them as it helps. In the language's order of preference: a removal
 * that must come first and can be proved; a missing set; any other removal that must come first. False conclusions have
 * none.
 */
export function fixesOf(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: readonly Conclusion[],
  known: FixKnowledge,
): FixFor[] {
  let left = failing.filter((conclusion) => !isContradicted(known.truth, conclusion));
  const fixes: FixFor[] = [];
  while (left.length > 0 && fixes.length < fixesBound) {
    const found = givesAnArgument(claim.given)
      ? fixArgument(position, claim, evaluated, left, known)
      : proveApart(position, claim, left[0]!, known);
    const served = new Set(found?.conclusions ?? [printConclusion(position.grid, left[0]!)]);
    if (found !== undefined) fixes.push(found);
    left = left.filter((conclusion) => !served.has(printConclusion(position.grid, conclusion)));
  }
  return fixes;
}

/**
 * Every fix that might serve, for the one that spares the rest of the scene to be chosen: as `fixesOf`, but more of each
 * kind, and for all conclusions together as well as for the first alone.
 */
export function everyFixOf(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: readonly Conclusion[],
  known: FixKnowledge,
): FixFor[] {
  const left = failing.filter((conclusion) => !isContradicted(known.truth, conclusion));
  if (left.length === 0) return [];
  if (!givesAnArgument(claim.given))
    return left.slice(0, fixesBound).flatMap((conclusion) => proveApart(position, claim, conclusion, known) ?? []);
  const removals = removalsFirst(position, claim, evaluated, left, known, namesBound);
  const shown = removals.filter(({ fix }) => fix.kind === 'remove first' && fix.steps.length > 0);
  const [first, ...others] = left;
  const sets = [left, ...(others.length > 0 ? [[first!]] : [])].flatMap((conclusions) => {
    const ways = waysToComplete(position, evaluated.argument.sets, conclusions);
    return take(ways, fixesBound).map((sets): FixFor => furtherSetsFor(position, evaluated, sets, left));
  });
  return [...shown, ...sets];
}

function take<T>(from: Iterable<T>, count: number): T[] {
  const taken: T[] = [];
  for (const each of from) {
    taken.push(each);
    if (taken.length === count) break;
  }
  return taken;
}

/** What would fix links that do not hold, if the claim concludes nothing or is proved anyway. */
export function fixLinks(position: Position, claim: Claim, evaluated: Evaluated, known: FixKnowledge): Fix | undefined {
  const breakers = breakersOf(evaluated);
  const isUntrue = (candidate: Candidate) => !isContradicted(known.truth, { kind: 'impossible', candidate });
  if (breakers.length === 0 || !breakers.every(isUntrue)) return undefined;
  const reached = without(position, breakers);
  const again = evaluate(reached, claim, known.eithers);
  if (!isWhole(again)) return undefined;
  const names = known.judge(reached, again)?.fits;
  return { kind: 'remove first', candidates: breakers, steps: stepsRemoving(known, breakers), names };
}

/**
 * A set for a step that names none; a named argument for what is left out of a list or comes too early in a cascade.
 */
function proveApart(
  position: Position,
  claim: Claim,
  conclusion: Conclusion,
  { before, find }: FixKnowledge,
): FixFor | undefined {
  const conclusions = [printConclusion(position.grid, conclusion)];
  for (const [where, at] of [['before', before] as const, ['within', position] as const]) {
    const step = find(at, conclusion);
    if (step !== undefined) return { fix: { kind: 'prove it apart', step, where }, conclusions };
  }
  const sets = claim.origin === 'so' ? missingSets(position, [], [conclusion]) : undefined;
  return sets && { fix: { kind: 'name further sets', names: sets.map((set) => set.name) }, conclusions };
}

function fixArgument(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: readonly Conclusion[],
  known: FixKnowledge,
): FixFor | undefined {
  const removals = removalsFirst(position, claim, evaluated, failing, known);
  const shown = removals.find((removal) => removal.fix.kind === 'remove first' && removal.fix.steps.length > 0);
  return shown ?? furtherSets(position, evaluated, failing) ?? removals[0];
}

/** Sets that prove all the conclusions, or at least the first of them. */
function furtherSets(position: Position, evaluated: Evaluated, failing: readonly Conclusion[]): FixFor | undefined {
  const given = evaluated.argument.sets;
  const sets = missingSets(position, given, failing) ?? missingSets(position, given, failing.slice(0, 1));
  return sets && furtherSetsFor(position, evaluated, sets, failing);
}

/** These sets as a fix, for all that they prove. */
function furtherSetsFor(
  position: Position,
  evaluated: Evaluated,
  sets: readonly NamedSet[],
  failing: readonly Conclusion[],
): FixFor {
  const all = [...evaluated.argument.sets, ...sets].map((named) => named.set);
  const proved = failing.filter((conclusion) => prove(position, all, conclusion, proveBound).kind === 'proved');
  const conclusions = proved.map((conclusion) => printConclusion(position.grid, conclusion));
  return { fix: { kind: 'name further sets', names: sets.map((set) => set.name) }, conclusions };
}

const proveBound = 20_000;
/** At most this many helpful removals are proved by a named argument: each needs its own search. */
const stepsBound = 3;
/** At most this many are checked for the argument's name. */
const namesBound = 8;

/** Removals after which the argument holds, those that help the most conclusions first. */
function removalsFirst(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: readonly Conclusion[],
  known: FixKnowledge,
  bound = stepsBound,
): FixFor[] {
  const { eithers, truth } = known;
  const keys = failing.map((conclusion) => printConclusion(position.grid, conclusion));
  const isUntrue = (candidate: Candidate) => !isContradicted(truth, { kind: 'impossible', candidate });
  const served = removalsToTry(position, evaluated, failing).flatMap((candidates) => {
    if (!candidates.every(isUntrue)) return [];
    const reached = without(position, candidates);
    const again = evaluate(reached, claim, eithers);
    if (!isWhole(again)) return [];
    const proved = new Set(
      again.conclusions
        .filter((each) => each.outcome.kind === 'proved')
        .map((each) => printConclusion(position.grid, each.conclusion)),
    );
    const conclusions = keys.filter((key) => proved.has(key));
    return conclusions.length === 0 ? [] : [{ candidates, conclusions, reached, again }];
  });
  const most = served.toSorted((a, b) => b.conclusions.length - a.conclusions.length);
  const named = most
    .slice(0, namesBound)
    .map((each) => ({ ...each, names: known.judge(each.reached, each.again)?.fits }));
  // Among those that help equally many, those that leave the argument its name come first.
  const best = named.toSorted(
    (a, b) =>
      b.conclusions.length - a.conclusions.length || Number(a.names !== undefined) - Number(b.names !== undefined),
  );
  return best.map(({ candidates, conclusions, names }, index) => {
    const steps = index < bound ? stepsRemoving(known, candidates) : [];
    return { fix: { kind: 'remove first', candidates, steps, names }, conclusions };
  });
}

function isWhole({ argument }: Evaluated): boolean {
  return argument.links.every((link) => link.holds) && argument.faults.length === 0;
}

function without(position: Position, candidates: readonly Candidate[]): Position {
  return candidates.reduce((at, candidate) => takeAsRead(at, { kind: 'impossible', candidate }), position);
}

function breakersOf(evaluated: Evaluated): Candidate[] {
  const broken = evaluated.argument.links.filter((link) => !link.holds && link.kind === 'strong');
  return [...new Set(broken.flatMap((link) => link.brokenBy))];
}

/** All the candidates that break the links, together; then each member of the sets on its own. */
function removalsToTry({ placed }: Position, evaluated: Evaluated, failing: readonly Conclusion[]): Candidate[][] {
  const breakers = breakersOf(evaluated);
  const own = new Set(
    failing.flatMap((conclusion) => (conclusion.kind === 'impossible' ? [conclusion.candidate] : [])),
  );
  const open = evaluated.argument.sets.filter((named) => countOf(named.set.members) > 1);
  const members = open.flatMap((named) => membersOf(named.set.members));
  const alone = [...new Set(members)].filter((candidate) => !own.has(candidate) && !has(placed, candidate));
  const isSmall = alone.length <= 60; // nobody teaches an argument with more members
  return [...(breakers.length > 0 ? [breakers] : []), ...(isSmall ? alone.map((candidate) => [candidate]) : [])];
}

/**
 * Named arguments that remove the candidates one after the other before the step; empty if one of them has no such
 * argument.
 */
function stepsRemoving({ before, find }: FixKnowledge, candidates: readonly Candidate[]): ProposedStep[] {
  const steps: ProposedStep[] = [];
  let at = before;
  for (const candidate of candidates) {
    const conclusion: Conclusion = { kind: 'impossible', candidate };
    if (isRedundant(at, conclusion)) continue;
    const step = find(at, conclusion);
    if (step === undefined) return [];
    steps.push(step);
    at = takeAsRead(at, conclusion);
  }
  return steps;
}
