/**
 * The painting of every kind of mark. Taken from the records separately, so that a page of slides, which only paints
 * marks, carries only their painting.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { Cell } from '../grid/grid.ts';
import type { MarkPainting } from '../picture/painting.ts';
import type { LookMotion } from '../scene/look.ts';
import type { Film, Mark, MarkShape, ShapeKind, Shapes } from '../timeline/film.ts';
import { painting as ask } from './ask.ts';
import { painting as circle } from './circle.ts';
import { painting as clash } from './clash.ts';
import { painting as fill } from './fill.ts';
import { painting as focus } from './focus.ts';
import { painting as ghost } from './ghost.ts';
import { painting as label } from './label.ts';
import { painting as link } from './link.ts';
import { painting as note } from './note.ts';
import { painting as opens } from './opens.ts';
import { painting as outline } from './outline.ts';
import { painting as place } from './place.ts';
import { painting as reach } from './reach.ts';
import { painting as ring } from './ring.ts';
import { painting as sight } from './sight.ts';
import { painting as stamp } from './stamp.ts';
import { painting as strike } from './strike.ts';

export type Paintings = { readonly [Kind in ShapeKind]: MarkPainting<Kind> };

/** With the names of the layers of each kind. */
export const namedPaintings = {
  ask,
  circle,
  clash,
  fill,
  focus,
  ghost,
  label,
  link,
  note,
  opens,
  outline,
  place,
  reach,
  ring,
  sight,
  stamp,
  strike,
} satisfies Paintings;

export const paintings: Paintings = namedPaintings;

/** Seconds from its first ink until it is complete. */
export function secondsToCome(shape: MarkShape, motion: LookMotion, film: Film): number {
  return ofKind(shape.kind, shape);
  function ofKind<Kind extends ShapeKind>(kind: Kind, one: Shapes[Kind]): number {
    return paintings[kind].comesIn(one, motion, film);
  }
}

/** The candidates that the mark is on, in no order; empty for marks of cells, houses and words. */
export function candidatesOfMark(shape: MarkShape): readonly Candidate[] {
  return ofKind(shape.kind, shape);
  function ofKind<Kind extends ShapeKind>(kind: Kind, one: Shapes[Kind]): readonly Candidate[] {
    return paintings[kind].candidates(one);
  }
}

/** The candidates with a ring around them, or a slash or an end of a line on them, from any of the marks. */
export function ringedBy(marks: readonly Mark[]): Set<Candidate> {
  const ringed = marks.filter(({ shape }) => paintings[shape.kind].isRinged);
  return new Set(ringed.flatMap(({ shape }) => candidatesOfMark(shape)));
}

/** What changes colour as the mark comes and goes. */
export function coveredBy(shape: MarkShape): readonly Cell[] | 'card' | 'board' {
  return ofKind(shape.kind, shape);
  function ofKind<Kind extends ShapeKind>(kind: Kind, one: Shapes[Kind]): readonly Cell[] | 'card' | 'board' {
    return paintings[kind].covers(one);
  }
}
