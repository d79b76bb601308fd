/**
 * A video in segments: each different picture is drawn and encoded once, what stands still is written without being
 * encoded, and all is joined and checked before it gets its name.
 */
import { mkdir, rm } from 'node:fs/promises';
import { CannotHold, type Codec } from './codecs/codec.ts';
import { codecOf } from './codecs/codecs.ts';
import { writeMov } from './containers/mov.ts';
import type { Track } from './containers/track.ts';
import { writeWebm } from './containers/webm.ts';
import { requireEncoders } from './ffmpeg.ts';
import { finishVideo, isFinished } from './finish-video.ts';
import type { Painter } from './painter.ts';
import type { ProgressMeter } from './progress.ts';
import { renderSegments } from './render-segments.ts';
import { type Sample, samplesOf } from './samples.ts';
import { PacketReader, type SegmentIndex } from './segment-file.ts';
import { folderStore, type SegmentStore } from './segment-store.ts';
import { type Segment, segmentsOf } from './segments.ts';
import { sounds } from './sound.ts';
import { stretchesOf } from './stretches.ts';
import type { VideoPlan } from './video-file.ts';
import { writeWholeFile } from './whole-file.ts';
import { requireFrames } from './whole-video.ts';

export interface SegmentedOptions {
  readonly meter: ProgressMeter;
  readonly signal: AbortSignal | undefined;
}

/** Writes the film as `plan` says. Throws a `MachineFailure`, `CannotHold` before anything is written, or the signal's reason. */
export async function writeSegmented(
  painter: Painter,
  plan: VideoPlan,
  { meter, signal }: SegmentedOptions,
): Promise<void> {
  const codec = codecOf(plan.codec, painter, isOpaque(painter, plan.key));
  await requireEncoders([
    ...(codec.encoder === undefined ? [] : [codec.encoder]),
    ...(plan.sound === undefined ? [] : [sounds[plan.container].encoder]),
  ]);
  await writeWholeFile(plan.file, async (part) => {
    const folder = `${part}-segments`;
    try {
      await mkdir(folder);
      const store = folderStore(folder);
      const segments = filmSegments(painter, codec, plan.key);
      const setting = { codec: plan.codec, opaque: isOpaque(painter, plan.key), key: plan.key, folder };
      const indices = await renderSegments(segments, { painter, codec, setting, store, meter, signal });
      const picture = isFinished(plan) ? part : store.scratch();
      await join(picture, painter, plan, codec, segments, indices, store, signal);
      if (picture !== part) await finishVideo(picture, plan, plan.container, painter, part, signal);
      await requireFrames(part, painter, signal);
      signal?.throwIfAborted();
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
}

/** The film's segments for this codec. `key` (`#rrggbb`) is laid under every frame. */
export function filmSegments(painter: Painter, codec: Codec, key: string | undefined): Segment[] {
  const { width, height } = painter;
  const mostBytes = 64 * 1024 * 1024;
  const mostMoving = Math.max(16, Math.min(240, Math.floor(mostBytes / (codec.bytesPerPixel * width * height))));
  return segmentsOf(stretchesOf(painter), { mostMoving, recipe: JSON.stringify([codec.recipe, key ?? null]) });
}

async function join(
  file: string,
  painter: Painter,
  plan: VideoPlan,
  codec: Codec,
  segments: readonly Segment[],
  indices: readonly SegmentIndex[],
  store: SegmentStore,
  signal: AbortSignal | undefined,
): Promise<void> {
  const config = indices[0]?.config ?? new Uint8Array();
  if (indices.some((index) => Buffer.compare(index.config, config) !== 0)) {
    throw new CannotHold('the segments of the film cannot be joined');
  }
  const reader = new PacketReader();
  const track: Track = {
    codec: plan.codec,
    config,
    width: painter.width,
    height: painter.height,
    rate: painter.rate,
    alpha: !isOpaque(painter, plan.key),
    frameCount: painter.frameCount,
    samples: function* (): Generator<Sample> {
      for (let at = 0; at < segments.length; at++) {
        const [segment, index] = [segments[at]!, indices[at]!];
        const read = (place: number) => reader.read(store.fileOf(segment), index.packets[place]!);
        yield* samplesOf(segment, index, codec, read);
      }
    },
  };
  try {
    if (plan.container === 'webm') await writeWebm(file, track, signal);
    else await writeMov(file, track, plan.container, signal);
  } finally {
    reader.close();
  }
}

/** Whether no pixel lets anything through. */
export function isOpaque(painter: Painter, key: string | undefined): boolean {
  return !painter.transparent || key !== undefined;
}
