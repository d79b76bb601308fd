/**
 * Whether the name that the scene gives an argument fits it.
 */
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { countInName } from '../scene/argument-names.ts';
import type { Step } from '../scene/scene.ts';
import { type ArgumentName, techniqueNamed } from '../techniques/all-techniques.ts';
import { judgeName, recogniseIn } from '../techniques/judge-name.ts';
import type { Shape } from '../techniques/technique.ts';
import type { Claim, Evaluated } from './claim.ts';
import { inWords } from './explain.ts';
import type { CheckedName } from './verdict.ts';

/**
 * Judges the name by what the argument proves. An argument that proves nothing gives nothing to judge by, and a false
 * step only looks like an argument of its name: neither is judged.
 */
export function judgeGivenName(
  position: Position,
  because: Step['because'],
  claim: Claim,
  { argument, conclusions }: Evaluated,
): CheckedName | undefined {
  if (because === undefined) return undefined;
  const proved = conclusions.filter((each) => each.outcome.kind === 'proved');
  const notJudged: CheckedName = { given: because.written, judged: 'not judged', fits: [], remark: undefined };
  if (proved.length === 0) return notJudged;
  const { judged, fits, warning } = judgeName(
    shapeOf(position, claim, argument, proved),
    because.name,
    countInName(because.written),
  );
  return { given: because.written, judged, fits, remark: warning ?? misnaming(because.written, judged, fits) };
}

/** Whether the name fits an argument that proves all its conclusions, and not just loosely. */
export function bearsName(
  position: Position,
  name: ArgumentName,
  claim: Claim,
  { argument, conclusions }: Evaluated,
): boolean {
  return recogniseIn(techniqueNamed(name), shapeOf(position, claim, argument, conclusions))?.kind === 'fits';
}

function shapeOf(
  position: Position,
  { given }: Claim,
  argument: Evaluated['argument'],
  proved: Evaluated['conclusions'],
): Shape {
  const chainsHold = argument.links.every((link) => link.holds) && argument.faults.length === 0;
  return {
    position,
    sets: [...new Set(proved.flatMap((each) => each.sets.map((named) => named.set)))],
    chains: chainsHold ? given.chains.map((chain) => chain.value) : [],
    deadly: given.deadly?.value,
    conclusions: proved.map((each): Conclusion => each.conclusion),
  };
}

function misnaming(written: string, judged: CheckedName['judged'], fits: readonly string[]): string | undefined {
  if (judged !== 'misnamed') return undefined;
  const better = fits.length === 0 ? 'no known name fits' : `its name is ${inWords(fits.slice(0, 2), 'or')}`;
  return `"${written}" does not fit this argument: ${better}`;
}
