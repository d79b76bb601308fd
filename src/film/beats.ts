/**
 * A beat becomes marks. A mark ends with its step (or lives on with `keep`), and before that with what it is on; a focus
 * ends the focus before it, and `clear` whatever it names.
 */

import { strokesOf } from '../telling/beat-strokes.ts';
import type { BeatContext } from '../telling/strokes.ts';
import type { ToldBeat } from '../telling/told-beat.ts';
import { type Frame, frameAt, type MarkShape } from '../timeline/film.ts';
import type { MarkList } from './mark-list.ts';

export interface StepDrawing extends Omit<BeatContext, 'stands'> {
  readonly frameCount: number;
  readonly marks: MarkList;
}

/** Draws the beat into the list of marks. */
export function drawBeat(drawing: StepDrawing, beat: ToldBeat): void {
  const { marks, step } = drawing;
  const drawnBy = { from: beat.from, step: step.step.id, group: beat.group };
  const strokes = strokesOf({ ...drawing, stands: (shape) => marks.stands({ ...drawnBy, shape }) }, beat);
  if (beat.mark.kind === 'focus') marks.end(beat.from, ({ shape }) => shape.kind === 'focus');
  if (beat.mark.kind === 'clear') clear(drawing, beat.from, beat.mark.what);
  for (const { shape, from, until, group } of strokes) {
    const end = frameAt(Math.min(until, endOf(drawing, beat, shape)));
    marks.add({ ...drawnBy, group: group ?? drawnBy.group, from, until: end, shape });
  }
}

/** The first frame on which a mark of this beat stands no more, whatever becomes of what it is on. */
function endOf({ step, until, frameCount, draw }: StepDrawing, beat: ToldBeat, shape: MarkShape): number {
  const isClaim = shape.kind === 'link' || shape.kind === 'strike' || shape.kind === 'place';
  // A claim of a step that is not sound must not outlive the stamp.
  if (isClaim && !step.sound) return until;
  if (beat.keep) return frameCount;
  if (beat.gone !== undefined && draw === 'overlay') return beat.gone;
  return Math.min(beat.until ?? until, until);
}

/** A stamp is no mark that a scene could take away. */
function clear({ marks, groups }: StepDrawing, at: Frame, what: 'all' | readonly string[]): void {
  marks.end(at, ({ step, group, shape }) => {
    if (shape.kind === 'stamp') return false;
    if (what === 'all' || what.includes(step)) return true;
    const name = group === undefined ? undefined : groups[group.index]?.name;
    return name !== undefined && what.includes(name);
  });
}
