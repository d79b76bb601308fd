/**
 * Drawing and encoding segments.
 */

import type { Codec } from '../codecs/codec.ts';
import { MachineFailure } from '../machine/machine-failure.ts';
import type { Painter } from '../painters/painter.ts';
import { frameCanvas } from '../pixels/canvas.ts';
import { type FrameSource, frameSource } from '../pixels/frame-source.ts';
import { picturesUnderWay } from './at-once.ts';
import { keysOf } from './samples.ts';
import { Borders, checkSegments } from './segment-check.ts';
import type { SegmentStore } from './segment-store.ts';
import { picturesOf, type Segment } from './segments.ts';
import type { Setting } from './worker-messages.ts';

/**
 * Called for every picture passed to the encoder: how many frames of the film it represents, and how many pictures were
 * drawn for it.
 */
export type PictureDone = (frames: number, drawn: number) => void;

export interface SegmentRenderer {
  /** In one run of the encoder: one segment, or several if the codec takes several. Ends when they are in the store. */
  render(segments: readonly Segment[], onPicture: PictureDone, signal: AbortSignal | undefined): Promise<void>;
}

/**
 * Draws and encodes segments into `store`. Calls may overlap, so that some segments are drawn while others are
 * compressed and checked; each call has its own canvas.
 */
export function segmentRenderer(
  painter: Painter,
  codec: Codec,
  setting: Setting,
  store: SegmentStore,
): SegmentRenderer {
  const idle: FrameSource[] = [];
  const newSource = (): FrameSource => {
    const canvas = frameCanvas(painter.width, painter.height, setting.key);
    return frameSource(painter, canvas, codec.format, picturesUnderWay(setting.codec));
  };

  return {
    async render(segments, onPicture, signal) {
      const works = segments.map((segment): Drawing => {
        const borders = codec.format === 'png' ? undefined : new Borders(segment, codec.format, painter);
        return { segment, borders };
      });
      const starts: number[] = [];
      const keys: number[] = [];
      let count = 0;
      for (const segment of segments) {
        const start = count;
        starts.push(start);
        keys.push(...keysOf(segment, codec.keyEvery).map((key) => start + key));
        count += picturesOf(segment).length;
      }
      const source = idle.pop() ?? newSource();
      const pictures = drawn(source, works, onPicture);
      const { config, packets } = await codec
        .encode({ pictures, count, keys, starts, scratch: store.scratch(), signal })
        .finally(() => idle.push(source));
      if (packets.length !== count) throw new MachineFailure(`the encoder wrote ${packets.length} frames of ${count}`);
      const looks = works.map(({ segment, borders }, at) => {
        return { segment, borders, encoded: { config, packets: packets.slice(starts[at], starts[at + 1]) } };
      });
      const { codec: name, opaque } = setting;
      await checkSegments(looks, { painter, codec, name, alpha: !opaque, scratch: store.scratch(), signal });
      for (const { segment, encoded } of looks) await store.keep(segment, encoded);
    },
  };
}

/** A segment, and what is kept for checking it. */
interface Drawing {
  readonly segment: Segment;
  readonly borders: Borders | undefined;
}

function* drawn(source: FrameSource, works: readonly Drawing[], onPicture: PictureDone): Generator<Uint8Array> {
  let before = source.drawnCount;
  for (const { segment, borders } of works) {
    const { moving, hold, holdPictures } = segment;
    let place = 0;
    const picture = function* (frame: number, frames: number): Generator<Uint8Array> {
      const bytes = source.bytesAt(frame);
      borders?.see(place++, bytes);
      yield bytes;
      onPicture(frames, source.drawnCount - before);
      before = source.drawnCount;
    };
    for (const frame of moving) yield* picture(frame, 1);
    if (hold === undefined) continue;
    yield* picture(hold.frame, hold.count);
    for (let more = 1; more < holdPictures; more++) yield* picture(hold.frame, 0);
  }
}
