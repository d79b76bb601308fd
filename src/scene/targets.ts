/**
 * What a mark applies to: cells, houses, candidates, or a digit wherever it is possible.
 */
import { parseTargets } from '../grid/notation/targets.ts';
import type { Target } from '../grid/terms.ts';
import { listed } from './faults.ts';
import { notation, type TextOf } from './language-values.ts';
import { type Context, readNotation } from './reading.ts';

const targetNames: Readonly<Record<Target['kind'], string>> = {
  cells: 'cells (r3c2)',
  house: 'houses (c3)',
  candidates: 'candidates (4r3c2)',
  digit: 'a digit (4)',
};

/** Targets of the kinds that the mark takes. */
export function targets(
  takes: readonly Target['kind'][],
  description: string,
  examples = ['r1c5 b2', '7r1c5', '7'],
): TextOf<readonly Target[], Pick<Context, 'grid' | 'faults'>> {
  return notation(description, examples, (node, needs, named) => {
    const read = readNotation(node, parseTargets, needs);
    const wrong = read?.find((target) => !takes.includes(target.kind));
    if (wrong === undefined) return read;
    const expected = listed(takes.map((each) => targetNames[each]));
    const other = wrong.kind === 'cells' || wrong.kind === 'house' ? 'fill or outline' : 'circle';
    const message = `${named} goes round ${expected}, not round ${targetNames[wrong.kind]}; for those write ${other}`;
    needs.faults.error('notation', node.span, message);
    return undefined;
  });
}
