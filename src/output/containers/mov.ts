/**
 * A .mp4 (ISO/IEC 14496-12, -14 and -15) or .mov (Apple, QuickTime File Format Specification) with one picture track,
 * all frames of the same duration. The tables come first, so that the video can be played while it is still being
 * downloaded.
 */
import { box, text, u16be, u32be } from './boxes.ts';
import { sampleEntry } from './sample-entry.ts';
import { timescaleOf } from './timescale.ts';
import type { MovEntry, Track } from './track.ts';
import { writeStream } from './write-stream.ts';

/** Writes the track into `file`. `brand`: which of the two. */
export async function writeMov(
  file: string,
  track: Track,
  entry: MovEntry,
  brand: 'mp4' | 'mov',
  signal: AbortSignal | undefined,
): Promise<void> {
  const tables = tablesOf(track);
  const start = fileType(brand, entry);
  // Where the frames begin depends on the length of the tables, but that length does not depend on where the frames
  // begin.
  const data = (offset: number) => movie(track, tables, entry, brand, offset, start.length + tables.bytes > 0xf0000000);
  const dataHeader = tables.bytes + 16 > 0xffffffff ? 16 : 8;
  const moov = data(start.length + data(0).length + dataHeader);
  const header =
    dataHeader === 8
      ? Buffer.concat([u32be([tables.bytes + 8]), text('mdat')])
      : Buffer.concat([u32be([1]), text('mdat'), u64be(tables.bytes + 16)]);
  await writeStream(file, parts([start, moov, header], track), signal);
}

function* parts(before: readonly Uint8Array[], { samples }: Track): Generator<Uint8Array> {
  yield* before;
  for (const sample of samples()) yield sample.packet().bytes;
}

interface Tables {
  readonly sizes: Uint32Array;
  /** Numbers of the keyframes, from 1; undefined if all frames are. */
  readonly keys: readonly number[] | undefined;
  /** Where each chunk begins, in bytes from the first frame. */
  readonly chunks: readonly number[];
  readonly chunkFrames: number;
  readonly bytes: number;
}

function tablesOf({ samples, frameCount, rate }: Track): Tables {
  const sizes = new Uint32Array(frameCount);
  const keys: number[] = [];
  const chunks: number[] = [];
  // About a second of frames per chunk, which suits players.
  const chunkFrames = Math.max(1, Math.round(Number(rate.numerator) / Number(rate.denominator)));
  let bytes = 0;
  let frame = 0;
  for (const { length, key } of samples()) {
    if (frame % chunkFrames === 0) chunks.push(bytes);
    sizes[frame] = length;
    bytes += length;
    frame += 1;
    if (key) keys.push(frame);
  }
  return { sizes, keys: keys.length === frame ? undefined : keys, chunks, chunkFrames, bytes };
}

function fileType(brand: 'mp4' | 'mov', { entry }: MovEntry): Buffer {
  if (brand === 'mov') return box('ftyp', text('qt  '), u32be([0x200]), text('qt  '));
  return box('ftyp', text('isom'), u32be([0x200]), text(`isomiso2${entry}mp41`));
}

function movie(
  track: Track,
  tables: Tables,
  entry: MovEntry,
  brand: 'mp4' | 'mov',
  dataAt: number,
  isLarge: boolean,
): Buffer {
  const { width, height, rate, frameCount } = track;
  const { scale, each } = timescaleOf(rate);
  const duration = frameCount * each;
  const isLong = duration > 0xffffffff;
  const version = u32be([isLong ? 0x01000000 : 0]);
  const time = (value: number): Buffer => (isLong ? u64be(value) : u32be([value]));
  const matrix = u32be([0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000]);
  const never = Buffer.concat([time(0), time(0)]); // Creation and modification time: no timestamp goes into the file.
  const handler = brand === 'mov' ? 'mhlr' : '\0\0\0\0';
  const name = brand === 'mov' ? text('\x0cVideoHandler') : text('VideoHandler\0');
  const aliasHandler =
    brand === 'mov' ? [box('hdlr', u32be([0]), text('dhlrurl '), u32be([0, 0, 0]), text('\x0bDataHandler'))] : [];
  return box(
    'moov',
    box(
      'mvhd',
      version,
      never,
      u32be([scale]),
      time(duration),
      u32be([0x10000, 0x01000000, 0, 0]),
      matrix,
      u32be([0, 0, 0, 0, 0, 0, 2]),
    ),
    box(
      'trak',
      // Flags 3: enabled, and part of the movie.
      box(
        'tkhd',
        u32be([(isLong ? 0x01000000 : 0) | 3]),
        never,
        u32be([1, 0]),
        time(duration),
        u32be([0, 0, 0, 0]),
        matrix,
        u32be([width * 0x10000, height * 0x10000]),
      ),
      box('edts', box('elst', version, u32be([1]), time(duration), time(0), u32be([0x10000]))),
      box(
        'mdia',
        // 0x55c4 is "und", a language not given; in a .mov 0x7fff stands for the same.
        box('mdhd', version, never, u32be([scale]), time(duration), u16be([brand === 'mov' ? 0x7fff : 0x55c4, 0])),
        box('hdlr', u32be([0]), text(handler), text('vide'), u32be([0, 0, 0]), name),
        box(
          'minf',
          box('vmhd', u32be([1, 0, 0])),
          ...aliasHandler,
          box('dinf', box('dref', u32be([0, 1]), box('url ', u32be([1])))),
          box(
            'stbl',
            box('stsd', u32be([0, 1]), sampleEntry(track, entry, brand)),
            box('stts', u32be([0, 1, frameCount, each])),
            ...(tables.keys === undefined ? [] : [box('stss', u32be([0, tables.keys.length, ...tables.keys]))]),
            box('stsc', chunkTable(tables, frameCount)),
            box('stsz', u32be([0, 0, frameCount]), u32be(tables.sizes)),
            isLarge
              ? box('co64', u32be([0, tables.chunks.length]), ...tables.chunks.map((at) => u64be(dataAt + at)))
              : box('stco', u32be([0, tables.chunks.length]), u32be(tables.chunks.map((at) => dataAt + at))),
          ),
        ),
      ),
    ),
  );
}

/** All chunks except the last contain the same number of frames. */
function chunkTable({ chunks, chunkFrames }: Tables, frameCount: number): Buffer {
  const rest = frameCount % chunkFrames;
  const entries: number[][] = chunks.length > (rest > 0 ? 1 : 0) ? [[1, chunkFrames, 1]] : [];
  if (rest > 0) entries.push([chunks.length, rest, 1]);
  return u32be([0, entries.length, ...entries.flat()]);
}

function u64be(value: number): Buffer {
  const bytes = Buffer.alloc(8);
  bytes.writeBigUInt64BE(BigInt(value));
  return bytes;
}
