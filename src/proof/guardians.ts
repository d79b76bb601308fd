/**
 * The guardians of a deadly pattern. The extra candidates of a whole grid are searched for here if they are not named;
 * the kernel judges them either way.
 */
import type { Deadly } from '../grid/terms.ts';
import { extrasFor } from './find-extras.ts';
import { guardiansBy, type OneOf, type Position } from './kernel.ts';

/** What keeps a deadly pattern from giving a second solution; a sentence where the pattern is refused. */
export function guardiansOf(position: Position, deadly: Deadly): OneOf | { readonly refused: string } {
  return guardiansBy(position, deadly, extrasFor);
}
