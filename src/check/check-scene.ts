/**
 * Walks a scene step by step: asks the kernel about each claim, lets what is proved enter the position, and says of the
 * rest why it did not.
 */
import { Bug } from '../grid/bug.ts';
import { membersOf } from '../grid/candidates.ts';
import { candidateAt } from '../grid/grid.ts';
import { printCandidate, printConclusion } from '../grid/notation/print.ts';

import { after, begin, type Position, type Proof, takeAsRead } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Scene, Step } from '../scene/scene.ts';
import { missedRemovals, unneededSets } from './advice.ts';
import { givesAnArgument } from './argument.ts';
import { type Claim, claimsOf, type Evaluated, type EvaluatedConclusion, evaluate } from './claim.ts';
import { explainConclusion, explainLink, inWords } from './explain.ts';
import { judgeMarks } from './marks.ts';
import { type Failure, stepsRestedOn } from './rests-on.ts';
import { isContradicted, type Truth, truthOf } from './truth.ts';
import { type Argument, type CheckedConclusion, type CheckedScene, type CheckedStep, type Verdict, verdicts } from './verdict.ts';

/** Proves or rejects every claim of the scene. The puzzle has at least one solution, or the scene would not have been read. */
export function checkScene(scene: Scene): CheckedScene {
  const { puzzle } = scene;
  const { grid } = puzzle;
  const truth = truthOf(puzzle);
  const givens = grid.cells.flatMap((cell) => {
    const digit = puzzle.givens[cell];
    return digit === undefined ? [] : [candidateAt(grid, cell, digit)];
  });
  const oneSolution = truth.solutions.length === 1 && puzzle.uniqueness === 'allowed';
  const takenAsRead = puzzle.start.map((located) => located.value);
  const start = takenAsRead.reduce(takeAsRead, begin(grid, givens, { oneSolution }));

  const walk: Walk = {
    truth,
    position: start,
    eithers: new Map(),
    failures: [],
    withoutAssuming: undefined,
    diagnostics: [],
    restingSteps: new Set(),
  };
  const steps = scene.steps.map((step) => checkStep(walk, step));
  const unsound = steps.filter((step) => !step.sound).map((step) => step.step.id);
  const toMend = unsound.filter((id) => !walk.restingSteps.has(id));
  return {
    scene,
    solutions: truth.solutions.length === 0 ? 0 : truth.solutions.length === 1 ? 1 : 2,
    takenAsRead,
    steps,
    sound: unsound.length === 0,
    summary: { steps: steps.length, toMend, restOnThem: unsound.length - toMend.length },
    errors: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'error'),
    warnings: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'warning'),
  };
}

interface Lineage {
  position: Position;
  /** What each step proved as an either/or. */
  readonly eithers: Map<string, Proof>;
}

interface Walk extends Lineage {
  readonly truth: Truth;
  readonly failures: Failure[];
  /** The same scene without anything that assumes one solution; kept once something does. */
  withoutAssuming: Lineage | undefined;
  readonly diagnostics: Diagnostic[];
  /** Unsound steps that would be sound if earlier ones were. */
  readonly restingSteps: Set<string>;
}

function checkStep(walk: Walk, step: Step): CheckedStep {
  const before = walk.position;
  const failuresBefore = [...walk.failures];
  const claims = claimsOf(step);
  const checked = claims.map((claim) => checkClaim(walk, step, claim));
  const conclusions = checked.flatMap((each) => each.conclusions);
  const verdict = worstOf(conclusions.map((conclusion) => conclusion.verdict));
  const main = checked.find((each) => each.claim.origin === 'so');
  const argument = main?.evaluated.argument;
  const allLinks = checked.flatMap((each) => each.evaluated.argument.links);
  const argumentFaults = checked.flatMap((each) => each.evaluated.argument.faults);
  const faults = argumentFaults.map((fault) => fault.message);
  if (step.fails) {
    const held = conclusions.filter((conclusion) => conclusion.verdict === 'proved').map((conclusion) => conclusion.text);
    if (held.length > 0) faults.push(`the step is marked \`fails: true\`, but its argument does prove ${inWords(held)}`);
    if (conclusions.length === 0) faults.push('the step is marked `fails: true`, but it concludes nothing that could fail');
  }
  const sound = step.fails
    ? conclusions.length > 0 && !conclusions.some((conclusion) => conclusion.verdict === 'proved')
    : faults.length === 0 &&
      allLinks.every((link) => link.holds) &&
      conclusions.every((conclusion) => conclusion.verdict === 'proved' || conclusion.verdict === 'spent');
  if (!sound && !step.fails && restsWholly(before, checked, failuresBefore)) walk.restingSteps.add(step.id);
  walk.diagnostics.push(...warningsOf(step, checked), ...judgeMarks(step, before, walk.position));

  const sets = main === undefined ? [] : setsTried(main.evaluated);
  const proved = (main?.evaluated.conclusions ?? []).filter((each) => each.outcome.kind === 'proved').map((each) => each.conclusion);
  const isRemovalsOnly = conclusions.length > 0 && conclusions.every((each) => each.origin === 'so' && each.conclusion.kind === 'impossible');
  return {
    step,
    verdict,
    sound,
    assumesOneSolution: checked.some((each) => each.evaluated.argument.assumesOneSolution),
    inheritsOneSolution: checked.some((each) => each.inheritsOneSolution),
    name: step.because === undefined ? undefined : { given: step.because.written, judged: 'not judged', fits: [] },
    argument: { found: main?.evaluated.conclusions.some((each) => each.found) ?? false, sets },
    links: allLinks,
    conclusions,
    unneeded: step.fails || argument === undefined ? [] : unneededSets(before, argument.sets, proved).map((set) => set.name),
    missed: step.fails || argument === undefined || !isRemovalsOnly ? [] : missedRemovals(before, argument.sets, conclusions.map((each) => each.conclusion)),
    stale: checked.flatMap((each) => each.evaluated.stale),
    faults,
    message: sound ? '' : messageOf(step, faults, allLinks.filter((link) => !link.holds).map((link) => explainLink(before.grid, link)), conclusions),
    possibleBefore: before.possible,
    placedBefore: before.placed,
  };
}

