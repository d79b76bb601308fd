/**
 * QuickTime Animation: lossless; lines of runs of equal or unchanged pixels. Compressed here and not by ffmpeg, whose
 * encoder cannot be asked for a keyframe at a given frame.
 *
 * Source: Apple, QuickTime File Format, appendix on Animation compression, as ffmpeg's decoder reads it; from memory,
 * and tests check it against that decoder.
 */
import type { Packet } from '../containers/track.ts';
import { canvasOrder } from '../pixels/canvas.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { keyframeEvery } from './keyframes.ts';
import { untilOthersHadTheirTurn } from './png.ts';
import { animationPicture } from './qtrle-lines.ts';

export const qtrle: CodecRecord = {
  title: 'QuickTime Animation',
  option: '--lossless',
  encoder: undefined,
  decoder: undefined,
  holders: { mov: { entry: 'rle ', compressor: 'Animation', configBox: undefined, isLuma: false } },
  carriesAlpha: true,
  evenSides: false,
  make: codecFor,
};

function codecFor({ width, height, rate, opaque }: CodecFilm): Codec {
  const shape = { width, height, order: opaque ? opaqueOrder : straightOrder };
  return {
    format: opaque ? 'opaque' : 'rgba',
    recipe: JSON.stringify(['qtrle 1', !opaque, width, height]),
    holdPictures: 1,
    keyEvery: keyframeEvery(rate),
    bytesPerPixel: 1,
    takesSeveral: true,
    secondsPerMegapixel: 0.01,
    // Older ones output none (ffmpeg before 4.4).
    repeatIsDecoded: false,
    asDrawn: [],
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
    repeat: () => unchanged,
  };
}

/** The bytes of a pixel in the order in which they are written. */
const straightOrder = [3, 0, 1, 2];
const opaqueOrder = [canvasOrder.red, canvasOrder.green, canvasOrder.blue];

/** A picture of seven bytes, too short to contain a line: nothing changes. */
const unchanged: Packet = { bytes: Uint8Array.of(0, 0, 0, 7, 0, 0, 0), key: false };
