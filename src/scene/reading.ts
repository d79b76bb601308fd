/**
 * What every part of the reader works with, and the ways from a text of the tree to a typed value.
 */
import type { Grid } from '../grid/grid.ts';
import type { Reading } from '../grid/terms.ts';
import type { AbsoluteTime } from './anchors/absolute.ts';
import type { ReadTime } from './anchors/anchor.ts';
import type { Time } from './anchors/anchors.ts';
import type { ReadText } from './definition.ts';
import type { Faults } from './faults.ts';
import type { Fraction } from './fraction.ts';
import type { GroupColour, Located } from './scene.ts';
import { readFixedTime, readTime, type TimeForms } from './time.ts';
import { type MapNode, spanIn, type TextNode, textOf } from './yaml-tree.ts';

export interface Context {
  readonly faults: Faults;
  readonly grid: Grid;
  /** Undefined where the scene's rate could not be read; then timecodes are not held against it. */
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

/** The time after a key, if there is one. */
export function timeOf(
  map: MapNode,
  key: string,
  forms: TimeForms,
  context: Pick<Context, 'rate' | 'faults'>,
): Located<Time> | undefined {
  const node = textOf(map, key);
  if (node === undefined) return undefined;
  return timed(node, readTime(node.text, { rate: context.rate, forms }), context.faults);
}

/** The time after a key that depends on nothing else. */
export function fixedTimeOf(
  map: MapNode,
  key: string,
  context: Pick<Context, 'rate' | 'faults'>,
): Located<AbsoluteTime> | undefined {
  const node = textOf(map, key);
  return node === undefined ? undefined : timed(node, readFixedTime(node.text, context.rate), context.faults);
}

function timed<T>(node: TextNode, reading: ReadTime<T>, faults: Faults): Located<T> | undefined {
  if (reading.ok) return { value: reading.time, span: node.span };
  const { code, at, length, message } = reading.fault;
  faults.error(code, spanIn(node, at, at + Math.max(1, length)), message);
  return undefined;
}

/** One of some words after a key; undefined where it is missing or (then reported already) another word. */
export function wordOf<Word extends string>(
  map: MapNode | undefined,
  key: string,
  words: readonly Word[],
): Word | undefined {
  const text = map === undefined ? undefined : textOf(map, key)?.text;
  return words.find((word) => word === text);
}

/** A text after a key with the place it stands at. */
export function locatedText(map: MapNode, key: string): Located<string> | undefined {
  const node = textOf(map, key);
  return node === undefined ? undefined : { value: node.text, span: node.span };
}

/** A decimal number, `least` to `most`, both allowed; undefined after a report. `what` is what a message calls it. */
export function readNumber(
  node: TextNode,
  {
    what,
    least,
    most,
    faults,
  }: { readonly what: string; readonly least: number; readonly most: number; readonly faults: Faults },
): number | undefined {
  const text = node.text.trim();
  if (!/^[-+]?(\d+(\.\d*)?|\.\d+)$/.test(text)) {
    faults.error('not-a-number', node.span, `"${text}" is no number; ${what} is a number from ${least} to ${most}`);
    return undefined;
  }
  const number = Number(text);
  if (number >= least && number <= most) return number;
  faults.error('out-of-range', node.span, `${text} is outside the range; ${what} goes from ${least} to ${most}`);
  return undefined;
}

/** Whether the text is the word `all`, in any case. */
export function saysAll(node: TextNode): boolean {
  return node.text.trim().toLowerCase() === 'all';
}

/** The same with the place it stands at, for a text that is taken as it is written. */
export function located(written: ReadText<string, void> | undefined): Located<string> | undefined {
  return written === undefined ? undefined : { value: written.text, span: written.span };
}
