/**
 * Oddities of a step that change no verdict.
 */
import { printCandidate } from '../grid/notation/print.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Step } from '../scene/scene.ts';
import { givesAnArgument } from './argument.ts';
import type { CheckedClaim } from './check-claim.ts';
import type { Claim } from './claim.ts';
import { inWords } from './explain.ts';
import type { CheckedName } from './verdict.ts';

/**
 * Cells that no longer have the digit, redundant conclusions, lists that name impossible candidates, loosely fitting
 * names.
 */
export function warningsOf(
  step: Step,
  checked: readonly CheckedClaim[],
  names: readonly (CheckedName | undefined)[],
): Diagnostic[] {
  const warnings: Diagnostic[] = [];
  const warn = (code: Diagnostic['code'], span: Diagnostic['span'], message: string) =>
    warnings.push({ code, severity: 'warning', span, message });
  for (const name of names) {
    if (name?.judged === 'fits' && name.remark !== undefined)
      warn('name-loosely', step.because?.span ?? step.idSpan, name.remark);
  }
  for (const { claim, position, evaluated, conclusions } of checked) {
    const span = spanOf(step, claim);
    for (const idle of evaluated.argument.idleCells) warn('idle-cell', idle.span, idle.text);
    for (const { span, text } of evaluated.argument.notLocked) warn('not-locked', span, text);
    const redundant = conclusions.filter((each) => each.verdict === 'redundant').map((each) => each.text);
    if (redundant.length > 0 && !step.fails)
      warn(
        'spent',
        span,
        `${inWords(redundant)} ${redundant.length === 1 ? 'says' : 'say'} nothing new: it already holds, and nothing is drawn for it`,
      );
    const stale = evaluated.stale.map((candidate) => printCandidate(position.grid, candidate));
    if (stale.length > 0)
      warn('stale', span, `${inWords(stale)} ${stale.length === 1 ? 'is' : 'are'} listed but no longer possible`);
    const isSaid = evaluated.argument.faults.length > 0;
    if (claim.concludes.kind === 'all' && conclusions.length === 0 && givesAnArgument(claim.given) && !isSaid) {
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
