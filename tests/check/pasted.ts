/**
 * What `check` offers for pasting, pasted: for each unsound step and each of its fixes that has steps, the scene with
 * these inserted before it, and what then differs from what was promised.
 */

import { edited, itemIndent, linesBefore } from '../../src/check/scene-text.ts';
import { type CheckedScene, stepsBefore } from '../../src/check/verdict.ts';
import { checkScene } from '../../src/lesson/check-scene.ts';
import { readScene } from '../../src/lesson/read-scene.ts';
import { idsBefore, stepText } from '../../src/scene/step-text.ts';

export interface Pasted {
  readonly step: string;
  readonly pasted: string;
  readonly wrong: readonly string[];
}

function checked(text: string): CheckedScene | undefined {
  const { scene } = readScene(text);
  return scene === undefined ? undefined : checkScene(scene);
}

export function pasteEach(text: string): readonly Pasted[] {
  const before = checked(text);
  return (before?.steps ?? []).flatMap((step) =>
    step.fixes.flatMap(({ fix, conclusions }): readonly Pasted[] => {
      const steps = stepsBefore(fix);
      const indent = itemIndent(text, step.step.span.start);
      if (steps.length === 0 || indent === undefined) return [];
      const ids = idsBefore(step.step.id, steps.length, new Set(before?.steps.map((each) => each.step.id)));
      const texts = steps.map((each, index) => stepText(each, ids[index]!));
      const lines = texts
        .join('\n')
        .split('\n')
        .map((line) => indent + line);
      const after = checked(edited(text, [linesBefore(text, step.step.span.start, lines)]));
      const wrong: string[] = [];
      if (after === undefined) return [{ step: step.step.id, pasted: texts.join('\n'), wrong: ['unreadable'] }];
      for (const id of ids) {
        const pasted = after.steps.find((each) => each.step.id === id);
        if (pasted === undefined) wrong.push('lost');
        else if (!pasted.sound) wrong.push(`pasted: ${pasted.message}`);
        else if (pasted.name?.judged !== 'fits') wrong.push(`name: ${pasted.name?.judged}`);
      }
      const again = after.steps.find((each) => each.step.id === step.step.id)!;
      for (const conclusion of conclusions) {
        const now = again.conclusions.find((each) => each.text === conclusion);
        const isGone =
          now === undefined && step.conclusions.some(({ text, origin }) => text === conclusion && origin !== 'so');
        if (!isGone && now?.verdict !== 'proved' && now?.verdict !== 'redundant')
          wrong.push(`${conclusion}: ${now?.verdict}`);
      }
      if (conclusions.length === 0 && again.links.some((link) => !link.holds)) wrong.push('a link does not hold');
      const others = step.conclusions.filter((each) => each.verdict === 'unproved' || each.verdict === 'false').length;
      const renamed = fix.kind === 'remove first' ? fix.names : undefined;
      const isMisnamed = [again.name, ...again.conclusions.map(({ name }) => name)].some(
        (name) => name?.judged === 'misnamed',
      );
      if (isMisnamed !== (renamed !== undefined)) wrong.push(`its name is ${again.name?.judged}: ${again.message}`);
      if (others === conclusions.length && !again.sound && renamed === undefined) wrong.push(`step: ${again.message}`);
      return [{ step: step.step.id, pasted: texts.join('\n'), wrong }];
    }),
  );
}
