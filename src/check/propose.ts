/**
 * An argument that was found, as a step that could be pasted into a scene.
 */
import { printChain, printConclusion } from '../grid/notation/print.ts';
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { simplestArgument } from '../techniques/simplest.ts';
import { buildFound } from './argument.ts';
import type { ProposedStep } from './mend.ts';

/** The simplest named argument that proves the conclusion, told as a step; undefined where none is found. */
export function proposeStep(position: Position, conclusion: Conclusion): ProposedStep | undefined {
  const found = simplestArgument(position, conclusion);
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

/** The step as it stands in a scene, an item of `steps`, without indentation and without an end of line. */
export function stepText(step: ProposedStep, id: string): string {
  const lines = [`- id: ${id}`, `  because: ${step.because}`];
  if (step.from !== undefined) lines.push(`  from: ${step.from}`);
  if (step.chain !== undefined) lines.push(`  chain: ${step.chain}`);
  if (step.deadly !== undefined) lines.push(`  deadly: ${step.deadly}`);
  return [...lines, `  so: ${step.so}`].join('\n');
}

/** An id for the step that is put before another as its `index`-th, counted from 0: `kite-first`, `kite-first-2`. */
export function idBefore(id: string, index: number): string {
  return index === 0 ? `${id}-first` : `${id}-first-${index + 1}`;
}
