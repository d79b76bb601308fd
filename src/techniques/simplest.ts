/**
 * The simplest named argument for a conclusion: the techniques are tried in the order in which they are usually taught
 * (common practice), and of the first that has one its simplest instance is taken.
 */
import type { Conclusion } from '../grid/terms.ts';
import type { Position } from '../proof/kernel.ts';
import { type FoundArgument, findArgument } from './find-argument.ts';

/** From what is taught first to what is taught last. Names that are kinds of another one here are left out. */
export const namesInTeachingOrder: readonly string[] = [
  'full house',
  'hidden single',
  'naked single',
  'pointing pair',
  'pointing triple',
  'claiming',
  'naked pair',
  'hidden pair',
  'naked triple',
  'hidden triple',
  'X-wing',
  'skyscraper',
  'two-string kite',
  'empty rectangle',
  'XY-wing',
  'W-wing',
  'XYZ-wing',
  'naked quad',
  'hidden quad',
  'swordfish',
  'finned X-wing',
  'simple colouring',
  'X-chain',
  'remote pair',
  'XY-chain',
  'finned swordfish',
  'jellyfish',
  'grouped X-chain',
  'ALS-XZ',
  'AIC',
  'grouped AIC',
];

export interface NamedArgument extends FoundArgument {
  readonly name: string;
}

/** The simplest argument that proves the conclusion; undefined where none of these techniques does, so far as was looked. */
export function simplestArgument(
  position: Position,
  conclusion: Conclusion,
  names: readonly string[] = namesInTeachingOrder,
): NamedArgument | undefined {
  for (const name of names) {
    const found = findArgument(position, name, [conclusion]);
    if (found !== undefined) return { name, ...found };
  }
  return undefined;
}
