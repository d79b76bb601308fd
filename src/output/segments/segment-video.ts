/**
 * A video in segments: each different picture is drawn and encoded once, holds are written without encoding, and the
 * whole is joined and checked before it gets its name.
 */
import { requireFrames } from '../ffmpeg/require-frames.ts';
import { writeAtomically } from '../machine/atomic-write.ts';
import type { Painter } from '../painters/painter.ts';
import { finishVideo, isFinished } from '../tracks/finish-video.ts';
import { encodersFor, requireEncoders } from '../tracks/require-encoders.ts';
import { filmSegments, pictureOf, type SegmentedOptions, segmentsInto, withStore } from './film-segments.ts';
import { joinSegments } from './join-segments.ts';
import type { VideoPlan } from './video-plan.ts';
import { workablePlan } from './workable-plan.ts';

/**
 * Writes the film according to `plan`, and returns what may surprise the user, a sentence each. Throws a
 * `MachineFailure`, or the signal's reason.
 */
export async function writeVideo(
  painter: Painter,
  plan: VideoPlan,
  options: SegmentedOptions,
): Promise<readonly string[]> {
  const { signal } = options;
  await requireEncoders(encodersFor(plan.codec, plan.container, plan.sound !== undefined));
  return writeAtomically(plan.file, (temp) =>
    withStore(`${temp}-segments`, async (store) => {
      const { picture, notices } = await workablePlan(painter, plan, store, signal);
      const { codec, segments } = filmSegments(painter, picture);
      const indices = await segmentsInto(store, segments, painter, picture, options);
      const pictures = isFinished(plan) ? temp : store.scratch();
      const film = { ...pictureOf(painter, picture), container: plan.container, codec: plan.codec };
      await joinSegments(pictures, film, codec, segments, indices, store, signal);
      if (pictures !== temp) await finishVideo(pictures, plan, plan.container, painter, temp, signal);
      await requireFrames(temp, painter, signal);
      signal?.throwIfAborted();
      return notices;
    }),
  );
}
