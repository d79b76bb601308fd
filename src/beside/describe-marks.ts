/**
 * Marks in words. A claim is described as one only if its step is sound: otherwise a mark is only a stroke, or is said
 * not to be proved.
 */
import { Bug } from '../grid/bug.ts';
import type { Grid } from '../grid/grid.ts';
import { shapes } from '../marks/marks.ts';
import type { Manner } from '../marks/words.ts';
import type { MarkShape, ShapeKind, Shapes } from '../timeline/film.ts';

/** Something that appears on screen. */
export interface Described {
  readonly frame: number;
  /** What is drawn, or the words for it. */
  readonly what: MarkShape | { readonly kind: 'words'; readonly text: string };
  /** The colour of its group. */
  readonly colour: string | undefined;
  /** Whether its step is sound. */
  readonly sound: boolean;
}

/**
 * All of it, one sentence a line: similar things are described together, in the order in which the first of them
 * appeared.
 */
export function inWords(grid: Grid, described: readonly Described[], overlay: boolean): string {
  const alike = new Map<string, Described[]>();
  for (const [index, each] of described.entries()) {
    const { what, colour, sound } = each;
    const isJoined = what.kind !== 'words' && shapes[what.kind].words.areJoined;
    const key = isJoined ? `${what.kind} ${colour} ${sound}` : `${index}`;
    alike.set(key, [...(alike.get(key) ?? []), each]);
  }
  const clauses = [...alike.values()].map((same) => clauseOf(grid, same, overlay));
  const text = clauses.join('; ');
  const sentence = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.?!]$/.test(sentence) ? sentence : `${sentence}.`;
}

function clauseOf(grid: Grid, same: readonly Described[], overlay: boolean): string {
  const [first] = same;
  if (first === undefined) throw new Bug('a clause without an event');
  const { what, colour, sound } = first;
  if (what.kind === 'words') return what.text;
  const marks = same.flatMap((each) => (each.what.kind === 'words' ? [] : [each.what]));
  return clauseFor(what.kind, marks, { grid, overlay, colour, sound });
}

function clauseFor<Kind extends ShapeKind>(kind: Kind, marks: readonly MarkShape[], manner: Manner): string {
  const ofKind = marks.filter((each): each is Shapes[Kind] => each.kind === kind);
  return shapes[kind].words.clause(ofKind, manner);
}
