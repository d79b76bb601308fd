/**
 * Checking a scene, with each mark judged according to its record.
 */
import { certainErrorsWith, checkSceneWith } from '../check/check-scene.ts';
import type { JudgedStep } from '../check/marks.ts';
import type { CheckedScene } from '../check/verdict.ts';
import type { Purpose } from '../check/walk.ts';
import { beats } from '../marks/marks.ts';
import type { BeatKind } from '../marks/record.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Doubts } from '../scene/doubts.ts';
import type { Beat, BeatMarks, Scene } from '../scene/scene.ts';

/**
 * Proves or rejects every claim of the scene. The puzzle has at least one solution: a scene whose puzzle has none is
 * rejected when it is read.
 */
export function checkScene(scene: Scene, purpose?: Purpose): CheckedScene {
  return checkSceneWith(judgeBeat, scene, purpose);
}

/**
 * The errors of marks in a scene with faults: those of the steps before the first step that could not be read reliably.
 */
export function certainErrors(scene: Scene, doubts: Doubts): readonly Diagnostic[] {
  return certainErrorsWith(judgeBeat, scene, doubts);
}

function judgeBeat(judged: JudgedStep, beat: Beat): readonly Diagnostic[] {
  return ofKind(beat.mark.kind, beat.mark);
  function ofKind<Kind extends BeatKind>(kind: Kind, mark: BeatMarks[Kind]): readonly Diagnostic[] {
    return beats[kind].beat.judge(judged, mark, beat);
  }
}
