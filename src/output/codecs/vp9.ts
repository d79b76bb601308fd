/**
 * VP9 by libvpx, transparency as a second stream beside the first. A picture that stands is followed by a frame of one
 * byte that shows it again.
 */
import type { Fraction } from '../../scene/fraction.ts';
import { readBlocks } from '../containers/matroska-read.ts';
import { encodePictures } from '../segments/encode-pictures.ts';
import { keyFrameEvery } from '../segments/key-frames.ts';
import type { Codec, Packet } from './codec.ts';
import { colourOptions } from './colour.ts';

/**
 * Alpha needs the encoder to look neither ahead nor back: -auto-alt-ref 0, -lag-in-frames 0. One thread, so that what
 * comes out does not hang on the machine.
 */
const options = [
  ...colourOptions,
  ...['-crf', '10', '-b:v', '0', '-deadline', 'realtime', '-cpu-used', '8', '-threads', '1', '-row-mt', '0'],
  ...['-auto-alt-ref', '0', '-lag-in-frames', '0'],
];

export function vp9(width: number, height: number, rate: Fraction, alpha: boolean): Codec {
  const format = alpha ? 'yuva420p' : 'yuv420p';
  return {
    encoder: 'libvpx-vp9',
    format,
    recipe: JSON.stringify(['vp9 1', options, format, width, height, String(rate.numerator), String(rate.denominator)]),
    stillPictures: 1,
    keyEvery: keyFrameEvery(rate),
    bytesPerPixel: 0.5,
    takesSeveral: false, // Its quantizer hangs on the pictures before, key pictures or not.
    secondsPerMegapixel: 0.02,
    async encode(work) {
      const words = ['-c:v', 'libvpx-vp9', ...options, '-g', String(Math.max(work.count, 1)), '-f', 'matroska'];
      const stream = await encodePictures(work, { width, height, rate, format }, words);
      return { config: new Uint8Array(), packets: readBlocks(stream) };
    },
    hold: () => (alpha ? { ...again, alpha: again.bytes } : again),
  };
}

/**
 * show_existing_frame of slot 0 (VP9 bitstream specification, 6.2: frame_marker 2, profile 0, show_existing_frame 1,
 * frame_to_show_map_idx 0). A key picture fills all slots.
 */
const again: Packet = { bytes: Uint8Array.of(0x88), key: false };
