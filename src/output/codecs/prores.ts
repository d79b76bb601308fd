/**
 * ProRes 4444: every picture is compressed on its own, and a held picture is repeated.
 */
import type { Packet } from '../containers/track.ts';
import { canvasPixelFormat } from '../pixels/canvas.ts';
import { type Codec, type CodecFilm, type CodecRecord, isLarge } from './codec.ts';
import { colourTags } from './colour.ts';
import { encodePictures } from './encode-pictures.ts';

export const prores: CodecRecord = {
  title: 'ProRes 4444',
  option: undefined,
  encoder: 'prores_ks',
  decoder: undefined,
  holders: { mov: { entry: 'ap4h', compressor: 'Apple ProRes 4444', configBox: undefined, isLuma: true } },
  carriesAlpha: true,
  evenSides: false,
  make: codecFor,
};

/**
 * A fixed scale of 2 is five times as fast as a search within a bit rate, and a page of marks stays within 3 of 255.
 */
const options = ['-profile:v', '4444', '-vendor', 'apl0', '-alpha_bits', '16', '-qscale:v', '2'];

function codecFor({ width, height, rate, opaque }: CodecFilm): Codec {
  const format = opaque ? 'opaque' : 'rgba';
  const filter = [
    'scale=out_color_matrix=bt709:out_range=tv:flags=accurate_rnd',
    colourTags,
    `format=${opaque ? 'yuv444p10le' : 'yuva444p10le'}`,
  ].join(',');
  return {
    format,
    recipe: JSON.stringify(['prores 1', options, filter, format, width, height]),
    holdPictures: 1,
    keyEvery: Number.POSITIVE_INFINITY,
    bytesPerPixel: 0.5,
    takesSeveral: true,
    secondsPerMegapixel: 0.04,
    repeatIsDecoded: true,
    asDrawn: [
      'scale=in_color_matrix=bt709:in_range=tv:flags=accurate_rnd+full_chroma_int',
      `format=${opaque ? canvasPixelFormat : format}`,
    ],
    async encode(work) {
      // The bytes are the same as with more threads, each of which needs memory for several pictures.
      const threads = isLarge({ width, height }) ? ['-threads', '1'] : [];
      const words = ['-c:v', 'prores_ks', ...options, ...threads, '-f', 'rawvideo'];
      const stream = await encodePictures(work, { width, height, rate, format }, words, filter);
      return { config: new Uint8Array(), packets: framesOf(stream) };
    },
    repeat: () => undefined,
  };
}

/** A frame gives its own length in its first four bytes, before `icpf` (SMPTE RDD 36, 5.1). */
function framesOf(stream: Uint8Array): Packet[] {
  const view = new DataView(stream.buffer, stream.byteOffset, stream.length);
  const packets: Packet[] = [];
  let at = 0;
  while (at + 8 <= stream.length) {
    const length = view.getUint32(at);
    if (length < 8 || at + length > stream.length) break;
    packets.push({ bytes: stream.subarray(at, at + length), key: true });
    at += length;
  }
  return packets;
}
