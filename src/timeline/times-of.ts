/**
 * Every time that a scene gives, as written.
 */
import type { Time } from '../scene/anchors.ts';
import type { Located, TimedScene } from '../scene/scene.ts';
import { itemsOf } from './step-outline.ts';

/** The times of the video, its board and the steps; those of versions and of the footage are left out. */
export function timesOf(scene: TimedScene): readonly Located<Time>[] {
  const { length, board } = scene.video;
  const inSteps = scene.steps.flatMap((step) => [
    step.at,
    step.until,
    ...(step.show ?? []).flatMap((beat) => [beat.at, beat.mark.kind === 'strike' ? beat.mark.gone : undefined]),
    ...itemsOf(step).map((item) => item.at),
  ]);
  return [length, ...board.map((place) => place.at), ...inSteps].filter((time) => time !== undefined);
}
