/**
 * How a .mp4 or .mov says what its pictures are: the sample entry of its one picture track.
 */
import { box, numbers, text, words } from './boxes.ts';
import type { Track, TrackCodec } from './track.ts';

export function sampleEntry(track: Track, brand: 'mp4' | 'mov'): Buffer {
  const { codec, width, height, alpha, config } = track;
  // 32: colours and transparency; 24: colours (QuickTime File Format, video sample description).
  const depth = alpha ? 32 : 24;
  const quality = brand === 'mov' ? [0x200, 0x200] : [0, 0];
  return box(
    names[codec],
    words([0]),
    numbers([0, 1]), // data_reference_index
    numbers([0, 0]),
    words(brand === 'mov' ? [0, ...quality] : [0, 0, 0]),
    numbers([width, height]),
    words([0x480000, 0x480000, 0]), // 72 dots an inch
    numbers([1]), // A frame a sample.
    compressorName(codec),
    numbers([depth, 0xffff]),
    ...(codec === 'h264' ? [box('avcC', config)] : []),
    ...(brand === 'mov' ? [box('fiel', Buffer.of(1, 0))] : []), // Frames, not fields.
    ...(colourIsSaid.has(codec) ? [colour(brand)] : []),
    box('pasp', words([1, 1])),
  );
}

const names: Readonly<Record<TrackCodec, string>> = {
  h264: 'avc1',
  prores: 'ap4h',
  qtrle: 'rle ',
  png: 'png ',
  vp9: 'vp09',
};

const compressors: Readonly<Record<TrackCodec, string>> = {
  h264: 'AVC Coding',
  prores: 'Apple ProRes 4444',
  qtrle: 'Animation',
  png: 'PNG',
  vp9: 'VPC Coding',
};

/** Those that carry luma and colour differences. The others carry red, green and blue as they are. */
const colourIsSaid: ReadonlySet<TrackCodec> = new Set(['h264', 'prores', 'vp9']);

/** ITU-T H.273: primaries 1, transfer 1, matrix 1 are those of BT.709; limited range. */
function colour(brand: 'mp4' | 'mov'): Buffer {
  if (brand === 'mov') return box('colr', text('nclc'), numbers([1, 1, 1]));
  return box('colr', text('nclx'), numbers([1, 1, 1]), Buffer.of(0));
}

/** A Pascal string in 32 bytes. */
function compressorName(codec: TrackCodec): Buffer {
  const bytes = Buffer.alloc(32);
  bytes[0] = compressors[codec].length;
  bytes.write(compressors[codec], 1, 'latin1');
  return bytes;
}
