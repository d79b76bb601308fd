/**
 * Walks a scene step by step: what is proved enters the position, and of the rest is said why it did not.
 */
import type { Scene } from '../scene/scene.ts';
import { checkStep } from './check-step.ts';
import { startPosition } from './start-position.ts';
import { truthOf } from './truth.ts';
import type { CheckedScene } from './verdict.ts';
import type { Walk } from './walk.ts';

/** Proves or rejects every claim of the scene. The puzzle has at least one solution, or the scene would not have been read. */
export function checkScene(scene: Scene): CheckedScene {
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
    withoutAssuming: undefined,
    advice: scene.advice,
    history: [],
    mendsLeft: 16,
    diagnostics: [],
    restingSteps: new Set(),
  };
  const steps = scene.steps.map((step) => checkStep(walk, step));
  const unsound = steps.filter((step) => !step.sound).map((step) => step.step.id);
  const toMend = unsound.filter((id) => !walk.restingSteps.has(id));
  return {
    scene,
    solutions: truth.solutions.length === 0 ? 0 : truth.solutions.length === 1 ? 1 : 2,
    takenAsRead,
    steps,
    sound: unsound.length === 0,
    summary: { steps: steps.length, toMend, restOnThem: unsound.length - toMend.length },
    errors: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'error'),
    warnings: walk.diagnostics.filter((diagnostic) => diagnostic.severity === 'warning'),
  };
}
