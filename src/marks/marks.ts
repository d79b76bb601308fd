/**
 * All marks, each as the record in its file. A mark that leaves out a part of its record, or that is left out here,
 * does not compile.
 */
import type { Candidate } from '../grid/candidates.ts';
import type { MarkReadings } from '../scene/beats.ts';
import type { MarkShape, ShapeKind, Shapes } from '../timeline/film.ts';
import * as arrows from './arrows.ts';
import * as ask from './ask.ts';
import * as circle from './circle.ts';
import * as clash from './clash.ts';
import * as clear from './clear.ts';
import * as fill from './fill.ts';
import * as focus from './focus.ts';
import * as ghost from './ghost.ts';
import * as label from './label.ts';
import * as link from './link.ts';
import * as note from './note.ts';
import * as opens from './opens.ts';
import * as outline from './outline.ts';
import * as place from './place.ts';
import * as reach from './reach.ts';
import type { BeatKind, BeatRecord, DrawnKind, DrawnRecord, ShapeRecord } from './record.ts';
import * as ring from './ring.ts';
import * as sides from './sides.ts';
import * as sight from './sight.ts';
import * as stamp from './stamp.ts';
import * as strike from './strike.ts';
import * as suppose from './suppose.ts';

/** What a scene can write, in the order of the language description. */
export const beats: { readonly [Kind in BeatKind]: BeatRecord<Kind> } = {
  fill,
  circle,
  link,
  strike,
  place,
  outline,
  label,
  note,
  focus,
  sight,
  sides,
  suppose,
  ask,
  clear,
};

/** How each is read. */
export const beatReadings: MarkReadings = {
  fill: fill.reading(),
  circle: circle.reading(),
  link: link.reading(),
  strike: strike.reading(),
  place: place.reading(),
  outline: outline.reading(),
  label: label.reading(),
  note: note.reading(),
  focus: focus.reading(),
  sight: sight.reading(),
  sides: sides.reading(),
  suppose: suppose.reading(),
  ask: ask.reading(),
  clear: clear.reading(),
};

/** What a beat can draw: what a scene can write, and what a claim without `show` draws in addition. */
export const drawn: { readonly [Kind in DrawnKind]: DrawnRecord<Kind> } = { ...beats, arrows, opens, reach };

/** What appears in the picture. */
export const shapes: { readonly [Kind in ShapeKind]: ShapeRecord<Kind> } = {
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
};

/** Whether the mark shows what its step concludes, or plays out its proof. */
export function answers(shape: MarkShape, isConcluded: (candidate: Candidate) => boolean): boolean {
  return ofKind(shape.kind, shape);
  function ofKind<Kind extends ShapeKind>(kind: Kind, one: Shapes[Kind]): boolean {
    return shapes[kind].words.answers(one, isConcluded);
  }
}
