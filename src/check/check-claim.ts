/**
 * A claim in the position reached: the kernel's outcome of each conclusion becomes a verdict with its reasons.
 */
import { Bug } from '../grid/bug.ts';
import { intersection, membersOf } from '../grid/candidates.ts';
import { printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import { oneOf, type Position } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import { type Eithers, nameOfSet } from './argument.ts';
import { type Claim, type Evaluated, type EvaluatedConclusion, evaluate } from './claim.ts';
import { explainConclusion, inWords } from './explain.ts';
import { judgeGivenName } from './name.ts';
import { type Failure, stepsRestedOn } from './rests-on.ts';
import { findSingle } from './singles.ts';
import { isContradicted } from './truth.ts';
import type { Argument, CheckedConclusion } from './verdict.ts';
import { enter, type Walk } from './walk.ts';

export interface CheckedClaim {
  readonly claim: Claim;
  readonly position: Position;
  readonly evaluated: Evaluated;
  readonly conclusions: readonly CheckedConclusion[];
  readonly inheritsOneSolution: boolean;
  /** The either/ors known when the claim was made. */
  readonly eithers: Eithers;
}

/** Judges a claim in the position reached and enters what it proves (nothing if the step is meant to fail). */
export function checkClaim(walk: Walk, step: Step, claim: Claim): CheckedClaim {
  const { position } = walk;
  const eithers = new Map(walk.eithers);
  const evaluated = evaluate(position, claim, eithers);
  const failuresBefore = [...walk.failures];
  const because = claim.origin === 'cascade' ? step.cascade[claim.item]?.because : undefined;
  const name = judgeGivenName(position, because, claim, evaluated);
  const conclusions = evaluated.conclusions.map((each) => ({
    ...checkConclusion(walk, step, claim, evaluated, each, step.fails ? [] : failuresBefore),
    name,
  }));
  const inheritsOneSolution = !step.fails && restsOnOneSolution(evaluated);
  if (!step.fails) {
    enter(walk, step, evaluated);
    for (const { verdict, conclusion } of conclusions) {
      if (verdict === 'proved' || verdict === 'redundant') continue;
      walk.failures.push({ step: step.id, conclusion, isFalse: verdict === 'false' });
    }
  }
  return { claim, position, evaluated, conclusions, inheritsOneSolution, eithers };
}

/** Whether a proof assumes one solution only because an earlier step did, and not by guardians of its own. */
function restsOnOneSolution({ argument, conclusions }: Evaluated): boolean {
  if (argument.sets.some(({ set }) => set.source.kind === 'guardians')) return false;
  return conclusions.some(({ outcome }) => outcome.kind === 'proved' && outcome.proof.assumesOneSolution);
}

function checkConclusion(
  walk: Walk,
  step: Step,
  claim: Claim,
  evaluated: Evaluated,
  each: EvaluatedConclusion,
  failures: readonly Failure[],
): CheckedConclusion {
  const { grid } = walk.position;
  const { outcome, conclusion } = each;
  const base = {
    origin: claim.origin,
    item: claim.item,
    conclusion,
    text: printConclusion(grid, conclusion),
    restsOn: [],
    cases: outcome.kind === 'proved' || outcome.kind === 'not-shown' ? outcome.cases : 0,
    counterexample: undefined,
    message: '',
    argument: claim.origin === 'so' ? undefined : { ...argumentOf([each]), links: evaluated.argument.links },
    name: undefined,
  } as const;
  if (outcome.kind === 'spent') return { ...base, verdict: 'redundant' };
  const contradicted = isContradicted(walk.truth, conclusion);
  if (outcome.kind === 'proved') {
    if (contradicted) throw new Bug(`${base.text} was proved, and a solution of the puzzle contradicts it`);
    return { ...base, verdict: 'proved' };
  }
  const key = base.text;
  const restsOn = stepsRestedOn(walk.position, claim, walk.eithers, failures, (again) => {
    const same = again.conclusions.filter((other) => printConclusion(grid, other.conclusion) === key);
    if (same.some((other) => other.outcome.kind === 'proved')) return true;
    // With the missing parts proved, a true conclusion might become redundant, or a list might no longer leave it out.
    return !contradicted && same.every((other) => other.outcome.kind === 'spent');
  });
  const named = (id: string) => (id === step.id ? 'what comes before it in this step' : id);
  const why = explainConclusion(grid, claim, each, {
    isFalse: contradicted,
    severalSolutions: walk.truth.solutions.length > 1,
    faults: evaluated.argument.faults.map((fault) => fault.message),
    brokenLinks: evaluated.argument.links.filter((link) => !link.holds),
    instead: contradicted ? placedInstead(walk, conclusion) : undefined,
    placed: walk.position.placed,
  });
  return {
    ...base,
    verdict: contradicted ? 'false' : 'unproved',
    restsOn,
    counterexample: outcome.kind === 'not-shown' ? outcome.counterexample : undefined,
    message: restsOn.length === 0 ? why : `${why}; it would hold if ${inWords(restsOn.map(named))} were proved`,
  };
}

/**
 * For a digit in a wrong cell: what a single places there, or where a single places the digit. Mostly a typing mistake.
 */
function placedInstead({ position, truth }: Walk, conclusion: Conclusion): string | undefined {
  const { grid } = position;
  const [wrong, ...others] = conclusion.kind === 'one-of' ? membersOf(conclusion.candidates) : [];
  const [solution, second] = truth.solutions;
  if (wrong === undefined || others.length > 0 || solution === undefined || second !== undefined) return undefined;
  // Another digit in the cell, or the digit in a peer: what conflicts with the wrong placement and is true.
  const found = membersOf(intersection(solution, grid.conflicts[wrong]!)).flatMap((candidate) => {
    const placement = oneOf(grid, candidate);
    const single = findSingle(position, placement, 'singles');
    return single === undefined
      ? []
      : [`${printConclusion(grid, placement)} (a single: ${nameOfSet(grid, single.set)})`];
  });
  return found.length === 0 ? undefined : inWords(found, 'or');
}

/** The sets with which these conclusions were tried, each once. */
export function argumentOf(conclusions: readonly EvaluatedConclusion[]): Argument {
  const sets = new Map(conclusions.flatMap((each) => each.sets.map(({ name, set }) => [name, set.members] as const)));
  return {
    found: conclusions.some((each) => each.found),
    others: Math.max(0, ...conclusions.map((each) => each.others)),
    sets: [...sets].map(([name, members]) => ({ name, members })),
    links: [],
  };
}
