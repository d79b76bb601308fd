/**
 * Fixing an unsound scene: step after step, each fix marked by a comment, until it checks sound. What cannot be fixed
 * (because a solution contradicts it, or no argument was found) is commented out.
 */

import { type Edit, edited } from '../check/scene-text.ts';
import { textFixes } from '../check/text-fixes.ts';
import type { CheckedScene, CheckedStep } from '../check/verdict.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { checkScene } from './check-scene.ts';
import { readScene } from './read-scene.ts';

export interface FixedScene {
  readonly text: string;
  /** What was done, one line each: the step's id and the fix. */
  readonly done: readonly string[];
  /** Whether the fixed scene is sound. It is not if a step is in flow style, which is left unchanged. */
  readonly sound: boolean;
}

/** At most this many fixes: more than any lesson has steps. */
const roundsBound = 200;

/** Fixes the scene of this text, which must be readable. */
export function fixScene(text: string): FixedScene {
  const done: string[] = [];
  let reached = text;
  for (let round = 0; round < roundsBound; round++) {
    const checked = checkedText(reached);
    if (checked === undefined) break;
    if (checked.sound) return { text: reached, done, sound: true };
    const root = checked.steps.find((step) => checked.summary.toFix.includes(step.step.id));
    const next = root === undefined ? undefined : fixStep(reached, checked, root);
    if (root === undefined || next === undefined) break;
    done.push(`${root.step.id}: ${next.what}`);
    reached = next.text;
  }
  return { text: reached, done, sound: checkedText(reached)?.sound ?? false };
}

function checkedText(text: string): CheckedScene | undefined {
  const { scene } = readScene(text);
  if (scene === undefined) return undefined;
  const checked = checkScene(scene);
  return checked.errors.length > 0 ? undefined : checked;
}

/** The first fix of the step whose text can be read and improves the step. */
function fixStep(
  text: string,
  checked: CheckedScene,
  step: CheckedStep,
): { readonly text: string; readonly what: string } | undefined {
  const ids = new Set(checked.steps.map((each) => each.step.id));
  for (const { what, edits } of textFixes(text, checked.scene.puzzle.grid, step, ids)) {
    const next = edited(text, edits);
    const again = checkedText(next);
    if (again === undefined || next === text) continue;
    const after = again.steps.find((each) => each.step.id === step.step.id);
    if (after === undefined || after.sound || faultsOf(after) < faultsOf(step)) return { text: next, what };
  }
  return undefined;
}

function faultsOf(step: CheckedStep): number {
  const conclusions = step.conclusions.filter((each) => each.verdict === 'unproved' || each.verdict === 'false').length;
  const links = step.links.filter((link) => !link.holds).length;
  return conclusions + links + step.faults.length + (step.name?.judged === 'misnamed' ? 1 : 0);
}

/** The text with the list that `so: all` stands for written out in every step that has it. */
export function spellOut(text: string, checked: CheckedScene): string {
  const { grid } = checked.scene.puzzle;
  const edits = checked.steps.flatMap(({ step, conclusions }): Edit[] => {
    if (step.so?.kind !== 'all' || step.soSpan === undefined) return [];
    const removed = conclusions.filter((each) => each.origin === 'so' && each.verdict === 'proved');
    if (removed.length === 0) return [];
    return [
      { ...step.soSpan, text: compactly(removed.map((each) => printConclusion(grid, each.conclusion))).join(' ') },
    ];
  });
  return edited(text, edits);
}