interface CheckedClaim {
  readonly claim: Claim;
  readonly position: Position;
  readonly evaluated: Evaluated;
  readonly conclusions: readonly CheckedConclusion[];
  readonly inheritsOneSolution: boolean;
  /** The either/ors known when the claim was made. */
  readonly eithers: ReadonlyMap<string, Proof>;
}

/** Judges a claim in the position reached and lets what it proves enter (nothing, if it is meant to fail). */
function checkClaim(walk: Walk, step: Step, claim: Claim): CheckedClaim {
  const { position } = walk;
  const eithers = new Map(walk.eithers);
  const evaluated = evaluate(position, claim, eithers);
  const failuresBefore = [...walk.failures];
  const conclusions = evaluated.conclusions.map((each) =>
    checkConclusion(walk, claim, evaluated, each, step.fails ? [] : failuresBefore),
  );
  let inheritsOneSolution = false;
  if (!step.fails) {
    inheritsOneSolution = enter(walk, step, claim, evaluated);
    for (const [index, { verdict, conclusion }] of conclusions.entries()) {
      if (verdict === 'proved' || verdict === 'spent') continue;
      const known = evaluated.conclusions[index]!.conclusion;
      walk.failures.push({ step: step.id, conclusion: known ?? conclusion, isFalse: verdict === 'false' });
    }
  }
  return { claim, position, evaluated, conclusions, inheritsOneSolution, eithers };
}

/** Lets the proofs enter; says whether any of them hangs on an earlier step that assumes one solution. */
function enter(walk: Walk, step: Step, claim: Claim, evaluated: Evaluated): boolean {
  const proofs = proofsOf(evaluated);
  const assumes = proofs.some((proof) => proof.assumesOneSolution);
  if (assumes) walk.withoutAssuming ??= { position: walk.position, eithers: new Map(walk.eithers) };
  let inherits = false;
  if (walk.withoutAssuming !== undefined) {
    const beside = walk.withoutAssuming;
    const again = assumes ? [] : proofsOf(evaluate(beside.position, claim, beside.eithers));
    const stillProved = new Set(again.map((proof) => printConclusion(walk.position.grid, proof.conclusion)));
    const goneThere = (proof: Proof) => stillProved.has(printConclusion(walk.position.grid, proof.conclusion));
    inherits = !assumes && !proofs.every(goneThere);
    enterInto(beside, step, again);
  }
  enterInto(walk, step, proofs);
  return inherits;
}

function enterInto(lineage: Lineage, step: Step, proofs: readonly Proof[]): void {
  for (const proof of proofs) {
    const { conclusion } = proof;
    if (conclusion.kind === 'one-of' && membersOf(conclusion.candidates).length > 1 && !lineage.eithers.has(step.id)) {
      lineage.eithers.set(step.id, proof);
    }
  }
  lineage.position = after(lineage.position, proofs);
}

function proofsOf(evaluated: Evaluated): Proof[] {
  return evaluated.conclusions.flatMap(({ outcome }) => (outcome.kind === 'proved' ? [outcome.proof] : []));
}

