/**
 * QuickTime Animation: lossless, lines of runs, pixels alike and pixels that do not change. Compressed here and not by
 * ffmpeg, whose encoder cannot be asked for a key picture at a certain frame.
 *
 * Source: Apple, QuickTime File Format, appendix on Animation compression, as ffmpeg's decoder reads it; from memory,
 * and tests hold it against that decoder.
 */
import type { Fraction } from '../../scene/fraction.ts';
import { canvasOrder } from '../pixels/canvas.ts';
import { keyFrameEvery } from '../segments/key-frames.ts';
import type { Codec, Packet } from './codec.ts';
import { untilOthersHadTheirTurn } from './png.ts';
import { animationPicture } from './qtrle-lines.ts';

export function qtrle(width: number, height: number, rate: Fraction, alpha: boolean): Codec {
  const shape = { width, height, order: alpha ? straightOrder : opaqueOrder };
  return {
    encoder: undefined,
    format: alpha ? 'rgba' : 'opaque',
    recipe: JSON.stringify(['qtrle 1', alpha, width, height]),
    stillPictures: 1,
    keyEvery: keyFrameEvery(rate),
    bytesPerPixel: 1,
    takesSeveral: true,
    secondsPerMegapixel: 0.01,
    async encode({ pictures, keys, signal }) {
      const packets: Packet[] = [];
      const isKey = new Set(keys);
      let before: Uint32Array | undefined;
      for (let next = pictures.next(); next.done !== true; next = pictures.next()) {
        const key = isKey.has(packets.length);
        const { buffer, byteOffset, byteLength } = next.value;
        const pixels = new Uint32Array(buffer, byteOffset, byteLength / 4);
        packets.push({ bytes: animationPicture(pixels, key ? undefined : before, shape), key });
        before = pixels;
        await untilOthersHadTheirTurn();
        signal?.throwIfAborted();
      }
      return { config: new Uint8Array(), packets };
    },
    hold: () => unchanged,
  };
}

/** The bytes of a pixel in the order in which they are written. */
const straightOrder = [3, 0, 1, 2];
const opaqueOrder = [canvasOrder.red, canvasOrder.green, canvasOrder.blue];

/** A picture of seven bytes, which is too short to hold a line: nothing changes. */
const unchanged: Packet = { bytes: Uint8Array.of(0, 0, 0, 7, 0, 0, 0), key: false };
