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
import type { SegmentCache } from './segment-cache.ts';
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
  /** Where segments are kept from one render to the next; undefined: nowhere. */
  readonly cache: SegmentCache | undefined;
}

/** Writes the film as `plan` says. Throws a `MachineFailure`, `CannotHold` before anything is written, or the signal's reason. */
export async function writeSegmented(
  painter: Painter,
  plan: VideoPlan,
  { meter, signal, cache }: SegmentedOptions,
): Promise<void> {
  const kind = { codec: plan.codec, opaque: isOpaque(painter, plan.key), compatible: plan.compatible ?? false };
  const codec = codecOf(plan.codec, painter, kind);
  await requireEncoders([
    ...(codec.encoder === undefined ? [] : [codec.encoder]),
    ...(plan.sound === undefined ? [] : [sounds[plan.container].encoder]),
  ]);
  await writeWholeFile(plan.file, async (part) => {
    const folder = `${part}-segments`;
    const store = folderStore(folder);
    const segments = filmSegments(painter, codec, plan.key);
    try {
      await mkdir(folder);
      const kept = await fetchAll(segments, store, cache);
      meter.keep(segments.reduce((sum, { digest, frameCount }) => sum + (kept.has(digest) ? frameCount : 0), 0));
      const setting = { ...kind, key: plan.key, folder };
      const indices = await renderSegments(segments, { painter, codec, setting, store, meter, signal });
      const picture = isFinished(plan) ? part : store.scratch();
      await join(picture, painter, plan, codec, segments, indices, store, signal);
      if (picture !== part) await finishVideo(picture, plan, plan.container, painter, part, signal);
      await requireFrames(part, painter, signal);
      signal?.throwIfAborted();
    } finally {
      // What is done is done, even if the rest was interrupted.
      if (cache !== undefined) await keepAll(segments, store, cache);
      await rm(folder, { recursive: true, force: true });
    }
  });
}

/** The digests of the segments that were in the cache. */
async function fetchAll(
  segments: readonly Segment[],
  store: SegmentStore,
  cache: SegmentCache | undefined,
): Promise<ReadonlySet<string>> {
  const kept = new Set<string>();
  if (cache === undefined) return kept;
  for (const segment of segments) {
    if (kept.has(segment.digest)) continue;
    if (await cache.fetch(segment.digest, store.fileOf(segment))) kept.add(segment.digest);
  }
  return kept;
}

async function keepAll(segments: readonly Segment[], store: SegmentStore, cache: SegmentCache): Promise<void> {
  for (const segment of new Map(segments.map((one) => [one.digest, one])).values()) {
    await cache.keep(segment.digest, store.fileOf(segment));
  }
  await cache.trim();
}

/** The film's segments for this codec. `key` (`#rrggbb`) is laid under every frame. */
export function filmSegments(painter: Painter, codec: Codec, key: string | undefined): Segment[] {
  const { width, height } = painter;
  const mostBytes = 64 * 1024 * 1024;
  const mostMoving = Math.max(16, Math.min(240, Math.floor(mostBytes / (codec.bytesPerPixel * width * height))));
  const recipe = JSON.stringify([codec.recipe, key ?? null]);
  return segmentsOf(stretchesOf(painter), { mostMoving, recipe, stillPictures: codec.stillPictures });
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