function checkConclusion(
  walk: Walk,
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
    argument: claim.origin === 'so' ? undefined : argumentOf([each]),
  } as const;
  if (outcome.kind === 'spent') return { ...base, verdict: 'spent' };
  const contradicted = isContradicted(walk.truth, conclusion);
  if (outcome.kind === 'proved') {
    if (contradicted) throw new Bug(`${base.text} was proved, and a solution of the puzzle contradicts it`);
    return { ...base, verdict: 'proved' };
  }
  const key = base.text;
  const restsOn = stepsRestedOn(walk.position, claim, walk.eithers, failures, (again) =>
    again.conclusions.some((other) => other.outcome.kind === 'proved' && printConclusion(grid, other.conclusion) === key),
  );
  const why = explainConclusion(grid, claim, each, {
    isFalse: contradicted,
    severalSolutions: walk.truth.solutions.length > 1,
    faults: evaluated.argument.faults.map((fault) => fault.message),
    brokenLinks: evaluated.argument.links.filter((link) => !link.holds),
  });
  return {
    ...base,
    verdict: contradicted ? 'false' : 'unproved',
    restsOn,
    counterexample: outcome.kind === 'not-shown' ? outcome.counterexample : undefined,
    message: restsOn.length === 0 ? why : `${why}; it would hold if ${inWords(restsOn)} were proved`,
  };
}

/** Whether everything that is wrong with the step would be right if earlier steps were. */
function restsWholly(before: Position, checked: readonly CheckedClaim[], failures: readonly Failure[]): boolean {
  return checked.every(({ claim, evaluated, conclusions, eithers }) => {
    const failing = conclusions.filter((each) => each.verdict === 'false' || each.verdict === 'unproved');
    if (failing.some((each) => each.restsOn.length === 0)) return false;
    if (isUnbroken(evaluated)) return true;
    return stepsRestedOn(before, claim, eithers, failures, isUnbroken).length > 0;
  });
}

function isUnbroken({ argument }: Evaluated): boolean {
  return argument.faults.length === 0 && argument.links.every((link) => link.holds);
}

function worstOf(all: readonly Verdict[]): Verdict {
  return verdicts.find((verdict) => all.includes(verdict)) ?? 'none';
}

function argumentOf(conclusions: readonly EvaluatedConclusion[]): Argument {
  const sets = new Map(conclusions.flatMap((each) => each.sets.map(({ name, set }) => [name, set.members] as const)));
  return {
    found: conclusions.some((each) => each.found),
    sets: [...sets].map(([name, members]) => ({ name, members })),
  };
}

function setsTried(evaluated: Evaluated): Argument['sets'] {
  const given = evaluated.argument.sets.map(({ name, set }) => ({ name, members: set.members }));
  return given.length > 0 ? given : argumentOf(evaluated.conclusions).sets;
}

function warningsOf(step: Step, checked: readonly CheckedClaim[]): Diagnostic[] {
  const warnings: Diagnostic[] = [];
  const warn = (code: string, span: Diagnostic['span'], message: string) => warnings.push({ code, severity: 'warning', span, message });
  for (const { claim, position, evaluated, conclusions } of checked) {
    const span = spanOf(step, claim);
    for (const idle of evaluated.argument.idleCells) warn('idle-cell', idle.span, idle.text);
    const spent = conclusions.filter((each) => each.verdict === 'spent').map((each) => each.text);
    if (spent.length > 0) warn('spent', span, `${inWords(spent)} ${spent.length === 1 ? 'says' : 'say'} nothing new: it is so already, and nothing is drawn for it`);
    const stale = evaluated.stale.map((candidate) => printCandidate(position.grid, candidate));
    if (stale.length > 0) warn('stale', span, `${inWords(stale)} ${stale.length === 1 ? 'is' : 'are'} listed but not possible any more`);
    if (claim.concludes.kind === 'all' && conclusions.length === 0 && givesAnArgument(claim.given)) {
      warn('nothing-proved', span, '`so: all` stands for no removal here: the argument proves none');
    }
  }
  return warnings;
}

function spanOf(step: Step, claim: Claim): Diagnostic['span'] {
  switch (claim.origin) {
    case 'so':
      return step.soSpan ?? step.idSpan;
    case 'only':
      return step.only[claim.item]?.span ?? step.idSpan;
    case 'pencil':
      return step.pencil[claim.item]?.span ?? step.idSpan;
    case 'cascade':
      return step.cascade[claim.item]?.span ?? step.idSpan;
  }
}

function messageOf(step: Step, faults: readonly string[], links: readonly string[], conclusions: readonly CheckedConclusion[]): string {
  const [first, ...others] = conclusions.filter((each) => each.message !== '');
  const sentence = links[0] ?? faults[0] ?? first?.message ?? '';
  const more = sentence === first?.message && others.length > 0 && !step.fails ? ` (and ${others.length} more)` : '';
  return `${sentence}${more}`;
}
