/**
 * A beat with its frames and its colour: from a step's `show`, or from the default presentation.
 */

import type { CheckedLink } from '../check/verdict.ts';
import { Bug } from '../grid/bug.ts';
import type { Candidate } from '../grid/candidates.ts';
import type { Target } from '../grid/terms.ts';
import type { BeatMark, Group, Step } from '../scene/scene.ts';
import { type Frame, frameAt, type MarkGroup } from '../timeline/film.ts';
import type { ScheduledStep } from '../timeline/schedule.ts';

/** What a beat draws: what `show` can say, and what a step without `show` draws in addition. */
export type StagedMark =
  | Exclude<BeatMark, { readonly kind: 'outline' }>
  /** `line`: a house of the argument, solid for a base, dashed for a cover. */
  | { readonly kind: 'outline'; readonly targets: readonly Target[]; readonly line?: 'solid' | 'dashed' }
  | { readonly kind: 'reach'; readonly reaches: readonly { readonly from: Candidate; readonly to: Candidate }[] }
  | { readonly kind: 'opens'; readonly candidates: readonly Candidate[] }
  /** Links of an item of a cascade, together. */
  | { readonly kind: 'arrows'; readonly links: readonly CheckedLink[] };

/** By kind. */
export type StagedMarks = { readonly [Each in StagedMark as Each['kind']]: Each };

export interface StagedBeat {
  readonly from: Frame;
  /** The end of the time it may take: the next beat, or the step's end. */
  readonly room: Frame;
  /** If its marks end before the step does. */
  readonly until: Frame | undefined;
  /** When the recording removes a struck candidate, if the scene says so. */
  readonly gone: Frame | undefined;
  readonly group: MarkGroup | undefined;
  readonly keep: boolean;
  readonly mark: StagedMark;
}

/** The beats of a step's `show`. */
export function beatsOfShow(step: Step, times: ScheduledStep, groups: readonly Group[]): StagedBeat[] {
  const beats = step.show ?? [];
  return beats.map((beat, index): StagedBeat => {
    const frames = times.beats[index];
    if (frames === undefined) throw new Bug(`beat ${index} of step ${step.id} has no time`);
    const later = times.beats.slice(index + 1).find((next) => next.from > frames.from);
    return {
      from: frames.from,
      room: frameAt(Math.min(later?.from ?? times.until, times.until)),
      until: undefined,
      gone: frames.gone,
      group: beat.group === undefined ? undefined : markGroupOf(groups, beat.group),
      keep: beat.keep,
      mark: beat.mark,
    };
  });
}

/** The group of this name, with its place in the scene's list; undefined if the scene has none. */
export function markGroupOf(groups: readonly Group[], name: string): MarkGroup | undefined {
  const index = groups.findIndex((group) => group.name === name);
  const group = groups[index];
  return group === undefined ? undefined : { colour: group.colour, index };
}

/** The groups of two sides that name none: the scene's first two, or as many plain ones as it lacks. */
export function sideGroups(groups: readonly Group[]): readonly [MarkGroup, MarkGroup] {
  const [first, second] = groups;
  const one = first?.colour ?? 'blue';
  return [
    { colour: one, index: 0 },
    { colour: second?.colour ?? (one === 'orange' ? 'blue' : 'orange'), index: 1 },
  ];
}
