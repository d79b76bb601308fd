/**
 * Walks a scene step by step: what is proved enters the position; for the rest, the verdict says why it does not.
 */
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Doubts } from '../scene/doubts.ts';
import type { Scene } from '../scene/scene.ts';
import { checkStep } from './check-step.ts';
import type { JudgeBeat } from './marks.ts';
import { startPosition } from './start-position.ts';
import { truthOf } from './truth.ts';
import type { CheckedScene } from './verdict.ts';
import type { Purpose, Walk } from './walk.ts';

/**
 * Proves or rejects every claim of the scene and judges its marks. The puzzle has at least one solution: a scene whose
 * puzzle has none is rejected when it is read.
 */
export function checkSceneWith(
  judgeBeat: JudgeBeat,
  scene: Scene,
  purpose: Purpose = { kind: 'report' },
): CheckedScene {
  const { puzzle } = scene;
  const truth = truthOf(puzzle);
  const oneSolution = truth.solutions.length === 1 && puzzle.uniqueness === 'allowed';
  const takenAsRead = puzzle.start.map((located) => located.value);
  const start = startPosition(puzzle, oneSolution);

  const walk: Walk = {
    truth,
    position: start,
    eithers: new Map(),
    failures: [],
    advice: scene.advice,
    judgeBeat,
    purpose,
    history: [],
    fixesLeft: 16,
    diagnostics: [],
    restingSteps: new Set(),
  };
  const steps = scene.steps.map((step) => checkStep(walk, step));
  const unsound = steps.filter((step) => !step.sound).map((step) => step.step.id);
  const toFix = unsound.filter((id) => !walk.restingSteps.has(id));
  return {
    scene,
    solutions: truth.solutions.length === 0 ? 0 : truth.solutions.length === 1 ? 1 : 2,
    takenAsRead,
    steps,
    sound: unsound.length === 0,
    summary: { steps: steps.length, toFix, restOnThem: unsound.length - toFix.length },
    errors: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'error'),
    warnings: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'warning'),
  };
}

/**
 * The errors of marks in a scene with faults: those of the steps before the first step that could not be read reliably.
 */
export function certainErrorsWith(
  judgeBeat: JudgeBeat,
  scene: Scene,
  { puzzle, order, steps }: Doubts,
): readonly Diagnostic[] {
  const doubtful = steps.findIndex((doubt) => doubt !== 'none');
  if (puzzle || order || doubtful === 0) return [];
  const certain = { ...scene, steps: scene.steps.slice(0, doubtful === -1 ? undefined : doubtful) };
  return checkSceneWith(judgeBeat, certain).errors;
}
