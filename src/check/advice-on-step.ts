/**
 * What an author may like to know about a sound step: that it needs many cases, that a simpler argument gives the same
 * result, that what it places was a single long before. Advice only; the scene may switch the last two off.
 */
import type { Position } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import { findArgument } from '../techniques/find-argument.ts';
import { namesInTeachingOrder } from '../techniques/simplest.ts';
import type { CheckedClaim } from './check-claim.ts';
import { inWords } from './explain.ts';
import { findSingle } from './singles.ts';
import type { CheckedConclusion } from './verdict.ts';
import type { Walk } from './walk.ts';

/** A placement counts as open for long if it was already a single this many steps earlier. */
const stepsOpen = 3;
/** Only techniques taught early are searched: an argument simpler than a chain is seen at a glance, or not at all. */
const earlyNames = namesInTeachingOrder.slice(0, namesInTeachingOrder.indexOf('empty rectangle'));

/** Sentences; empty for most steps. */
export function adviceOnStep(
  walk: Walk,
  step: Step,
  main: CheckedClaim | undefined,
  conclusions: readonly CheckedConclusion[],
): string[] {
  const proved = conclusions.filter((each) => each.verdict === 'proved');
  return [
    ...manyCases(walk, proved),
    ...(walk.advice.simpler ? simplerArgument(main) : []),
    ...(walk.advice.open ? openForLong(walk, step, proved) : []),
  ];
}

function manyCases({ advice }: Walk, proved: readonly CheckedConclusion[]): string[] {
  const most = proved.toSorted((a, b) => b.cases - a.cases)[0];
  if (most === undefined || most.cases <= advice.mostCases) return [];
  return [`${most.text} takes ${most.cases} cases to prove; nobody follows more than ${advice.mostCases}`];
}

/**
 * The simplest argument, of a technique taught earlier than the step's own, that proves everything the step concludes.
 */
function simplerArgument(main: CheckedClaim | undefined): string[] {
  if (main === undefined || main.evaluated.argument.sets.length < 2) return [];
  const { position, evaluated } = main;
  const wanted = evaluated.conclusions.filter((each) => each.outcome.kind === 'proved').map((each) => each.conclusion);
  if (wanted.length === 0 || wanted.length < evaluated.conclusions.length) return [];
  const simpler = earlyNames.slice(0, rankOf(main)).find((name) => {
    const found = findArgument(position, name, wanted);
    return found !== undefined && found.instance.sets.length < evaluated.argument.sets.length;
  });
  return simpler === undefined ? [] : [`a simpler argument gives the same: ${article(simpler)} ${simpler}`];
}

/** The rank of the step's own argument in teaching order; last if its name is not known. */
function rankOf({ claim }: CheckedClaim): number {
  const rank = claim.because === undefined ? -1 : earlyNames.indexOf(claim.because);
  return rank < 0 ? earlyNames.length : rank;
}

/** Placements of the step that were already singles several steps earlier. */
function openForLong(walk: Walk, step: Step, proved: readonly CheckedConclusion[]): string[] {
  const then = walk.history.at(-1 - stepsOpen);
  if (then === undefined) return [];
  const open = proved.filter((each) => each.conclusion.kind === 'one-of' && wasOpen(then.before, each));
  if (open.length === 0) return [];
  const some = open.slice(0, 3).map((each) => each.text);
  const others = open.length > 3 ? ` and ${open.length - 3} more` : '';
  return [
    `${inWords(some)}${others} ${open.length === 1 ? 'was' : 'were'} open ${stepsOpen} steps before ${step.id}, at ${then.id}`,
  ];
}

function wasOpen(position: Position, { conclusion }: CheckedConclusion): boolean {
  return findSingle(position, conclusion, 'singles') !== undefined;
}

function article(name: string): string {
  return /^(X|[aeio]|ALS)/i.test(name) ? 'an' : 'a';
}
