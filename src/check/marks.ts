/**
 * What marks claim on their own, judged together with the step: only the position and the argument can say whether a
 * sight line starts from a placed digit, or whether a proof that is played out reaches its end by forcing only.
 */
import type { Position } from '../proof/kernel.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Beat, BeatMarks, Step } from '../scene/scene.ts';
import type { CheckedStep } from './verdict.ts';

/** A step with the positions before and after it, and the findings so far. */
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

/** Faults and warnings of a beat with any mark. */
export type JudgeBeat = (judged: JudgedStep, beat: Beat) => readonly Diagnostic[];

/** For a mark that claims nothing, or only what its step claims. */
export function nothingToJudge(): readonly Diagnostic[] {
  return [];
}
