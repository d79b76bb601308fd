/**
 * Names of steps: each id once and well formed, and `from: step NAME` an earlier step that proves an either/or.
 */

import type { SetName } from '../grid/terms.ts';
import type { Faults } from './faults.ts';
import { quoted } from './faults.ts';
import type { StepMap } from './language-step.ts';
import { didYouMean } from './nearest-word.ts';
import type { Located, Step } from './scene.ts';

/** All ids in their order, the first of a doubled one; doubled and malformed ones are reported. */
export function readIds(steps: readonly StepMap[], faults: Faults): ReadonlyMap<string, number> {
  const ids = new Map<string, number>();
  for (const [index, step] of steps.entries()) {
    const node = step.values.id;
    if (node === undefined) continue;
    if (!/^[A-Za-z0-9-]+$/.test(node.text)) {
      const fix = node.text.replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '');
      const example = fix === '' ? '' : `, as in "${fix}"`;
      faults.error(
        'bad-name',
        node.span,
        `${quoted(node.text)} is not an id; an id has letters A to Z, digits and hyphens${example}`,
      );
    } else if (node.text === 'all') {
      faults.error('bad-name', node.span, '"all" cannot be an id, since `clear: all` means every mark; choose another');
    }
    const earlier = ids.get(node.text);
    if (earlier === undefined) ids.set(node.text, index);
    else {
      const first = steps[earlier]!.values.id?.span ?? steps[earlier]!.span;
      faults.error('duplicate-id', node.span, `two steps have the id ${quoted(node.text)}; each needs its own`, [
        { span: first, message: 'the first step of that id' },
      ]);
    }
  }
  return ids;
}

/** Checks every `step NAME` after `from` against the steps before it. */
export function checkReferences(steps: readonly Step[], faults: Faults): void {
  for (const [index, step] of steps.entries()) {
    const named = [...step.from, ...step.cascade.flatMap((item) => item.from)];
    for (const set of named) checkReference(set, { index, steps }, faults);
  }
}

function checkReference(
  { value, span }: Located<SetName>,
  { index, steps }: { readonly index: number; readonly steps: readonly Step[] },
  faults: Faults,
): void {
  if (value.kind !== 'step') return;
  const at = steps.findIndex((step) => step.id === value.id);
  const target = steps[at];
  if (target === undefined) {
    const known = steps.slice(0, index).map((step) => step.id);
    const meant = didYouMean(value.id, known);
    faults.error(
      'unknown-step',
      span,
      `no step has the id ${quoted(value.id)}${meant === '' ? '; name an earlier step that proves an either/or' : meant}`,
    );
  } else if (at >= index) {
    const where = at === index ? 'is this step itself' : 'comes only after this one';
    faults.error(
      'later-step',
      span,
      `the step ${quoted(value.id)} ${where}; only what an earlier step proved can be drawn from`,
      [{ span: target.idSpan, message: 'it is here' }],
    );
  } else if (!provesOneOf(target)) {
    faults.error(
      'no-either',
      span,
      `the step ${quoted(value.id)} proves no either/or; its so must hold one, as in so: either 4r3c2 4r1c3`,
      [{ span: target.soSpan ?? target.idSpan, message: 'what it concludes' }],
    );
  }
}

/** If `so` could not be read, its faults are already reported. */
function provesOneOf({ so, soSpan, fails }: Step): boolean {
  if (so === undefined) return soSpan !== undefined;
  return !fails && so.kind === 'listed' && so.conclusions.some((each) => each.value.kind === 'one-of');
}
