/**
 * A scene's times as frames, with each mark given the time in its record.
 */
import { beats } from '../marks/marks.ts';
import type { BeatKind } from '../marks/record.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Doubts } from '../scene/doubts.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { BeatMark, BeatMarks, Step, TimedScene } from '../scene/scene.ts';
import { certainFaultsWith } from '../timeline/certain-faults.ts';
import type { Narration } from '../timeline/narration.ts';
import { strokesAtEase } from '../timeline/pace.ts';
import { type Schedule, type ScheduleOptions, scheduleWith } from '../timeline/schedule.ts';

/** Marks take as long to draw as in the default look. */
export const atEase = strokesAtEase(secondsOf);

/**
 * The frames of all that a scene shows, and what is wrong with its times. Without `strokesOf`, marks take as long to
 * draw as in the default look.
 */
export function schedule(
  scene: TimedScene,
  narration: Narration | undefined,
  options: Partial<ScheduleOptions>,
): { readonly schedule: Schedule; readonly diagnostics: readonly Diagnostic[] } {
  return scheduleWith(scene, narration, { strokesOf: atEase, ...options });
}

/** The faults of the times of a scene that could not be read as a whole, in text order. */
export function certainFaults(
  scene: TimedScene,
  doubts: Doubts,
  narration: Narration | undefined,
  options: Partial<ScheduleOptions>,
): readonly Diagnostic[] {
  return certainFaultsWith(scene, doubts, narration, { strokesOf: atEase, ...options });
}

function secondsOf(mark: BeatMark, step: Step): Fraction {
  return ofKind(mark.kind, mark);
  function ofKind<Kind extends BeatKind>(kind: Kind, one: BeatMarks[Kind]): Fraction {
    return beats[kind].beat.seconds(one, step);
  }
}
