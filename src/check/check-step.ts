/**
 * A step: its claims one after the other, and what they come to.
 */
import type { Position } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import { missedRemovals, unneededSets } from './advice.ts';
import { argumentOf, type CheckedClaim, checkClaim } from './check-claim.ts';
import { claimsOf, type Evaluated } from './claim.ts';
import { explainLink, inWords } from './explain.ts';
import { judgeMarks } from './marks.ts';
import { type Failure, stepsRestedOn } from './rests-on.ts';
import { type Argument, type CheckedConclusion, type CheckedStep, type Verdict, verdicts } from './verdict.ts';
import type { Walk } from './walk.ts';
import { warningsOf } from './warnings.ts';

/** Judges the step in the position reached, and lets what it proves enter. */
export function checkStep(walk: Walk, step: Step): CheckedStep {
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
    const held = conclusions
      .filter((conclusion) => conclusion.verdict === 'proved')
      .map((conclusion) => conclusion.text);
    if (held.length > 0)
      faults.push(`the step is marked \`fails: true\`, but its argument does prove ${inWords(held)}`);
    if (conclusions.length === 0)
      faults.push('the step is marked `fails: true`, but it concludes nothing that could fail');
  }
  const sound = step.fails
    ? conclusions.length > 0 && !conclusions.some((conclusion) => conclusion.verdict === 'proved')
    : faults.length === 0 &&
      allLinks.every((link) => link.holds) &&
      conclusions.every((conclusion) => conclusion.verdict === 'proved' || conclusion.verdict === 'spent');
  if (!sound && !step.fails && restsWholly(before, checked, failuresBefore)) walk.restingSteps.add(step.id);
  walk.diagnostics.push(...warningsOf(step, checked), ...judgeMarks(step, before, walk.position));

  const sets = main === undefined ? [] : setsTried(main.evaluated);
  const proved = (main?.evaluated.conclusions ?? [])
    .filter((each) => each.outcome.kind === 'proved')
    .map((each) => each.conclusion);
  const isRemovalsOnly =
    conclusions.length > 0 &&
    conclusions.every((each) => each.origin === 'so' && each.conclusion.kind === 'impossible');
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
    unneeded:
      step.fails || argument === undefined ? [] : unneededSets(before, argument.sets, proved).map((set) => set.name),
    missed:
      step.fails || argument === undefined || !isRemovalsOnly
        ? []
        : missedRemovals(
            before,
            argument.sets,
            conclusions.map((each) => each.conclusion),
          ),
    stale: checked.flatMap((each) => each.evaluated.stale),
    faults,
    message: sound
      ? ''
      : messageOf(
          step,
          faults,
          allLinks.filter((link) => !link.holds).map((link) => explainLink(before.grid, link)),
          conclusions,
        ),
    possibleBefore: before.possible,
    placedBefore: before.placed,
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

function setsTried(evaluated: Evaluated): Argument['sets'] {
  const given = evaluated.argument.sets.map(({ name, set }) => ({ name, members: set.members }));
  return given.length > 0 ? given : argumentOf(evaluated.conclusions).sets;
}

function messageOf(
  step: Step,
  faults: readonly string[],
  links: readonly string[],
  conclusions: readonly CheckedConclusion[],
): string {
  const [first, ...others] = conclusions.filter((each) => each.message !== '');
  const sentence = links[0] ?? faults[0] ?? first?.message ?? '';
  const more = sentence === first?.message && others.length > 0 && !step.fails ? ` (and ${others.length} more)` : '';
  return `${sentence}${more}`;
}
