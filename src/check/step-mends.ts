/**
 * What would mend a step that is not sound: claim after claim, and in a cascade what comes too early.
 */
import type { Position } from '../proof/kernel.ts';
import type { Step } from '../scene/scene.ts';
import type { CheckedClaim } from './check-claim.ts';
import { type Evaluated, evaluate } from './claim.ts';
import { mendLinks, mendsOf } from './mend.ts';
import { judgeGivenName } from './name.ts';
import { proposeStep } from './propose.ts';
import { isUnbroken } from './rests-on.ts';
import type { MendFor } from './verdict.ts';
import type { Walk } from './walk.ts';

/** Mends of the step's claims. `before`: the position when it began; the walk's is that at its end. */
export function mendsOfStep(walk: Walk, step: Step, before: Position, checked: readonly CheckedClaim[]): MendFor[] {
  return untilFalse(checked).flatMap((each, index) => {
    const moved = moveBehind(checked, index, walk.position);
    return moved === undefined ? mendsFor(walk, step, before, each) : [moved];
  });
}

/** Where a conclusion of a cascade is not proved at its place: the first one after it with which it would be. */
function moveBehind(checked: readonly CheckedClaim[], index: number, atEnd: Position): MendFor | undefined {
  const { claim, conclusions, eithers } = checked[index]!;
  if (claim.origin !== 'cascade' || !conclusions.every(({ verdict }) => verdict === 'unproved')) return undefined;
  for (let later = index + 1; later < checked.length; later++) {
    const reached = checked[later + 1]?.position ?? atEnd;
    const again = evaluate(reached, claim, eithers);
    if (!isUnbroken(again) || !again.conclusions.every(({ outcome }) => outcome.kind === 'proved')) continue;
    const after = checked[later]!.conclusions[0]?.text;
    return after === undefined
      ? undefined
      : { mend: { kind: 'move behind', after }, conclusions: conclusions.map(({ text }) => text) };
  }
  return undefined;
}

/** What would mend the claim, as long as mends are still looked for: each takes a search of its own. */
function mendsFor(
  walk: Walk,
  step: Step,
  before: Position,
  { claim, position, evaluated, conclusions, eithers }: CheckedClaim,
): MendFor[] {
  const failing = conclusions.filter((each) => each.verdict === 'unproved' && each.restsOn.length === 0);
  const isBroken = evaluated.argument.links.some((link) => !link.holds);
  if ((failing.length === 0 && !isBroken) || walk.mendsLeft <= 0) return [];
  walk.mendsLeft--;
  const because = claim.origin === 'so' ? step.because : step.cascade[claim.item]?.because;
  const judge = (reached: Position, again: Evaluated) => {
    const name = judgeGivenName(reached, because, claim, again);
    return name?.judged === 'misnamed' ? name : undefined;
  };
  const known = { eithers, truth: walk.truth, find: proposeStep, before, judge };
  const mends = mendsOf(
    position,
    claim,
    evaluated,
    failing.map((each) => each.conclusion),
    known,
  );
  if (mends.length > 0 || !isBroken) return mends;
  const mend = mendLinks(position, claim, evaluated, known);
  return mend === undefined ? [] : [{ mend, conclusions: [] }];
}

/** The claims before the first that a solution contradicts: what comes after a wrong digit is best looked at once it is right. */
function untilFalse(checked: readonly CheckedClaim[]): readonly CheckedClaim[] {
  const wrong = checked.findIndex(({ conclusions }) => conclusions.some((each) => each.verdict === 'false'));
  return wrong < 0 ? checked : checked.slice(0, wrong + 1);
}
