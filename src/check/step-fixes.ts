/**
 * What would fix a step that is not sound: its claims in turn, and in a cascade what comes too early.
 */
import type { Position } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import type { CheckedClaim } from './check-claim.ts';
import { type Evaluated, evaluate } from './claim.ts';
import { everyFixOf, fixesOf, fixLinks } from './fix.ts';
import { judgeGivenName } from './name.ts';
import { proposeStep, proposeStepFor } from './propose.ts';
import { isUnbroken } from './rests-on.ts';
import type { FixFor } from './verdict.ts';
import type { Walk } from './walk.ts';

/**
 * Fixes for the step's claims. `before` is the position when the step begins; the walk's position is the one at its
 * end.
 */
export function fixesOfStep(walk: Walk, step: Step, before: Position, checked: readonly CheckedClaim[]): FixFor[] {
  if (walk.purpose.kind === 'arguing otherwise') return argueOtherwise(step, checked);
  return untilFalse(checked).flatMap((each, index) => {
    const moved = moveBehind(checked, index, walk.position);
    return moved === undefined ? fixesFor(walk, step, before, each) : [moved];
  });
}

/** If a conclusion of a cascade is not proved at its place: the first later conclusion after which it would be. */
function moveBehind(checked: readonly CheckedClaim[], index: number, atEnd: Position): FixFor | undefined {
  const { claim, conclusions, eithers } = checked[index]!;
  if (claim.origin !== 'cascade' || !conclusions.every(({ verdict }) => verdict === 'unproved')) return undefined;
  for (let later = index + 1; later < checked.length; later++) {
    const reached = checked[later + 1]?.position ?? atEnd;
    const again = evaluate(reached, claim, eithers);
    if (!isUnbroken(again) || !again.conclusions.every(({ outcome }) => outcome.kind === 'proved')) continue;
    const after = checked[later]!.conclusions[0]?.text;
    return after === undefined
      ? undefined
      : { fix: { kind: 'move behind', after }, conclusions: conclusions.map(({ text }) => text) };
  }
  return undefined;
}

/** What would fix the claim, while the budget for fixes lasts: each needs its own search. */
function fixesFor(
  walk: Walk,
  step: Step,
  before: Position,
  { claim, position, evaluated, conclusions, eithers }: CheckedClaim,
): FixFor[] {
  const failing = conclusions.filter((each) => each.verdict === 'unproved' && each.restsOn.length === 0);
  const isBroken = evaluated.argument.links.some((link) => !link.holds);
  if ((failing.length === 0 && !isBroken) || walk.fixesLeft <= 0) return [];
  walk.fixesLeft--;
  const because = claim.origin === 'so' ? step.because : step.cascade[claim.item]?.because;
  const judge = (reached: Position, again: Evaluated) => {
    const name = judgeGivenName(reached, because, claim, again);
    return name?.judged === 'misnamed' ? name : undefined;
  };
  const known = { eithers, truth: walk.truth, find: proposeStep, before, judge };
  const fixes = (walk.purpose.kind === 'fixing' ? everyFixOf : fixesOf)(
    position,
    claim,
    evaluated,
    failing.map((each) => each.conclusion),
    known,
  );
  if (fixes.length > 0 || !isBroken) return fixes;
  const fix = fixLinks(position, claim, evaluated, known);
  return fix === undefined ? [] : [{ fix, conclusions: [] }];
}

/** Other arguments for what `so` says and no solution contradicts: one of the name given, and the simplest of any. */
function argueOtherwise({ because }: Step, checked: readonly CheckedClaim[]): FixFor[] {
  const main = checked.find(({ claim }) => claim.origin === 'so');
  if (main === undefined) return [];
  const { claim, position, conclusions } = main;
  if (claim.concludes.kind !== 'listed') return [];
  const open = conclusions.filter(({ verdict }) => verdict === 'proved' || verdict === 'unproved');
  const sought = open.map(({ conclusion }) => conclusion);
  const found = [
    because === undefined ? undefined : proposeStepFor(position, sought, [because.name]),
    proposeStepFor(position, sought),
  ];
  return found.flatMap((step): FixFor[] =>
    step === undefined ? [] : [{ fix: { kind: 'argue otherwise', step }, conclusions: open.map(({ text }) => text) }],
  );
}

/**
 * The claims up to the first that a solution contradicts: what follows a wrong digit is best checked once the digit is
 * right.
 */
function untilFalse(checked: readonly CheckedClaim[]): readonly CheckedClaim[] {
  const wrong = checked.findIndex(({ conclusions }) => conclusions.some((each) => each.verdict === 'false'));
  return wrong < 0 ? checked : checked.slice(0, wrong + 1);
}
