/**
 * A scene's times as frames: every step, beat, item and place of the board, by exact arithmetic up to the one rounding.
 */
import type { Clock } from '../scene/anchor.ts';
import { absolutePart } from '../scene/anchors.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import type { Fraction } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import { printLabel, whyNoLabel } from '../scene/timecode-label.ts';
import { type BoardPlace, placesOf } from './board.ts';
import { clockOf } from './clock.ts';
import type { Said } from './film.ts';
import type { Narration } from './narration.ts';
import { saidOf } from './said.ts';
import type { ScheduledStep } from './step-frames.ts';
import type { StepOutline } from './step-outline.ts';
import { held, neverSeen, spokenAgain } from './step-remarks.ts';
import { pastEnd, timeError, timeWarning } from './time-faults.ts';
import { everyNode, type NodeOptions, nodesOf } from './time-graph.ts';
import { resolveAll } from './time-node.ts';
import { timesOf } from './times-of.ts';
import type { VideoLength } from './video-length.ts';

export type { ScheduledBeat, ScheduledStep } from './step-frames.ts';

export interface Schedule {
  /** Frames a second. */
  readonly rate: Fraction;
  readonly frameCount: number;
  readonly steps: readonly ScheduledStep[];
  /** What is said, sentence by sentence: the narration's cues, or what the steps say. */
  readonly said: readonly Said[];
  /** In order of `from`, the first at frame 0; empty if the scene gives no board. */
  readonly board: readonly BoardPlace[];
}

export type ScheduleOptions = NodeOptions;

/**
 * The frames of everything that a scene shows, and what is wrong with its times. With errors the schedule is what could
 * be made of the rest. `narration` is undefined if the scene names none, or if it could not be read; the latter is
 * reported by whoever reads it.
 */
export function scheduleWith(
  scene: TimedScene,
  narration: Narration | undefined,
  options: ScheduleOptions,
): { readonly schedule: Schedule; readonly diagnostics: readonly Diagnostic[] } {
  const clock = clockOf(scene, narration);
  const nodes = nodesOf(scene, clock, options);
  const { length, frameCount: count, steps, board } = nodes;
  const diagnostics = [...labelFaults(scene), ...resolveAll(everyNode(nodes))];
  const frameCount = count.value;
  const scheduled = steps.map(({ frames, gone }): ScheduledStep => {
    const beats = frames.value.beats.map((from, index) => ({ from, gone: gone[index]?.value }));
    return { ...frames.value, beats };
  });
  const outlines = steps.map(({ outline }) => outline.value);
  diagnostics.push(
    ...firstPastEnd(outlines, clock, length.value),
    ...scheduled.flatMap((step, index) => held(outlines[index]!, step, clock)),
  );
  // An impossible time moves its neighbours; remarks about those would have the same cause.
  if (!diagnostics.some((fault) => fault.severity === 'error')) {
    for (const [index, step] of scheduled.entries()) {
      diagnostics.push(...neverSeen(outlines[index]!, step, clock), ...spokenAgain(outlines[index]!, step, clock));
    }
  }
  return {
    schedule: {
      rate: clock.rate,
      frameCount,
      steps: scheduled,
      said: saidOf(scene, scheduled, narration, frameCount),
      board: placesOf(board),
    },
    diagnostics: diagnostics.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end),
  };
}

/** The first step that begins after the end without a time of its own that puts it there. */
function firstPastEnd(
  outlines: readonly StepOutline[],
  clock: Clock,
  length: VideoLength | undefined,
): readonly Diagnostic[] {
  if (length === undefined || length.frameCount <= 0) return [];
  const past = outlines.find(({ begin }) => begin.frame >= length.frameCount);
  if (past === undefined || past.step.at !== undefined) return [];
  return [pastEnd(past.step.idSpan, `step "${past.step.id}" begins`, past.begin.frame, clock, length)];
}

/** What is wrong with the first frame's label, and labels that are counted differently. */
function labelFaults(scene: TimedScene): Diagnostic[] {
  const first = scene.video.timecode;
  if (first === undefined) return [];
  const refused = whyNoLabel(first.value, scene.video.rate);
  if (refused !== undefined) return [timeError(refused.code, first.span, refused.message)];
  const counted = first.value.dropFrame ? 'drop-frame' : 'non-drop';
  return timesOf(scene).flatMap(({ value, span }) => {
    const label = absolutePart(value);
    if (label?.kind !== 'timecode' || label.timecode.dropFrame === first.value.dropFrame) return [];
    const fix = printLabel({ ...label.timecode, dropFrame: first.value.dropFrame });
    const message = `${printLabel(label.timecode)} is not counted like the first frame's ${printLabel(first.value)}, which is ${counted}; was ${fix} meant?`;
    return [timeWarning('mixed-timecode', span, message)];
  });
}
