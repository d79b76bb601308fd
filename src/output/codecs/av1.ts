/**
 * AV1 by libaom. A hold is a group of the encoder's own pictures, repeated: a decoder may show a keyframe again at most
 * once (AV1 bitstream specification, 6.8.2), so no packet of ours can represent a repeat.
 */
import { readMatroska } from '../containers/matroska-read.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { colourOptions } from './colour.ts';
import { encodePictures } from './encode-pictures.ts';
import { keyframeEvery } from './keyframes.ts';

export const av1: CodecRecord = {
  title: 'AV1',
  option: '--codec av1',
  encoder: 'libaom-av1',
  decoder: undefined,
  holders: {
    mp4: { entry: 'av01', compressor: 'AV1 Coding', configBox: 'av1C', isLuma: true },
    webm: { codecId: 'V_AV1', hasConfig: true },
  },
  carriesAlpha: false,
  evenSides: true,
  make: codecFor,
};

/**
 * No lookahead, so that keyframes come where they are requested; one thread, so that the bytes do not depend on the
 * machine.
 */
const options = [
  ...colourOptions,
  ...['-crf', '18', '-b:v', '0', '-usage', 'realtime', '-cpu-used', '8', '-threads', '1', '-row-mt', '0'],
  ...['-lag-in-frames', '0', '-aom-params', 'enable-tpl-model=0', '-pix_fmt', 'yuv420p'],
];

function codecFor({ width, height, rate }: CodecFilm): Codec {
  const keyEvery = keyframeEvery(rate);
  const format = 'yuv420p';
  return {
    format,
    recipe: JSON.stringify(['av1 1', options, width, height, String(rate.numerator), String(rate.denominator)]),
    holdPictures: keyEvery + 1,
    keyEvery,
    bytesPerPixel: 0.25,
    takesSeveral: false, // Its quantizer depends on the preceding pictures, even across keyframes.
    secondsPerMegapixel: 0.03,
    repeatIsDecoded: true,
    asDrawn: [],
    async encode(work) {
      const words = ['-c:v', 'libaom-av1', ...options, '-g', String(Math.max(work.count, 1)), '-f', 'matroska'];
      return readMatroska(await encodePictures(work, { width, height, rate, format }, words));
    },
    repeat: () => undefined,
  };
}
