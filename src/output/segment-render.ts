/**
 * One segment drawn and encoded.
 */
import { frameCanvas } from './canvas.ts';
import type { Codec } from './codecs/codec.ts';
import { type FrameSource, frameSource } from './frame-source.ts';
import { MachineFailure } from './machine-failure.ts';
import type { Painter } from './painter.ts';
import { keysOf } from './samples.ts';
import type { SegmentIndex } from './segment-file.ts';
import type { SegmentStore } from './segment-store.ts';
import { picturesOf, type Segment } from './segments.ts';

/** Told of every picture handed to the encoder: how many frames of the film it stands for, and whether it was drawn. */
export type PictureDone = (frames: number, drawn: number) => void;

export interface SegmentRenderer {
  render(segment: Segment, onPicture: PictureDone, signal: AbortSignal | undefined): Promise<SegmentIndex>;
}

/** Draws and encodes segments one after the other on one canvas, into `store`. `key` is laid under every frame. */
export function segmentRenderer(
  painter: Painter,
  codec: Codec,
  key: string | undefined,
  store: SegmentStore,
): SegmentRenderer {
  const source = frameSource(painter, frameCanvas(painter.width, painter.height, key), codec.format);
  return {
    async render(segment, onPicture, signal) {
      const pictures = picturesOf(segment);
      const encoded = await codec.encode({
        pictures: drawn(source, segment, onPicture),
        count: pictures.length,
        keys: keysOf(segment, codec.keyEvery),
        scratch: store.scratch(),
        signal,
      });
      if (encoded.packets.length !== pictures.length) {
        throw new MachineFailure(`the encoder wrote ${encoded.packets.length} frames of ${pictures.length}`);
      }
      return store.keep(segment, encoded);
    },
  };
}

function* drawn(source: FrameSource, { moving, still }: Segment, onPicture: PictureDone): Generator<Uint8Array> {
  let before = source.drawnCount;
  const done = (frames: number): void => {
    onPicture(frames, source.drawnCount - before);
    before = source.drawnCount;
  };
  for (const frame of moving) {
    yield source.bytesAt(frame);
    done(1);
  }
  if (still === undefined) return;
  yield source.bytesAt(still.frame);
  done(still.count);
}
