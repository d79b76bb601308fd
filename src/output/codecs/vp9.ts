/**
 * VP9 by libvpx, with transparency as a second stream next to the first. A held picture is followed by one-byte frames
 * that show it again.
 */
import { readMatroska } from '../containers/matroska-read.ts';
import type { Packet } from '../containers/track.ts';
import type { Codec, CodecFilm, CodecRecord } from './codec.ts';
import { colourOptions } from './colour.ts';
import { encodePictures } from './encode-pictures.ts';
import { keyframeEvery } from './keyframes.ts';

export const vp9: CodecRecord = {
  title: 'VP9',
  option: undefined,
  encoder: 'libvpx-vp9',
  // ffmpeg's own decoder ignores transparency.
  decoder: 'libvpx-vp9',
  holders: { webm: { codecId: 'V_VP9', hasConfig: false } },
  carriesAlpha: true,
  evenSides: false,
  make: codecFor,
};

/**
 * With alpha the encoder must look neither ahead nor back: -auto-alt-ref 0, -lag-in-frames 0. One thread, so that the
 * bytes do not depend on the machine.
 */
const options = [
  ...colourOptions,
  ...['-crf', '10', '-b:v', '0', '-deadline', 'realtime', '-cpu-used', '8', '-threads', '1', '-row-mt', '0'],
  ...['-auto-alt-ref', '0', '-lag-in-frames', '0'],
];

function codecFor({ width, height, rate, opaque }: CodecFilm): Codec {
  const format = opaque ? 'yuv420p' : 'yuva420p';
  return {
    format,
    recipe: JSON.stringify(['vp9 1', options, format, width, height, String(rate.numerator), String(rate.denominator)]),
    holdPictures: 1,
    keyEvery: keyframeEvery(rate),
    bytesPerPixel: 0.5,
    takesSeveral: false, // Its quantizer depends on the preceding pictures, even across keyframes.
    secondsPerMegapixel: 0.02,
    repeatIsDecoded: true,
    asDrawn: [],
    async encode(work) {
      const words = ['-c:v', 'libvpx-vp9', ...options, '-g', String(Math.max(work.count, 1)), '-f', 'matroska'];
      const stream = await encodePictures(work, { width, height, rate, format }, words);
      return { config: new Uint8Array(), packets: readMatroska(stream).packets };
    },
    repeat: () => (opaque ? again : { ...again, alpha: again.bytes }),
  };
}

/**
 * show_existing_frame of slot 0 (VP9 bitstream specification, 6.2: frame_marker 2, profile 0, show_existing_frame 1,
 * frame_to_show_map_idx 0). A keyframe fills all slots.
 */
const again: Packet = { bytes: Uint8Array.of(0x88), key: false };
