/**
 * What marks claim by themselves, to be judged where the step is: only the position and the argument can say whether a
 * line of sight starts from a digit that stands on the board, or a proof that is played out gets there by forcing alone.
 */
import type { Position } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat, BeatMarks, Step } from '../scene/scene.ts';
import type { CheckedStep } from './verdict.ts';

/** A step with the positions before and after it, and what was found out about it. */
export interface JudgedStep extends Pick<CheckedStep, 'argument' | 'conclusions' | 'sound'> {
  readonly step: Step;
  readonly before: Position;
  readonly after: Position;
}

/** Faults and warnings of a mark of this kind. */
export type JudgeMark<Kind extends keyof BeatMarks> = (
  judged: JudgedStep,
  mark: BeatMarks[Kind],
  beat: Beat,
) => readonly Diagnostic[];

/** Faults and warnings of a beat, whatever its mark. */
export type JudgeBeat = (judged: JudgedStep, beat: Beat) => readonly Diagnostic[];

/** For a mark that claims nothing, or only what its step claims. */
export function nothingToJudge(): readonly Diagnostic[] {
  return [];
}
