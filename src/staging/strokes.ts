/**
 * A stroke: what a beat draws for one thing, with its first frame and the frame on which what it is on disappears.
 */
import type { CheckedStep } from '../check/verdict.ts';
import type { Candidate } from '../grid/candidates.ts';
import { type Cell, cellOf, type Digit, digitOf } from '../grid/grid.ts';
import type { Group } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkGroup, type MarkShape } from '../timeline/film.ts';
import type { BoardState } from './board-state.ts';
import type { Pacing } from './pacing.ts';
import type { StagedBeat, StagedMark, StagedMarks } from './staged-beat.ts';
import type { StagedConclusion } from './staged-conclusions.ts';

export interface BeatContext {
  readonly board: BoardState;
  readonly pacing: Pacing;
  readonly draw: 'overlay' | 'writing' | 'board';
  /** Of the scene. */
  readonly groups: readonly Group[];
  readonly step: CheckedStep;
  /** The step's end. */
  readonly until: Frame;
  readonly staged: readonly StagedConclusion[];
  /**
   * Whether the beat's step has already drawn this in the beat's colour, and it is still shown when the beat begins.
   */
  readonly stands: (shape: MarkShape) => boolean;
}

export interface Stroke {
  readonly shape: MarkShape;
  readonly from: Frame;
  /** If it is not the beat's own. */
  readonly group?: MarkGroup;
  /** The first frame on which what it is on is no longer shown; infinite if that stays. */
  readonly until: number;
}

/** The end of what stays on the board. */
export const stays = Number.POSITIVE_INFINITY;

/** What a beat of this kind draws, in order of appearance. */
export type BeatStrokes<Kind extends StagedMark['kind']> = (
  context: BeatContext,
  mark: StagedMarks[Kind],
  beat: StagedBeat,
) => Stroke[];

/** Something to draw, and the candidates that it disappears with. */
export interface Drawable {
  readonly shape: MarkShape;
  readonly on: readonly Candidate[];
}

/**
 * What is already shown continues from the beat's frame on; everything else comes in order, on the frames from
 * `framesFor`.
 */
export function spread(
  context: BeatContext,
  things: readonly Drawable[],
  from: Frame,
  framesFor: (count: number) => readonly Frame[],
): Stroke[] {
  const { board } = context;
  // A link stays with the digit that is written for its end, as long as its other end is shown.
  const lasts = (shape: MarkShape, candidate: Candidate) =>
    shape.kind === 'link' && writtenBy(context, candidate) !== undefined ? context.until : board.showsUntil(candidate);
  const fresh = things.filter(({ shape }) => !context.stands(shape));
  const frames = framesFor(fresh.length);
  return things.map((thing): Stroke => {
    const { shape, on } = thing;
    const first = frames[fresh.indexOf(thing)] ?? from;
    const until = Math.min(...on.map((candidate) => lasts(shape, candidate)));
    return { shape, from: first, until };
  });
}

/** A mark that is shown from the beat on, regardless of the board. */
export function standing(shape: MarkShape, { from }: StagedBeat): Stroke {
  return { shape, from, until: stays };
}

/** When what a mark is on disappears: a candidate, or a cell, which stays. */
export function lastOf(board: BoardState, candidate: Candidate | undefined): number {
  return candidate === undefined ? stays : board.showsUntil(candidate);
}

/** The digit that the step itself writes for the candidate. */
export function writtenBy(
  { board, step }: BeatContext,
  candidate: Candidate,
): { readonly cell: Cell; readonly digit: Digit; readonly from: Frame } | undefined {
  const cell = cellOf(board.grid, candidate);
  const digit = board.digitOf(cell);
  const isOwn = digit?.step === step.step.id && digit.digit === digitOf(board.grid, candidate);
  return isOwn ? { cell, digit: digit.digit, from: frameAt(digit.from) } : undefined;
}
