/**
 * What every part of the reader works with, and the ways from a text of the tree to a typed value.
 */
import type { Grid } from '../grid/grid.ts';
import type { Reading } from '../grid/terms.ts';
import type { ReadText } from './definition.ts';
import type { Faults } from './faults.ts';
import type { Fraction } from './fraction.ts';
import type { GroupColour, Located } from './scene.ts';
import { spanIn, type TextNode } from './yaml-tree.ts';

export interface Context {
  readonly faults: Faults;
  readonly grid: Grid;
  /** Undefined if the scene's rate could not be read; then timecodes are not checked against it. */
  readonly rate: Fraction | undefined;
  readonly groups: ReadonlyMap<string, GroupColour>;
  /** All ids of the scene, with their order. */
  readonly stepIds: ReadonlyMap<string, number>;
}

/** The value of a notation text; undefined after its faults were reported, each at its own place. */
export function readNotation<T>(
  node: TextNode,
  parse: (grid: Grid, text: string) => Reading<T>,
  { grid, faults }: Pick<Context, 'grid' | 'faults'>,
): T | undefined {
  const reading = parse(grid, node.text);
  if (reading.ok) return reading.value;
  for (const { at, length, message } of reading.faults) {
    faults.error('notation', spanIn(node, at, at + Math.max(1, length)), message);
  }
  return undefined;
}

/** The reader of a notation, for a definition. */
export function parsed<T>(
  parse: (grid: Grid, text: string) => Reading<T>,
): (node: TextNode, needs: Pick<Context, 'grid' | 'faults'>) => T | undefined {
  return (node, needs) => readNotation(node, parse, needs);
}

/** Whether the text is the word `all`, in any case. */
export function saysAll(node: TextNode): boolean {
  return node.text.trim().toLowerCase() === 'all';
}

/** A text with its place, taken as written. */
export function located(written: ReadText<string, void> | undefined): Located<string> | undefined {
  return written === undefined ? undefined : { value: written.text, span: written.span };
}

/** The items of a list of notation that is known to be readable, each with its place. */
export function itemsIn<T>(
  node: TextNode,
  parse: (grid: Grid, text: string) => Reading<T>,
  grid: Grid,
): readonly Located<T>[] {
  return [...node.text.matchAll(/[^\s,]+/g)].flatMap((match) => {
    const reading = parse(grid, match[0]);
    return reading.ok ? [{ value: reading.value, span: spanIn(node, match.index, match.index + match[0].length) }] : [];
  });
}
