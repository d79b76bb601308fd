/**
 * A beat becomes marks. A mark ends with its step (or stays with `keep`), or earlier with what it is on; a focus ends
 * the previous focus, and `clear` ends anything that it names.
 */

import { drawn, shapes } from '../marks/marks.ts';
import type { DrawnKind, Ended } from '../marks/record.ts';
import type { StagedBeat, StagedMark, StagedMarks } from '../staging/staged-beat.ts';
import type { BeatContext, Stroke } from '../staging/strokes.ts';
import { frameAt, type MarkShape } from '../timeline/film.ts';
import type { MarkList } from './mark-list.ts';

export interface StepDrawing extends Omit<BeatContext, 'stands'> {
  readonly frameCount: number;
  readonly marks: MarkList;
}

/** Draws the beat into the list of marks. */
export function drawBeat(drawing: StepDrawing, beat: StagedBeat): void {
  const { marks, step } = drawing;
  const drawnBy = { from: beat.from, step: step.step.id, group: beat.group };
  const strokes = strokesOf({ ...drawing, stands: (shape) => marks.stands({ ...drawnBy, shape }) }, beat);
  const isOver = endedBy(drawing, beat.mark);
  if (isOver !== undefined) marks.end(beat.from, isOver);
  for (const { shape, from, until, group } of strokes) {
    const end = frameAt(Math.min(until, endOf(drawing, beat, shape)));
    marks.add({ ...drawnBy, group: group ?? drawnBy.group, from, until: end, shape });
  }
}

/** The first frame on which a mark of this beat is no longer shown, regardless of what it is on. */
function endOf({ step, until, frameCount, draw }: StepDrawing, beat: StagedBeat, shape: MarkShape): number {
  // A claim of a step that is not sound must not outlive the stamp.
  if (shapes[shape.kind].words.isClaim && !step.sound) return until;
  if (beat.keep) return frameCount;
  if (beat.gone !== undefined && draw === 'overlay') return beat.gone;
  return Math.min(beat.until ?? until, until);
}

function strokesOf(context: BeatContext, beat: StagedBeat): Stroke[] {
  return ofKind(beat.mark.kind, beat.mark);
  function ofKind<Kind extends DrawnKind>(kind: Kind, mark: StagedMarks[Kind]): Stroke[] {
    return drawn[kind].beat.strokes(context, mark, beat);
  }
}

function endedBy({ groups }: StepDrawing, beatMark: StagedMark): Ended | undefined {
  return ofKind(beatMark.kind, beatMark);
  function ofKind<Kind extends DrawnKind>(kind: Kind, mark: StagedMarks[Kind]) {
    return drawn[kind].beat.ends?.(mark, groups);
  }
}
