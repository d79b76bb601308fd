/**
 * A scene's times as frames: every step, beat, item and place of the board, by exact arithmetic up to the one rounding.
 */
import type { Diagnostic } from '../scene/diagnostic.ts';
import { type Fraction, zero } from '../scene/fraction.ts';
import type { BoardShape, TimedScene } from '../scene/scene.ts';
import { printLabel, whyNoLabel } from '../scene/timecode-label.ts';
import { scheduleBoard } from './board.ts';
import { clockOf } from './clock.ts';
import type { Frame, Said } from './film.ts';
import { type MediaLengths, videoLength } from './length.ts';
import type { Narration } from './narration.ts';
import { outlineSteps, ownEnd } from './outline.ts';
import { type StrokesOf, usualStrokes } from './pace.ts';
import { saidOf } from './said.ts';
import { frameAtTime, wholeFrames } from './seconds.ts';
import { type ScheduledStep, scheduleStep } from './step-frames.ts';
import type { OutlineOptions, StepOutline } from './step-outline.ts';
import { held, neverSeen, spokenAgain } from './step-remarks.ts';
import { pastEnd, timeError, timeWarning } from './time-faults.ts';
import { timesOf } from './times-of.ts';

export type { ScheduledBeat, ScheduledStep } from './step-frames.ts';

export interface Schedule {
  /** Frames a second. */
  readonly rate: Fraction;
  readonly frameCount: number;
  readonly steps: readonly ScheduledStep[];
  /** What is said, sentence by sentence: the narration's cues, or what the steps say. */
  readonly said: readonly Said[];
  /** In order of `from`, the first at frame 0; empty where the scene gives no board. */
  readonly board: readonly { readonly from: Frame; readonly shape: BoardShape }[];
}

export interface ScheduleOptions extends MediaLengths {
  /** How long marks take to be drawn; without it, as the default look draws them. */
  readonly strokesOf?: StrokesOf;
}

/**
 * The frames of all that a scene shows, and what is wrong with its times. With errors the schedule is what could be
 * made of the rest. `narration` is undefined where the scene names none, or where it could not be read; the latter is
 * for whoever reads it to report.
 */
export function schedule(
  scene: TimedScene,
  narration: Narration | undefined,
  options: ScheduleOptions,
): { readonly schedule: Schedule; readonly diagnostics: readonly Diagnostic[] } {
  const clock = clockOf(scene, narration);
  const { length, diagnostics: lengthFaults } = videoLength(scene, clock, options);
  const outlining: OutlineOptions = { clock, length, strokesOf: options.strokesOf ?? usualStrokes };
  const { outlines, diagnostics: outlineFaults } = outlineSteps(scene, outlining);
  const last = outlines.at(-1);
  const end = length?.seconds ?? (last === undefined ? zero : ownEnd(last, outlining));
  const frameCount = Math.max(0, wholeFrames(clock.rate, end));
  const board = scheduleBoard(scene.video.board, { clock, length });
  const diagnostics = [...labelFaults(scene), ...lengthFaults, ...outlineFaults, ...board.diagnostics];
  if (frameCount === 0 && lengthFaults.length === 0) diagnostics.push(noLength(scene));
  const steps = outlines.map((outline, index) =>
    scheduleStep(outline, {
      ...outlining,
      end: outline.until?.seconds ?? outlines[index + 1]?.begin ?? end,
      frameCount,
      diagnostics,
    }),
  );
  diagnostics.push(
    ...firstPastEnd(outlines, outlining),
    ...steps.flatMap((step, index) => held(outlines[index]!, step, clock)),
  );
  // A time that cannot stand moves what lies around it; remarks about that would have the same cause.
  if (!diagnostics.some((fault) => fault.severity === 'error')) {
    for (const [index, step] of steps.entries()) {
      diagnostics.push(...neverSeen(outlines[index]!, step, clock), ...spokenAgain(outlines[index]!, step, clock));
    }
  }
  return {
    schedule: {
      rate: clock.rate,
      frameCount,
      steps,
      said: saidOf(scene, steps, narration, frameCount),
      board: board.places,
    },
    diagnostics: diagnostics.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end),
  };
}

/** The first step that begins after the end, where no time of its own has put it there. */
function firstPastEnd(outlines: readonly StepOutline[], { clock, length }: OutlineOptions): readonly Diagnostic[] {
  if (length === undefined || length.frameCount <= 0) return [];
  const past = outlines.find((outline) => frameAtTime(clock.rate, outline.begin) >= length.frameCount);
  if (past === undefined || past.step.at !== undefined) return [];
  return [
    pastEnd(past.step.idSpan, `step "${past.step.id}" begins`, frameAtTime(clock.rate, past.begin), clock, length),
  ];
}

function noLength(scene: TimedScene): Diagnostic {
  const { length, footage, audio } = scene.video;
  const span = length?.span ?? footage?.file.span ?? audio?.span ?? scene.puzzle.span;
  return timeError('no-length', span, 'the video would have no frame at all; it must last one frame at least');
}

/** What is wrong with the first frame's label, and labels that are counted in another way than that one. */
function labelFaults(scene: TimedScene): Diagnostic[] {
  const first = scene.video.timecode;
  if (first === undefined) return [];
  const refused = whyNoLabel(first.value, scene.video.rate);
  if (refused !== undefined) return [timeError(refused.code, first.span, refused.message)];
  const counted = first.value.dropFrame ? 'drop-frame' : 'non-drop';
  return timesOf(scene).flatMap(({ value, span }) => {
    const label = value.kind === 'words' ? value.fallback : value;
    if (label?.kind !== 'timecode' || label.timecode.dropFrame === first.value.dropFrame) return [];
    const mend = printLabel({ ...label.timecode, dropFrame: first.value.dropFrame });
    const message = `${printLabel(label.timecode)} is not counted as the first frame's ${printLabel(first.value)}, which is ${counted}; was ${mend} meant?`;
    return [timeWarning('mixed-timecode', span, message)];
  });
}
