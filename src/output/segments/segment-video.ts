/**
 * A video in segments: each different picture is drawn and encoded once, what stands still is written without being
 * encoded, and all is joined and checked before it gets its name.
 */
import { mkdir, rm } from 'node:fs/promises';
import { type Codec, mostPictures } from '../codecs/codec.ts';
import { codecOf } from '../codecs/codecs.ts';
import { requireEncoders } from '../ffmpeg.ts';
import { finishVideo, isFinished } from '../finish-video.ts';
import type { Painter } from '../painters/painter.ts';
import type { ProgressMeter } from '../progress.ts';
import { sounds } from '../sound.ts';
import type { PicturePlan, VideoPlan } from '../video-plan.ts';
import { writeWholeFile } from '../whole-file.ts';
import { requireFrames } from '../whole-video.ts';
import { joinSegments } from './join-segments.ts';
import { renderSegments } from './render-segments.ts';
import type { SegmentCache } from './segment-cache.ts';
import type { SegmentIndex } from './segment-file.ts';
import { folderStore, type SegmentStore } from './segment-store.ts';
import { type Segment, segmentsOf } from './segments.ts';
import { stretchesOf } from './stretches.ts';

export interface SegmentedOptions {
  readonly meter: ProgressMeter;
  readonly signal: AbortSignal | undefined;
  /** Where segments are kept from one render to the next; undefined: nowhere. */
  readonly cache: SegmentCache | undefined;
  /** How many processes may draw; undefined: as many as are worth it. */
  readonly workers?: number | undefined;
}

/** Writes the film as `plan` says. Throws a `MachineFailure`, `CannotHold` before anything is written, or the signal's reason. */
export async function writeSegmented(painter: Painter, plan: VideoPlan, options: SegmentedOptions): Promise<void> {
  const { signal } = options;
  const codec = codecOf(plan.codec, painter, kindOf(painter, plan));
  await requireEncoders([
    ...(codec.encoder === undefined ? [] : [codec.encoder]),
    ...(plan.sound === undefined ? [] : [sounds[plan.container].encoder]),
  ]);
  const segments = filmSegments(painter, codec, plan.key);
  await writeWholeFile(plan.file, async (part) => {
    await withSegments(`${part}-segments`, segments, painter, plan, options, async (store, indices) => {
      const picture = isFinished(plan) ? part : store.scratch();
      await joinSegments(picture, { ...plan, ...pictureOf(painter, plan) }, codec, segments, indices, store, signal);
      if (picture !== part) await finishVideo(picture, plan, plan.container, painter, part, signal);
      await requireFrames(part, painter, signal);
      signal?.throwIfAborted();
    });
  });
}

/** Makes those segments of the film, or takes them from the cache, and has `work` done with them; then all is removed. */
export async function withSegments(
  folder: string,
  segments: readonly Segment[],
  painter: Painter,
  plan: PicturePlan,
  { meter, signal, cache, workers }: SegmentedOptions,
  work: (store: SegmentStore, indices: readonly SegmentIndex[]) => Promise<void>,
): Promise<void> {
  const kind = kindOf(painter, plan);
  const codec = codecOf(plan.codec, painter, kind);
  const store = folderStore(folder);
  try {
    await mkdir(folder);
    const kept = await fetchAll(segments, store, cache);
    meter.keep(segments.reduce((sum, { digest, frameCount }) => sum + (kept.has(digest) ? frameCount : 0), 0));
    const setting = { ...kind, key: plan.key, folder };
    await work(store, await renderSegments(segments, { painter, codec, setting, store, meter, signal, workers }));
  } finally {
    // What is done is done, even if the rest was interrupted.
    if (cache !== undefined) await keepAll(segments, store, cache);
    await rm(folder, { recursive: true, force: true });
  }
}

/** Which way of compressing pictures the plan asks for. */
export function kindOf(painter: Painter, { codec, key, compatible = false }: PicturePlan) {
  return { codec, opaque: isOpaque(painter, key), compatible };
}

/** What a container has to know of the picture. */
export function pictureOf(painter: Painter, { key }: PicturePlan) {
  const { width, height, rate, frameCount } = painter;
  return { width, height, rate, frameCount, alpha: !isOpaque(painter, key) };
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
  const mostMoving = mostPictures(codec, width, height);
  const recipe = JSON.stringify([codec.recipe, key ?? null]);
  return segmentsOf(stretchesOf(painter), { mostMoving, recipe, stillPictures: codec.stillPictures });
}

/** Whether no pixel lets anything through. */
export function isOpaque(painter: Painter, key: string | undefined): boolean {
  return !painter.transparent || key !== undefined;
}
