/**
 * Fixing an unsound scene: step after step, each fix marked by a comment, until it checks sound. What cannot be fixed
 * (because a solution contradicts it, or no argument was found) is commented out.
 * Every step that was sound stays so, with its own argument and name, if there is a fix that spares it.
 */

import { inWords } from '../check/explain.ts';
import { type Edit, edited } from '../check/scene-text.ts';
import type { CheckedScene } from '../check/verdict.ts';
import { compactly } from '../grid/notation/compact.ts';
import { printConclusion } from '../grid/notation/print.ts';
import { checkedText, fixStep } from './fix-step.ts';

export interface FixedScene {
  readonly text: string;
  /** What was done, one line each: the step's id and the fix, and the steps that pay for it, if that could not be helped. */
  readonly done: readonly string[];
  /** Whether the fixed scene is sound. It is not if a step is in flow style, which is left unchanged. */
  readonly sound: boolean;
}

/** At most this many steps: more than any lesson has. */
const roundsBound = 200;

/** Fixes the scene of this text, which must be readable. */
export function fixScene(text: string): FixedScene {
  const done: string[] = [];
  let reached = text;
  for (let round = 0; round < roundsBound; round++) {
    const checked = checkedText(reached, { kind: 'verdicts' });
    if (checked === undefined) break;
    if (checked.sound) return { text: reached, done, sound: true };
    const [id] = checked.summary.toFix;
    const next = id === undefined ? undefined : fixStep(reached, checked, id);
    if (next === undefined) break;
    done.push(...next.what.map((what) => `${id}: ${what}`));
    if (next.paying.length > 0) done.push(`${id}: nothing spares ${inWords(next.paying)}, which was sound before`);
    reached = next.text;
  }
  return { text: reached, done, sound: checkedText(reached, { kind: 'verdicts' })?.sound ?? false };
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
