/**
 * Decimal numbers within a range.
 */
import type { Faults } from './faults.ts';
import { measure, type TextOf } from './language-values.ts';
import type { TextNode } from './yaml-tree.ts';

/** Both ends are in the range. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

/** A number of a fixed range. `called` is what a message calls it, if that is not its key. */
export function number(
  description: string,
  examples: readonly string[],
  range: Range,
): TextOf<number, { readonly faults: Faults; readonly called?: string }> {
  return measure(description, examples, (node, { faults, called }, named) =>
    readNumber(node, { ...range, what: called ?? named, faults }),
  );
}

/** A decimal number, `least` to `most`, both allowed; undefined after a report. `what` is what a message calls it. */
export function readNumber(
  node: TextNode,
  { what, least, most, faults }: Range & { readonly what: string; readonly faults: Faults },
): number | undefined {
  const text = node.text.trim();
  if (!/^[-+]?(\d+(\.\d*)?|\.\d+)$/.test(text)) {
    faults.error('not-a-number', node.span, `"${text}" is not a number; ${what} is a number from ${least} to ${most}`);
    return undefined;
  }
  const number = Number(text);
  if (number >= least && number <= most) return number;
  faults.error('out-of-range', node.span, `${text} is outside the range; ${what} goes from ${least} to ${most}`);
  return undefined;
}
