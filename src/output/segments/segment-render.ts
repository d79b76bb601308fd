/**
 * One segment drawn and encoded.
 */

import type { Codec } from '../codecs/codec.ts';
import { MachineFailure } from '../machine-failure.ts';
import type { Painter } from '../painters/painter.ts';
import { frameCanvas } from '../pixels/canvas.ts';
import { type FrameSource, frameSource } from '../pixels/frame-source.ts';
import { keysOf } from './samples.ts';
import { Borders, checkSegment } from './segment-check.ts';
import type { SegmentIndex } from './segment-file.ts';
import type { SegmentStore } from './segment-store.ts';
import { picturesOf, type Segment } from './segments.ts';
import type { Setting } from './worker-words.ts';

/** Told of every picture handed to the encoder: how many frames of the film it stands for, and whether it was drawn. */
export type PictureDone = (frames: number, drawn: number) => void;

export interface SegmentRenderer {
  render(segment: Segment, onPicture: PictureDone, signal: AbortSignal | undefined): Promise<SegmentIndex>;
}

/**
 * Draws and encodes segments on one canvas, into `store`. Asked for two at once it draws the second while the first is
 * being compressed and looked at.
 */
export function segmentRenderer(
  painter: Painter,
  codec: Codec,
  setting: Setting,
  store: SegmentStore,
): SegmentRenderer {
  const canvas = frameCanvas(painter.width, painter.height, setting.key);
  // What we compress ourselves leans on the picture before, and no more.
  const source = frameSource(painter, canvas, codec.format, codec.encoder === undefined ? 3 : undefined);
  const turns = oneAtATime();
  return {
    async render(segment, onPicture, signal) {
      const pictures = picturesOf(segment);
      const borders = codec.format === 'png' ? undefined : new Borders(segment, codec.format, painter);
      const endTurn = await turns.begin();
      const encoded = await codec
        .encode({
          pictures: drawn(source, segment, borders, onPicture, endTurn),
          count: pictures.length,
          keys: keysOf(segment, codec.keyEvery),
          scratch: store.scratch(),
          signal,
        })
        .finally(endTurn);
      if (encoded.packets.length !== pictures.length) {
        throw new MachineFailure(`the encoder wrote ${encoded.packets.length} frames of ${pictures.length}`);
      }
      if (borders !== undefined) {
        const { codec: name, opaque } = setting;
        const checked = { painter, codec, name, alpha: !opaque, scratch: store.scratch(), signal };
        await checkSegment(segment, encoded, borders, checked);
      }
      return store.keep(segment, encoded);
    },
  };
}

/** Turns at something that there is one of. `begin` waits for the turn before to be over, and gives what ends this one. */
function oneAtATime() {
  let last: Promise<void> = Promise.resolve();
  return {
    async begin(): Promise<() => void> {
      const before = last;
      let end = (): void => undefined;
      last = new Promise((resolve) => {
        end = resolve;
      });
      await before;
      return end;
    },
  };
}

function* drawn(
  source: FrameSource,
  { moving, still, stillPictures }: Segment,
  borders: Borders | undefined,
  onPicture: PictureDone,
  onLast: () => void,
): Generator<Uint8Array> {
  let before = source.drawnCount;
  let place = 0;
  const picture = function* (frame: number, frames: number): Generator<Uint8Array> {
    const bytes = source.bytesAt(frame);
    borders?.see(place++, bytes);
    yield bytes;
    onPicture(frames, source.drawnCount - before);
    before = source.drawnCount;
  };
  for (const frame of moving) yield* picture(frame, 1);
  if (still !== undefined) {
    yield* picture(still.frame, still.count);
    for (let more = 1; more < stillPictures; more++) yield* picture(still.frame, 0);
  }
  onLast();
}
