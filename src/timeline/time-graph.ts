/**
 * The time graph: all nodes of a scene, and what each depends on:
 *
 * - `length`: nothing. The `frame count`: the `video end`.
 * - `begin` of a step: the times given in the previous step, and where that one ends on its own.
 * - a `beat` or `item` that has a time: its step's begin, and the earlier ones of its kind.
 * - `until` of a step: its begin, beats and items. The `own end`: its until, or all that it says and shows.
 * - `video end`: the length, or the last step's own end.
 * - `end` of a step: its until, or the next step's begin, or the video's end.
 * - `frames` of a step, including parts without a time: all that was given in it, and its end.
 * - `gone` of a beat: its step's frames. A place of the `board`: the one before it.
 *
 * If one of these has a written time, the time's kind says which of them it uses (`dependsOn` in `scene/anchors`).
 */
import type { Clock } from '../scene/anchor.ts';
import type { Diagnostic } from '../scene/diagnostic.ts';
import { zero } from '../scene/fraction.ts';
import type { TimedScene } from '../scene/scene.ts';
import { boardNodes } from './board.ts';
import type { Frame } from './film.ts';
import { lengthNode, type MediaLengths } from './length.ts';
import type { StrokesOf } from './pace.ts';
import { wholeFrames } from './seconds.ts';
import { framesOfStep, goneAt, type StepFrames } from './step-frames.ts';
import { type StepNodes, stepNodes } from './step-nodes.ts';
import type { Timing } from './step-outline.ts';
import { timeError } from './time-faults.ts';
import { TimeNode } from './time-node.ts';
import type { VideoLength } from './video-length.ts';

export interface NodeOptions extends MediaLengths {
  /** How long marks take to be drawn. */
  readonly strokesOf: StrokesOf;
}

export type TimeNodes = ReturnType<typeof nodesOf>;

export function nodesOf(scene: TimedScene, clock: Clock, options: NodeOptions) {
  const timing: Timing = { clock, strokesOf: options.strokesOf };
  const given = lengthNode(scene, clock, options);
  const length = new TimeNode(
    'length',
    () => [given],
    (valueOf): VideoLength | undefined => {
      const known = valueOf(given);
      return known === 'none' ? undefined : known;
    },
  );
  const outlines: StepNodes[] = [];
  for (const [index, step] of scene.steps.entries()) {
    outlines.push(stepNodes(step, { before: outlines.at(-1), next: scene.steps[index + 1], length }, timing));
  }
  const last = outlines.at(-1);
  const videoEnd = new TimeNode(
    'video end',
    () => (last === undefined ? [length] : [length, last.ownEnd]),
    (valueOf) => valueOf(length)?.seconds ?? (last === undefined ? zero : valueOf(last.ownEnd)),
  );
  const frameCount = new TimeNode(
    'frame count',
    () => [given, videoEnd],
    (valueOf, report) => {
      const frames = Math.max(0, wholeFrames(clock.rate, valueOf(videoEnd)));
      if (frames === 0 && valueOf(given) !== 'none') report(noFrame(scene));
      return frames;
    },
  );
  const steps = outlines.map((own, index) => {
    const named = (what: string) => `${what} of "${scene.steps[index]!.id}"`;
    const { begin, outline, until } = own;
    const next = outlines[index + 1];
    const end = new TimeNode(
      named('end'),
      () => (next === undefined ? [until, videoEnd] : [until, next.begin]),
      (valueOf) => valueOf(until)?.seconds ?? (next === undefined ? valueOf(videoEnd) : valueOf(next.begin).seconds),
    );
    const frames = new TimeNode(
      named('frames'),
      () => [outline, end, frameCount],
      (valueOf): StepFrames =>
        framesOfStep(valueOf(outline), { ...timing, end: valueOf(end), frameCount: valueOf(frameCount) }),
    );
    const gone = (scene.steps[index]!.show ?? []).map(({ mark }, place) => {
      if (mark.kind !== 'strike' || mark.gone === undefined) return undefined;
      const time = mark.gone;
      return new TimeNode(
        named(`gone of beat ${place + 1}`),
        () => [begin, length, frames, frameCount],
        (valueOf, report): Frame | undefined => {
          const video = { clock, length: valueOf(length), frameCount: valueOf(frameCount) };
          return goneAt(time, valueOf(frames).beats[place]!, valueOf(begin), video, report);
        },
      );
    });
    return { ...own, end, frames, gone };
  });
  return { length, frameCount, steps, board: boardNodes(scene.video.board, clock, length) };
}

function noFrame(scene: TimedScene): Diagnostic {
  const { length, footage, audio } = scene.video;
  const span = length?.span ?? footage?.file.span ?? audio?.span ?? scene.puzzle.span;
  return timeError('no-length', span, 'the video would have no frames; it must last at least one');
}

/** All except those that others of them depend on. */
export function everyNode({ length, frameCount, steps, board }: TimeNodes): readonly TimeNode<unknown>[] {
  const inSteps = steps.flatMap(({ outline, frames, gone }) => [
    outline,
    frames,
    ...gone.filter((each) => each !== undefined),
  ]);
  return [length, frameCount, ...board, ...inSteps];
}
