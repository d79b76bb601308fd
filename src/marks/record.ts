/**
 * What the record of a mark must contain. Each file here is one mark: `reading` and `beat` for what a scene can write,
 * `painting` and `words` for what then appears in the picture; some have only one of the two. Each stage defines what
 * it must know about a mark in its own type, and gets it from the tables in `marks.ts` and `paintings.ts`.
 */
import type { JudgeMark } from '../check/marks.ts';
import type { MarkPainting } from '../picture/painting.ts';
import type { MarkReading } from '../scene/beats.ts';
import type { BeatMark, Group } from '../scene/scene.ts';
import type { StagedMark, StagedMarks } from '../staging/staged-beat.ts';
import type { BeatStrokes } from '../staging/strokes.ts';
import type { Mark, ShapeKind } from '../timeline/film.ts';
import type { MarkSeconds } from '../timeline/pace.ts';
import type { MarkWords } from './words.ts';

/** A kind of mark that a scene can write. */
export type BeatKind = BeatMark['kind'];

/** A kind of mark that a beat can draw: what a scene can write, and what a claim without `show` draws in addition. */
export type DrawnKind = StagedMark['kind'];

/** Whether a mark that is shown is removed. */
export type Ended = (standing: Pick<Mark, 'step' | 'group' | 'shape'>) => boolean;

/** What draws itself. */
export interface DrawnRecord<Kind extends DrawnKind> {
  readonly beat: {
    readonly strokes: BeatStrokes<Kind>;
    /** Which of the marks shown are removed when the beat begins. */
    readonly ends?: (mark: StagedMarks[Kind], groups: readonly Group[]) => Ended;
  };
}

/** What a scene can write. */
export interface BeatRecord<Kind extends BeatKind> {
  readonly reading: () => MarkReading<Kind>;
  readonly beat: DrawnRecord<Kind>['beat'] & {
    readonly judge: JudgeMark<Kind>;
    readonly seconds: MarkSeconds<Kind>;
  };
}

/** What appears in the picture. */
export interface ShapeRecord<Kind extends ShapeKind> {
  readonly painting: MarkPainting<Kind>;
  readonly words: MarkWords<Kind>;
}
