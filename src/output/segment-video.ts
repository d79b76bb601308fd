/**
 * A video in segments: each different picture is drawn and encoded once, what stands still is written without being
 * encoded, and all is joined and checked before it gets its name.
 */
import { mkdir, rm } from 'node:fs/promises';
import { CannotHold, type Codec } from './codecs/codec.ts';
import { writeMov } from './containers/mov.ts';
import type { Track } from './containers/track.ts';
import { writeWebm } from './containers/webm.ts';
import { requireEncoders } from './ffmpeg.ts';
import { addSound } from './finish-video.ts';
import type { Painter } from './painter.ts';
import type { ProgressMeter } from './progress.ts';
import { type Sample, samplesOf } from './samples.ts';
import { PacketReader, type SegmentIndex } from './segment-file.ts';
import { segmentRenderer } from './segment-render.ts';
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
  codec: Codec,
  { meter, signal }: SegmentedOptions,
): Promise<void> {
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
      const indices = await renderSegments(painter, codec, plan.key, segments, store, meter, signal);
      const picture = plan.sound === undefined ? part : store.scratch();
      await join(picture, painter, plan, codec, segments, indices, signal);
      if (plan.sound !== undefined) await addSound(picture, plan.sound, plan.container, painter, part, signal);
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

async function renderSegments(
  painter: Painter,
  codec: Codec,
  key: string | undefined,
  segments: readonly Segment[],
  store: SegmentStore,
  meter: ProgressMeter,
  signal: AbortSignal | undefined,
): Promise<readonly SegmentIndex[]> {
  const renderer = segmentRenderer(painter, codec, key, store);
  const done = new Map<string, SegmentIndex>();
  for (const segment of segments) {
    signal?.throwIfAborted();
    const kept = done.get(segment.digest) ?? (await store.find(segment));
    if (kept !== undefined) meter.advance(segment.frameCount, 0);
    const index = kept ?? (await renderer.render(segment, (frames, drawn) => meter.advance(frames, drawn), signal));
    done.set(segment.digest, index);
  }
  return segments.map((segment) => done.get(segment.digest)!);
}

async function join(
  file: string,
  painter: Painter,
  plan: VideoPlan,
  codec: Codec,
  segments: readonly Segment[],
  indices: readonly SegmentIndex[],
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
    alpha: painter.transparent && plan.key === undefined,
    frameCount: painter.frameCount,
    samples: function* (): Generator<Sample> {
      for (let at = 0; at < segments.length; at++) yield* samplesOf(segments[at]!, indices[at]!, codec, reader);
    },
  };
  try {
    if (plan.container === 'webm') await writeWebm(file, track, signal);
    else await writeMov(file, track, plan.container, signal);
  } finally {
    reader.close();
  }
}
