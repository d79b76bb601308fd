/**
 * Takes marks away: those of a step or of a group, or all.
 */

import { nothingToJudge } from '../check/marks.ts';
import { zero } from '../scene/fraction.ts';
import type { BeatRecord } from './record.ts';

export const beat = {
  judge: nothingToJudge,
  seconds: () => zero,
  strokes: () => [],
  /** A stamp is no mark that a scene could take away. */
  ends:
    ({ what }, groups) =>
    ({ step, group, shape }) => {
      if (shape.kind === 'stamp') return false;
      if (what === 'all' || what.includes(step)) return true;
      const name = group === undefined ? undefined : groups[group.index]?.name;
      return name !== undefined && what.includes(name);
    },
} satisfies BeatRecord<'clear'>['beat'];
