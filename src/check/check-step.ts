/**
 * A step: its claims in order, and the resulting verdict.
 */
import type { Grid } from '../grid/grid.ts';
import type { OneOf, Position } from '../proof/kernel.ts';
import { canonicalName } from '../scene/argument-names.ts';
import type { Step } from '../scene/scene.ts';
import { missedRemovals, unneededSets } from './advice.ts';
import { adviceOnStep } from './advice-on-step.ts';
import { argumentOf, type CheckedClaim, checkClaim } from './check-claim.ts';
import { claimsOf, type Evaluated } from './claim.ts';
import { explainFix, explainLink } from './explain.ts';
import { faultsOfFalseStep } from './false-step.ts';
import { judgeWritten, type WrittenJudgement } from './judge-written.ts';
import { judgeGivenName } from './name.ts';
import { type Failure, isUnbroken, stepsRestedOn } from './rests-on.ts';
import { fixesOfStep } from './step-fixes.ts';
import {
  type Argument,
  type CheckedConclusion,
  type CheckedLink,
  type CheckedName,
  type CheckedStep,
  type FixFor,
  type StepFault,
  type Verdict,
  verdicts,
} from './verdict.ts';
import type { Walk } from './walk.ts';
import { warningsOf } from './warnings.ts';

/** Judges the step in the position reached, and enters what it proves. */
export function checkStep(walk: Walk, step: Step): CheckedStep {
  const before = walk.position;
  walk.history.push({ id: step.id, before });
  const failuresBefore = [...walk.failures];
  const checked = claimsOf(step).map((claim) => checkClaim(walk, step, claim));
  const conclusions = checked.flatMap((each) => each.conclusions);
  const links = checked.flatMap((each) => each.evaluated.argument.links);
  const main = checked.find((each) => each.claim.origin === 'so');
  const name = nameOf(step, main);
  // A false step may say what does not hold: that is what it shows.
  const written: WrittenJudgement = step.fails
    ? { faults: [], warnings: [] }
    : judgeWritten(step, { before, after: walk.position, sets: setsOf(checked) }, walk.truth);
  const faults = step.fails
    ? faultsOfFalseStep(checked)
    : [...checked.flatMap((each) => each.evaluated.argument.faults), ...written.faults];
  const names = [name, calledNameOf(step, main), ...conclusions.map((each) => each.name)];
  const sound = step.fails ? faults.length === 0 : isSound(faults, links, conclusions, names);
  if (!sound && !step.fails && !isMisnamed(names) && restsWholly(before, checked, failuresBefore))
    walk.restingSteps.add(step.id);
  const argument =
    main === undefined ? { found: false, others: 0, sets: [], links: [] } : argumentTried(main.evaluated);
  const fixes = sound || step.fails || !isLookedInto(walk, step) ? [] : fixesOfStep(walk, step, before, checked);
  walk.diagnostics.push(
    ...warningsOf(step, checked, names),
    ...written.warnings,
    ...(step.show ?? []).flatMap((beat) =>
      walk.judgeBeat({ step, before, after: walk.position, argument, conclusions, sound }, beat),
    ),
  );
  return {
    step,
    verdict: worstOf(conclusions.map((conclusion) => conclusion.verdict)),
    sound,
    assumesOneSolution: checked.some((each) => each.evaluated.argument.assumesOneSolution),
    inheritsOneSolution: checked.some((each) => each.inheritsOneSolution),
    name,
    argument,
    links,
    conclusions,
    ...(isLookedInto(walk, step) ? adviceOn(step, before, main, conclusions) : { unneeded: [], missed: [] }),
    stale: checked.flatMap((each) => each.evaluated.stale),
    faults,
    message: sound
      ? ''
      : step.fails
        ? falseStepMessage(faults)
        : messageOf(before, faults, links, conclusions, names, fixes),
    advice: sound && !step.fails && walk.purpose.kind === 'report' ? adviceOnStep(walk, step, main, conclusions) : [],
    fixes,
    possibleBefore: before.possible,
    placedBefore: before.placed,
  };
}

/** Whether more is asked of the step than its verdict. */
function isLookedInto({ purpose }: Walk, { id }: Step): boolean {
  return purpose.kind === 'report' || (purpose.kind !== 'verdicts' && purpose.step === id);
}

function setsOf(checked: readonly CheckedClaim[]): OneOf[] {
  return checked.flatMap(({ evaluated }) => evaluated.argument.sets.map(({ set }) => set));
}

type Names = readonly (CheckedName | undefined)[];

function isSound(
  faults: readonly StepFault[],
  links: readonly CheckedLink[],
  conclusions: readonly CheckedConclusion[],
  names: Names,
): boolean {
  return (
    faults.length === 0 &&
    !isMisnamed(names) &&
    links.every((link) => link.holds) &&
    conclusions.every((conclusion) => conclusion.verdict === 'proved' || conclusion.verdict === 'redundant')
  );
}

