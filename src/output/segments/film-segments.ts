/**
 * The segments of a film, made into a store or taken from the cache.
 */
import { mkdir, rm } from 'node:fs/promises';
import { type Codec, mostPictures } from '../codecs/codec.ts';
import { codecOf } from '../codecs/codecs.ts';
import type { ProgressMeter } from '../machine/progress-meter.ts';
import { holdsOf } from '../painters/holds.ts';
import type { Painter } from '../painters/painter.ts';
import { renderSegments } from './render-segments.ts';
import type { SegmentCache } from './segment-cache.ts';
import type { SegmentIndex } from './segment-file.ts';
import { folderStore, type SegmentStore } from './segment-store.ts';
import { type Segment, segmentsOf } from './segments.ts';
import type { PicturePlan } from './video-plan.ts';

export interface SegmentedOptions {
  readonly meter: ProgressMeter;
  readonly signal: AbortSignal | undefined;
  /** Where segments are kept from one render to the next; undefined: nowhere. */
  readonly cache: SegmentCache | undefined;
  /** How many processes may draw; undefined: as many as are worthwhile. */
  readonly workers?: number | undefined;
}

/** Makes `folder`, runs `work` with a store in it, and removes it. */
export async function withStore<T>(folder: string, work: (store: SegmentStore) => Promise<T>): Promise<T> {
  try {
    await mkdir(folder);
    return await work(folderStore(folder));
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The film's segments, and the codec that makes them. */
export function filmSegments(
  painter: Painter,
  plan: PicturePlan,
): { readonly codec: Codec; readonly segments: readonly Segment[] } {
  const codec = codecOf(plan.codec, painter, kindOf(painter, plan));
  const mostMoving = mostPictures(codec, painter.width, painter.height);
  const recipe = JSON.stringify([codec.recipe, plan.key ?? null]);
  return { codec, segments: segmentsOf(holdsOf(painter), { mostMoving, recipe, holdPictures: codec.holdPictures }) };
}

/** Makes those segments of the film, or takes them from the cache. */
export async function segmentsInto(
  store: SegmentStore,
  segments: readonly Segment[],
  painter: Painter,
  plan: PicturePlan,
  { meter, signal, cache, workers }: SegmentedOptions,
): Promise<readonly SegmentIndex[]> {
  const kind = kindOf(painter, plan);
  const codec = codecOf(plan.codec, painter, kind);
  try {
    const kept = await fetchAll(segments, store, cache);
    meter.keep(segments.reduce((sum, { digest, frameCount }) => sum + (kept.has(digest) ? frameCount : 0), 0));
    const setting = { ...kind, key: plan.key, folder: store.folder };
    return await renderSegments(segments, { painter, codec, setting, store, meter, signal, workers });
  } finally {
    // Keeps what was made, even if the rest was interrupted.
    if (cache !== undefined) await keepAll(segments, store, cache);
  }
}

/** Which way of compressing pictures the plan asks for. */
export function kindOf(painter: Painter, { codec, key, compatible = false }: PicturePlan) {
  return { codec, opaque: isOpaque(painter, key), compatible };
}

/** What a container has to know about the picture. */
export function pictureOf(painter: Painter, { key }: Pick<PicturePlan, 'key'>) {
  const { width, height, rate, frameCount } = painter;
  return { width, height, rate, frameCount, alpha: !isOpaque(painter, key) };
}

/** Whether every pixel is opaque. */
function isOpaque(painter: Painter, key: string | undefined): boolean {
  return !painter.transparent || key !== undefined;
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
