/**
 * What would mend a conclusion that is true and not proved: a candidate that must go first, or a set that is missing.
 *
 * Everything here is a suggestion and goes through the kernel: a removal is suggested only if the claim, looked at
 * again in the position without that candidate, holds; sets only if they prove the conclusion.
 */
import { type Candidate, countOf, has, membersOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { type Position, takeAsRead } from '../proof/kernel.ts';
import { type Eithers, givesAnArgument } from './argument.ts';
import { type Claim, type Evaluated, type EvaluatedConclusion, evaluate } from './claim.ts';
import { missingSets } from './missing-sets.ts';
import { isContradicted, type Truth } from './truth.ts';

/** A step that could stand before another: its lines of a scene, by key. */
export interface ProposedStep {
  /** The argument's name. */
  readonly because: string;
  readonly from: string | undefined;
  readonly chain: string | undefined;
  readonly deadly: string | undefined;
  readonly so: string;
}

export type Mend =
  | {
      readonly kind: 'remove first';
      readonly candidates: readonly Candidate[];
      /** The simplest named arguments that remove them, in order; empty where none was found. */
      readonly steps: readonly ProposedStep[];
    }
  | { readonly kind: 'name further sets'; readonly names: readonly string[] };

/** Finds the simplest named argument that proves the conclusion in the position. */
export type FindArgument = (position: Position, conclusion: Conclusion) => ProposedStep | undefined;

/** A mend of the conclusion, in the order of preference of the language; undefined where none was found. */
export function mendOf(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: EvaluatedConclusion,
  known: { readonly eithers: Eithers; readonly truth: Truth; readonly find: FindArgument },
): Mend | undefined {
  if (isContradicted(known.truth, failing.conclusion)) return undefined;
  if (!givesAnArgument(claim.given)) return mendWithoutArgument(position, claim, failing, known.find);
  const removal = removalFirst(position, claim, evaluated, failing, known);
  if (removal !== undefined) return removal;
  const sets = missingSets(position, failing.sets, failing.conclusion);
  return sets === undefined ? undefined : { kind: 'name further sets', names: sets.map((set) => set.name) };
}

/** Where nothing was named: an argument by name, told as a step of its own; for `so` a set that would do. */
function mendWithoutArgument(
  position: Position,
  claim: Claim,
  { conclusion }: EvaluatedConclusion,
  find: FindArgument,
): Mend | undefined {
  if (claim.origin === 'so') {
    const sets = missingSets(position, [], conclusion);
    if (sets !== undefined) return { kind: 'name further sets', names: sets.map((set) => set.name) };
  }
  const step = find(position, conclusion);
  if (step === undefined) return undefined;
  const candidates = conclusion.kind === 'impossible' ? [conclusion.candidate] : membersOf(conclusion.candidates);
  return { kind: 'remove first', candidates, steps: [step] };
}

function removalFirst(
  position: Position,
  claim: Claim,
  evaluated: Evaluated,
  failing: EvaluatedConclusion,
  { eithers, truth, find }: { readonly eithers: Eithers; readonly truth: Truth; readonly find: FindArgument },
): Mend | undefined {
  const key = printConclusion(position.grid, failing.conclusion);
  const holdsWithout = (candidates: readonly Candidate[]) => {
    const without = candidates.reduce((at, candidate) => takeAsRead(at, { kind: 'impossible', candidate }), position);
    const again = evaluate(without, claim, eithers);
    const isWhole = again.argument.links.every((link) => link.holds) && again.argument.faults.length === 0;
    return (
      isWhole &&
      again.conclusions.some(
        (each) => each.outcome.kind === 'proved' && printConclusion(position.grid, each.conclusion) === key,
      )
    );
  };
  const isUntrue = (candidate: Candidate) => !isContradicted(truth, { kind: 'impossible', candidate });
  const found = removalsToTry(position, evaluated, failing)
    .filter((candidates) => candidates.every(isUntrue) && holdsWithout(candidates))
    .map((candidates) => ({
      kind: 'remove first' as const,
      candidates,
      steps: stepsRemoving(position, candidates, find),
    }));
  return found.find((mend) => mend.steps.length > 0) ?? found[0];
}

/** What breaks the links, all together; then each member of the sets alone. */
function removalsToTry({ placed }: Position, evaluated: Evaluated, failing: EvaluatedConclusion): Candidate[][] {
  const broken = evaluated.argument.links.filter((link) => !link.holds && link.kind === 'strong');
  const breakers = [...new Set(broken.flatMap((link) => link.brokenBy))];
  const own = failing.conclusion.kind === 'impossible' ? failing.conclusion.candidate : undefined;
  const members = failing.sets
    .filter((named) => countOf(named.set.members) > 1)
    .flatMap((named) => membersOf(named.set.members));
  const alone = [...new Set(members)].filter((candidate) => candidate !== own && !has(placed, candidate));
  const isSmall = alone.length <= 60; // an argument with more members is taught by nobody
  return [...(breakers.length > 0 ? [breakers] : []), ...(isSmall ? alone.map((candidate) => [candidate]) : [])];
}

/** Named arguments that remove the candidates one after the other; none if one of them has no such argument. */
function stepsRemoving(position: Position, candidates: readonly Candidate[], find: FindArgument): ProposedStep[] {
  const steps: ProposedStep[] = [];
  let at = position;
  for (const candidate of candidates) {
    const conclusion: Conclusion = { kind: 'impossible', candidate };
    const step = find(at, conclusion);
    if (step === undefined) return [];
    steps.push(step);
    at = takeAsRead(at, conclusion);
  }
  return steps;
}
