/**
 * Removes marks: those of a step or of a group, or all.
 */

import { nothingToJudge } from '../check/marks.ts';
import { type MarkReading, markReading } from '../scene/beats.ts';
import { quoted } from '../scene/faults.ts';
import { zero } from '../scene/fraction.ts';
import { notation } from '../scene/language-values.ts';
import { didYouMean } from '../scene/nearest-word.ts';
import { type Context, saysAll } from '../scene/reading.ts';
import type { BeatMarks } from '../scene/scene.ts';
import { spanIn, type TextNode } from '../scene/yaml-tree.ts';
import type { BeatRecord } from './record.ts';

export const reading = (): MarkReading<'clear'> =>
  markReading(
    { clear: notation('Removes marks: those of a step or of a group, or all.', ['all', 'towers']) },
    ({ values: { clear } }, context) => clear && readClear(clear.node, context),
  );

export const beat = {
  judge: nothingToJudge,
  seconds: () => zero,
  strokes: () => [],
  /** A stamp is not a mark that a scene could remove. */
  ends:
    ({ what }, groups) =>
    ({ step, group, shape }) => {
      if (shape.kind === 'stamp') return false;
      if (what === 'all' || what.includes(step)) return true;
      const name = group === undefined ? undefined : groups[group.index]?.name;
      return name !== undefined && what.includes(name);
    },
} satisfies BeatRecord<'clear'>['beat'];

function readClear(node: TextNode, { stepIds, groups, faults }: Context): BeatMarks['clear'] | undefined {
  if (saysAll(node)) return { kind: 'clear', what: 'all' };
  const what: string[] = [];
  for (const match of node.text.matchAll(/[^\s,]+/g)) {
    const [name] = match;
    what.push(name);
    if (stepIds.has(name) || groups.has(name)) continue;
    const known = [...stepIds.keys(), ...groups.keys()];
    const span = spanIn(node, match.index, match.index + name.length);
    const meant = didYouMean(name, [...known, 'all']);
    faults.error(
      'unknown-step',
      span,
      `${quoted(name)} is no step and no group of the scene${meant === '' ? '; write the id of a step, the name of a group, or all' : meant}`,
    );
  }
  return { kind: 'clear', what };
}
