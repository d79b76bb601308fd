/**
 * HEVC by x265. Pictures are compressed at a constant quantizer and without lookahead; a hold is a group of the
 * encoder's own pictures, repeated.
 */
import { readMatroska } from '../containers/matroska-read.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { colourOptions } from './colour.ts';
import { encodePictures } from './encode-pictures.ts';
import { keyframeEvery } from './keyframes.ts';

export const hevc: CodecRecord = {
  title: 'HEVC',
  option: '--codec hevc',
  encoder: 'libx265',
  decoder: undefined,
  // `hvc1`: all parameter sets are in the sample entry (ISO/IEC 14496-15, 8.4.1), as QuickTime requires.
  holders: { mov: { entry: 'hvc1', compressor: 'HEVC Coding', configBox: 'hvcC', isLuma: true } },
  carriesAlpha: false,
  evenSides: true,
  make: codecFor,
};

/** One thread, so that the bytes do not depend on the machine; no information about the encoder in the stream. */
const options = [
  ...colourOptions,
  ...['-preset', 'veryfast', '-qp', '18', '-pix_fmt', 'yuv420p', '-threads', '1', '-forced-idr', '1'],
  '-x265-params',
  'keyint=-1:scenecut=0:bframes=0:open-gop=0:ref=1:weightp=0:rc-lookahead=0:repeat-headers=0:info=0:pools=none:frame-threads=1:log-level=error',
];

function codecFor({ width, height, rate }: CodecFilm): Codec {
  const keyEvery = keyframeEvery(rate);
  const format = 'yuv420p';
  return {
    format,
    recipe: JSON.stringify(['hevc 1', options, width, height, String(rate.numerator), String(rate.denominator)]),
    holdPictures: keyEvery + 1,
    keyEvery,
    bytesPerPixel: 0.25,
    takesSeveral: false, // The stream is used unchanged, so a segment must not depend on others in it.
    secondsPerMegapixel: 0.03,
    repeatIsDecoded: true,
    asDrawn: [],
    async encode(work) {
      const words = ['-c:v', 'libx265', ...options, '-f', 'matroska'];
      return readMatroska(await encodePictures(work, { width, height, rate, format }, words));
    },
    repeat: () => undefined,
  };
}
