/**
 * How a .mp4 or .mov describes its pictures: the sample entry of its only picture track.
 */
import { box, text, u16be, u32be } from './boxes.ts';
import type { MovEntry, Track } from './track.ts';

export function sampleEntry(
  { width, height, alpha, config }: Track,
  { entry, compressor, configBox, isLuma }: MovEntry,
  brand: 'mp4' | 'mov',
): Buffer {
  // 32: colours and transparency; 24: colours (QuickTime File Format, video sample description).
  const depth = alpha ? 32 : 24;
  const quality = brand === 'mov' ? [0x200, 0x200] : [0, 0];
  return box(
    entry,
    u32be([0]),
    u16be([0, 1]), // data_reference_index
    u16be([0, 0]),
    u32be(brand === 'mov' ? [0, ...quality] : [0, 0, 0]),
    u16be([width, height]),
    u32be([0x480000, 0x480000, 0]), // 72 dots per inch
    u16be([1]), // One frame per sample.
    compressorName(compressor),
    u16be([depth, 0xffff]),
    ...(configBox === undefined ? [] : [box(configBox, config)]),
    ...(brand === 'mov' ? [box('fiel', Buffer.of(1, 0))] : []), // Frames, not fields.
    ...(isLuma ? [colour(brand)] : []),
    box('pasp', u32be([1, 1])),
  );
}

/** ITU-T H.273: primaries 1, transfer 1, matrix 1 are those of BT.709; limited range. */
function colour(brand: 'mp4' | 'mov'): Buffer {
  if (brand === 'mov') return box('colr', text('nclc'), u16be([1, 1, 1]));
  return box('colr', text('nclx'), u16be([1, 1, 1]), Buffer.of(0));
}

/** A Pascal string in 32 bytes. */
function compressorName(compressor: string): Buffer {
  const bytes = Buffer.alloc(32);
  bytes[0] = compressor.length;
  bytes.write(compressor, 1, 'latin1');
  return bytes;
}
