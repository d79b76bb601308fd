/**
 * Renders all segments of a film into a store, with this process and, if there is enough to do, a second one.
 */
import { availableParallelism } from 'node:os';
import { type Codec, isLarge, mostPictures } from '../codecs/codec.ts';
import type { ProgressMeter } from '../machine/progress-meter.ts';
import type { Painter } from '../painters/painter.ts';
import { atOnce, isOurs } from './at-once.ts';
import type { SegmentIndex } from './segment-file.ts';
import { segmentRenderer } from './segment-render.ts';
import type { SegmentStore } from './segment-store.ts';
import { picturesOf, type Segment } from './segments.ts';
import type { Setting } from './worker-messages.ts';
import { type WorkerProcess, workerProcess } from './worker-process.ts';

export interface Rendering {
  readonly painter: Painter;
  readonly codec: Codec;
  readonly setting: Setting;
  readonly store: SegmentStore;
  readonly meter: ProgressMeter;
  readonly signal: AbortSignal | undefined;
  /** How many processes may draw; by default as many as this machine can use and has memory for, two at most. */
  readonly workers?: number | undefined;
}

/**
 * A second process is worth starting from this many seconds of work on one core; starting it takes about a quarter of
 * that.
 */
const worthASecond = 2;

/** In the order of `segments`. Those in the store, and repeated ones, are not made again. */
export async function renderSegments(
  segments: readonly Segment[],
  rendering: Rendering,
): Promise<readonly SegmentIndex[]> {
  const { store, meter } = rendering;
  const found = new Map<string, SegmentIndex>();
  const missing = new Map<string, Segment>();
  for (const segment of segments) {
    const kept = found.get(segment.digest) ?? (await store.find(segment));
    if (kept !== undefined) found.set(segment.digest, kept);
    else if (!missing.has(segment.digest)) {
      missing.set(segment.digest, segment);
      continue;
    }
    meter.advance(segment.frameCount, 0);
  }
  announce([...found.keys(), ...missing.keys()], segments, [...missing.values()], rendering);
  await makeAll([...missing.values()], rendering);
  for (const segment of missing.values()) {
    const made = await store.find(segment);
    if (made === undefined) throw new Error('a segment that was just made cannot be read');
    found.set(segment.digest, made);
  }
  return segments.map((segment) => found.get(segment.digest)!);
}

function announce(
  digests: readonly string[],
  segments: readonly Segment[],
  missing: readonly Segment[],
  rendering: Rendering,
): void {
  const byDigest = new Map(segments.map((segment) => [segment.digest, segment]));
  const different = digests.reduce((sum, digest) => sum + new Set(picturesOf(byDigest.get(digest)!)).size, 0);
  const toMake = missing.reduce((sum, segment) => sum + new Set(picturesOf(segment)).size, 0);
  rendering.meter.announce(different, toMake, 0.5 + secondsOn(missing, rendering) / coresBusy(missing, rendering));
}

/** A process that draws for ffmpeg keeps two cores busy, and so does each of two such processes. */
function coresBusy(missing: readonly Segment[], rendering: Rendering): number {
  const processes = worthIt(missing, rendering) ? 2 : 1;
  return Math.min(availableParallelism(), processes * (isOurs(rendering.setting.codec) ? 1 : 2));
}

/** Roughly how many seconds one core has to work on them. */
function secondsOn(missing: readonly Segment[], { painter, codec }: Rendering): number {
  const pictures = missing.reduce((sum, segment) => sum + picturesOf(segment).length, 0);
  return pictures * ((painter.width * painter.height) / 1e6) * codec.secondsPerMegapixel;
}

async function makeAll(missing: readonly Segment[], rendering: Rendering): Promise<void> {
  const { painter, codec, setting, store, meter, signal } = rendering;
  signal?.throwIfAborted(); // It may have been aborted while the film was scanned, and the event fires only once.
  const queue = batchesOf(missing, rendering);
  const onPicture = (frames: number, drawn: number): void => meter.advance(frames, drawn);
  // The first to fail stops the other.
  const stopping = new AbortController();
  const stop = (): void => stopping.abort(signal?.reason);
  signal?.addEventListener('abort', stop);
  const second = worthIt(missing, rendering) ? workerProcess(painter.painting!, setting) : undefined;
  try {
    const renderer = segmentRenderer(painter, codec, setting, store);
    const renderHere = async (): Promise<void> => {
      for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
        stopping.signal.throwIfAborted();
        await renderer.render(next, onPicture, stopping.signal);
      }
    };
    const away = second === undefined ? undefined : () => renderThere(second, queue, onPicture, stopping.signal);
    const works = Array.from({ length: atOnce(setting.codec, painter) }, () => [
      renderHere(),
      ...(away === undefined ? [] : [away()]),
    ]).flat();
    // All must end before the first failure is thrown: nothing may be left running.
    await Promise.allSettled(works.map((work) => work.catch((error) => stopping.abort(error))));
    if (stopping.signal.aborted) throw stopping.signal.reason;
  } finally {
    signal?.removeEventListener('abort', stop);
    await second?.stop();
  }
}

/**
 * The segments in order, in batches for one run each: starting ffmpeg costs as much as several pictures. The batches
 * are not so large that one process waits for another at the end.
 */
function batchesOf(missing: readonly Segment[], rendering: Rendering): (readonly Segment[])[] {
  const { painter, codec, setting } = rendering;
  const pictures = missing.reduce((sum, segment) => sum + picturesOf(segment).length, 0);
  const shares = 4 * atOnce(setting.codec, painter) * (worthIt(missing, rendering) ? 2 : 1);
  const most = Math.min(mostPictures(codec, painter.width, painter.height), Math.max(leastBatch, pictures / shares));
  const batches: Segment[][] = [];
  let room = 0;
  for (const segment of missing) {
    const { length } = picturesOf(segment);
    if (codec.takesSeveral && length <= room) batches.at(-1)?.push(segment);
    else {
      batches.push([segment]);
      room = most;
    }
    room -= length;
  }
  return batches;
}

/** As many pictures as take about as long as ffmpeg's start and exit. */
const leastBatch = 24;

async function renderThere(
  second: WorkerProcess,
  queue: (readonly Segment[])[],
  onPicture: (frames: number, drawn: number) => void,
  signal: AbortSignal,
): Promise<void> {
  const onAbort = (): void => void second.stop();
  signal.addEventListener('abort', onAbort);
  try {
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      signal.throwIfAborted();
      await second.render(next, onPicture);
    }
  } finally {
    signal.removeEventListener('abort', onAbort);
  }
}

function worthIt(missing: readonly Segment[], rendering: Rendering): boolean {
  const { painter, setting, workers } = rendering;
  if (painter.painting === undefined || missing.length < 2) return false;
  if (workers !== undefined) return workers > 1;
  if (isLarge(painter)) return false;
  // If ffmpeg compresses, one drawing process keeps it busy, and with it two cores.
  const cores = isOurs(setting.codec) ? 2 : 4;
  return availableParallelism() >= cores && secondsOn(missing, rendering) >= worthASecond;
}
