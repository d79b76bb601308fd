/**
 * What a change to one step of a scene does to the others: a step that was sound is spared if it stays so, with its own
 * argument, its own name and all that it proved.
 */
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';

/** The ids of the steps that pay for a change: those that were sound, but for `changed`, and are not spared. */
export function payingFor(changed: string, before: CheckedScene, after: CheckedScene): string[] {
  const now = new Map(after.steps.map((each) => [each.step.id, each]));
  return before.steps
    .filter((was) => was.sound && was.step.id !== changed && !isSpared(was, now.get(was.step.id)))
    .map(({ step }) => step.id);
}

function isSpared(was: CheckedStep, now: CheckedStep | undefined): boolean {
  if (!now?.sound || was.name?.judged !== now.name?.judged) return false;
  const provedNow = new Set(provedBy(now));
  return provedBy(was).every((conclusion) => provedNow.has(conclusion)) && namedAs(was) === namedAs(now);
}

function provedBy({ step, conclusions }: CheckedStep): string[] {
  // A false step is spared as long as it is one; what a list leaves out may be known sooner.
  if (step.fails) return [];
  const own = conclusions.filter(({ origin }) => origin === 'so' || origin === 'cascade');
  return own.filter(({ verdict }) => verdict === 'proved').map(({ text }) => text);
}

/** An argument that was found by the name that the step gives, by its sets; one that is given stays as it is. */
function namedAs({ step, argument }: CheckedStep): string {
  const isFound = argument.found && step.because !== undefined;
  return isFound ? argument.sets.map(({ name }) => name).join(' ') : '';
}
