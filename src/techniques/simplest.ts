/**
 * The simplest named argument for a conclusion: the techniques are tried in teaching order, and the simplest instance
 * of the first that succeeds is taken.
 */
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import type { ArgumentName } from './all-techniques.ts';
import { type FoundArgument, findArgument } from './find-argument.ts';
import { inTeachingOrder } from './teaching.ts';

/** The techniques that the check offers, in the order of the table of teaching costs. */
export const namesInTeachingOrder: readonly ArgumentName[] = inTeachingOrder
  .filter(({ technique }) => technique.isOffered)
  .map(({ technique }) => technique.name);

export interface NamedArgument extends FoundArgument {
  readonly name: ArgumentName;
}

/**
 * The simplest argument that proves the conclusion; undefined if none of these techniques does, as far as the search
 * went.
 */
export function simplestArgument(
  position: Position,
  conclusion: Conclusion,
  names: readonly ArgumentName[] = namesInTeachingOrder,
): NamedArgument | undefined {
  for (const name of names) {
    const found = findArgument(position, name, [conclusion]);
    if (found !== undefined) return { name, ...found };
  }
  return undefined;
}
