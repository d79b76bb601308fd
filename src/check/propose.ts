/**
 * An argument that was found, as a step that could be pasted into a scene.
 */
import { printChain, printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import type { ProposedStep } from '../scene/step-text.ts';
import { simplestArgument } from '../techniques/simplest.ts';
import { buildFound } from './argument.ts';

/** A placement is told by a single, whatever else would prove it. */
const singles = ['full house', 'hidden single', 'naked single'];

/** The simplest named argument that proves the conclusion, told as a step; undefined where none is found. */
export function proposeStep(
  position: Position,
  conclusion: Conclusion,
  names?: readonly string[],
): ProposedStep | undefined {
  const found = simplestArgument(position, conclusion, conclusion.kind === 'one-of' ? singles : names);
  if (found === undefined) return undefined;
  const { chain } = found.instance;
  const { sets } = buildFound(position, found);
  const deadly = sets.find((named) => named.set.source.kind === 'guardians');
  const named = sets.filter((each) => each !== deadly).map((each) => each.name);
  return {
    because: found.name,
    from: chain === undefined && named.length > 0 ? named.join(' ') : undefined,
    chain: chain === undefined ? undefined : printChain(position.grid, { ...chain, concludes: [] }),
    deadly: deadly?.name.replace(/^deadly /, ''),
    so: printConclusion(position.grid, conclusion),
  };
}