function isMisnamed(names: Names): boolean {
  return names.some((name) => name?.judged === 'misnamed');
}

function nameOf(step: Step, main: CheckedClaim | undefined): CheckedName | undefined {
  return step.because && judgedName(step, step.because, main);
}

/** `called` is shown to viewers in place of `because`: a name of the trade there must be right too. */
function calledNameOf(step: Step, main: CheckedClaim | undefined): CheckedName | undefined {
  const written = step.called;
  const name = written === undefined ? undefined : canonicalName(written.replace(/^\s*(?:an?|the)\s+/i, ''));
  if (written === undefined || name === undefined) return undefined;
  return judgedName(step, { name, written, span: step.idSpan }, main);
}

function judgedName(
  step: Step,
  given: NonNullable<Step['because']>,
  main: CheckedClaim | undefined,
): CheckedName | undefined {
  const notJudged: CheckedName = { given: given.written, judged: 'not judged', fits: [], remark: undefined };
  if (main === undefined || step.fails) return notJudged;
  return judgeGivenName(main.position, given, main.claim, main.evaluated);
}

function adviceOn(
  step: Step,
  before: Position,
  main: CheckedClaim | undefined,
  conclusions: readonly CheckedConclusion[],
): Pick<CheckedStep, 'unneeded' | 'missed'> {
  if (step.fails || main === undefined) return { unneeded: [], missed: [] };
  const { sets } = main.evaluated.argument;
  const proved = main.evaluated.conclusions
    .filter((each) => each.outcome.kind === 'proved')
    .map((each) => each.conclusion);
  const onlyRemoves = conclusions.length > 0 && conclusions.every((each) => each.conclusion.kind === 'impossible');
  return {
    unneeded: unneededSets(before, sets, proved).map((set) => set.name),
    missed: onlyRemoves
      ? missedRemovals(
          before,
          sets,
          conclusions.map((each) => each.conclusion),
        )
      : [],
  };
}

/** Whether everything that is wrong with the step would be right if earlier steps were sound. */
function restsWholly(before: Position, checked: readonly CheckedClaim[], failures: readonly Failure[]): boolean {
  return checked.every(({ claim, evaluated, conclusions, eithers }) => {
    const failing = conclusions.filter((each) => each.verdict === 'false' || each.verdict === 'unproved');
    if (failing.some((each) => each.restsOn.length === 0)) return false;
    if (isUnbroken(evaluated)) return true;
    return stepsRestedOn(before, claim, eithers, failures, isUnbroken).length > 0;
  });
}

function worstOf(all: readonly Verdict[]): Verdict {
  return verdicts.find((verdict) => all.includes(verdict)) ?? 'none';
}

/** The argument that was given or found by name; otherwise the singles that were found. */
function argumentTried(evaluated: Evaluated): Argument {
  const { found, sets, links } = evaluated.argument;
  if (sets.length === 0) return argumentOf(evaluated.conclusions);
  const named = sets.map(({ name, set }) => ({ name, members: set.members }));
  return { found: found !== undefined, others: found?.others ?? 0, sets: named, links };
}

function falseStepMessage(faults: readonly StepFault[]): string {
  return faults.map(({ message }) => message).join('; ');
}

function messageOf(
  { grid }: Position,
  faults: readonly StepFault[],
  links: readonly CheckedLink[],
  conclusions: readonly CheckedConclusion[],
  names: Names,
  fixes: readonly FixFor[],
): string {
  const reason = reasonOf(grid, faults, links, conclusions, names);
  const bad = conclusions
    .filter(({ verdict }) => verdict === 'unproved' || verdict === 'false')
    .map(({ text }) => text);
  const isWhole = (fix: FixFor) => faults.length === 0 && bad.every((text) => fix.conclusions.includes(text));
  return [reason, ...fixes.map((fix) => explainFix(grid, fix, isWhole(fix)))].join('. ');
}

function reasonOf(
  grid: Grid,
  faults: readonly StepFault[],
  links: readonly CheckedLink[],
  conclusions: readonly CheckedConclusion[],
  names: Names,
): string {
  const broken = links.find((link) => !link.holds);
  const failing = conclusions.map((each) => each.message).filter((message) => message !== '');
  const remark = names.find((name) => name?.judged === 'misnamed')?.remark;
  const [first, ...others] = failing;
  if (broken !== undefined) return explainLink(grid, broken);
  if (faults[0] !== undefined) return faults[0].message;
  if (first === undefined) return remark ?? '';
  return others.length > 0 ? `${first} (and ${others.length} more)` : first;
}
