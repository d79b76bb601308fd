/**
 * H.264 by x264. Pictures are compressed at a constant quantizer and without lookahead, so that a segment's bytes
 * depend only on its own pictures; a held picture is followed by unchanged pictures.
 */
import { Bug } from '../../grid/bug.ts';
import type { Packet } from '../containers/track.ts';
import type { Codec, CodecFilm, CodecRecord, Encoded } from './codec.ts';
import { colourOptions } from './colour.ts';
import { encodePictures } from './encode-pictures.ts';
import { withKeyNumber } from './h264-key-number.ts';
import {
  beginsPicture,
  nalType,
  nalUnits,
  type PictureSet,
  pictureSetOf,
  type Sequence,
  sequenceOf,
  typeOf,
} from './h264-syntax.ts';
import { unchangedPicture } from './h264-unchanged.ts';
import { keyframeEvery } from './keyframes.ts';

export const h264: CodecRecord = {
  title: 'H.264',
  option: undefined,
  encoder: 'libx264',
  decoder: undefined,
  holders: { mp4: { entry: 'avc1', compressor: 'AVC Coding', configBox: 'avcC', isLuma: true } },
  carriesAlpha: false,
  evenSides: true,
  make: codecFor,
};

/**
 * A quantizer of 18, keyframes (`ipratio` 1.4) of 15: a lesson's frames come out at 57 dB; with a constant rate factor
 * of 16, at 54 dB and a seventh larger. There is no subpixel motion estimation (`subme`): marks grow and fade, they do
 * not slide, and it takes a third of the encoder's time for a twenty-fifth of the size. One thread, because x264
 * searches less far with more; with two runs in parallel, no core is idle.
 */
const options = [
  ...colourOptions,
  ...['-preset', 'veryfast', '-qp', '18', '-bf', '0', '-pix_fmt', 'yuv420p', '-threads', '1', '-forced-idr', '1'],
  ...['-x264-params', 'keyint=infinite:scenecut=0:open-gop=0:ref=1:weightp=0:slices=1:rc-lookahead=0:subme=0'],
];

/** `compatible`: a hold is a group of the encoder's own pictures, repeated, and not pictures written by us. */
function codecFor({ width, height, rate, compatible }: CodecFilm): Codec {
  const repeats = new Map<number, Packet>();
  let repeatsOf: string | undefined;
  const size = [width, height, String(rate.numerator), String(rate.denominator)];
  return {
    format: 'yuv420p',
    recipe: JSON.stringify(['h264 2', compatible, options, ...size]),
    holdPictures: compatible ? keyframeEvery(rate) + 1 : 1,
    keyEvery: keyframeEvery(rate),
    bytesPerPixel: 0.25,
    // The compatible way uses the stream unchanged, so a segment must not depend on others in it.
    takesSeveral: !compatible,
    secondsPerMegapixel: 0.013,
    repeatIsDecoded: true,
    asDrawn: [],
    async encode(work) {
      const stream = await encodePictures(work, { width, height, rate, format: 'yuv420p' }, [
        ...['-c:v', 'libx264', ...options, '-f', 'h264'],
      ]);
      return encodedOf(stream, new Set(work.starts));
    },
    ...(compatible ? {} : { canRepeat: (config) => setsOf(config)?.set.arithmetic === true }),
    repeat(config, number) {
      const key = Buffer.from(config).toString('latin1');
      if (key !== repeatsOf) repeats.clear();
      repeatsOf = key;
      const packet = repeats.get(number) ?? unchanged(config, number);
      repeats.set(number, packet);
      return packet;
    },
  };
}

/**
 * Packets as ISO/IEC 14496-15 stores them: each NAL unit after its length in four bytes, parameter sets separately.
 *
 * Two things depend on how many pictures x264 has compressed before, and are normalised: the numbers of keyframes, and
 * the last bit of a slice. That bit is after the end of the arithmetic-coded data, and x264 sets it for about every
 * second picture, by its number (from memory of its `cabac.c`; a test compares segments made together with the same
 * made separately). A stream of another kind is left unchanged.
 */
function encodedOf(stream: Uint8Array, starts: ReadonlySet<number>): Encoded {
  const units = nalUnits(stream);
  const sps = units.find((unit) => typeOf(unit) === nalType.sps);
  const pps = units.find((unit) => typeOf(unit) === nalType.pps);
  if (sps === undefined || pps === undefined) return { config: new Uint8Array(), packets: [] };
  const config = configOf(sps, pps);
  const sets = setsOf(config);
  const packets: { bytes: Uint8Array; key: boolean }[] = [];
  let keys = 0;
  for (const unit of units) {
    const type = typeOf(unit);
    if (type !== nalType.slice && type !== nalType.key) continue;
    const last = packets.at(-1);
    const isNew = beginsPicture(unit) || last === undefined;
    if (isNew && starts.has(packets.length)) keys = 0;
    else if (isNew && type === nalType.key) keys += 1;
    const bytes = withLength(sets?.set.arithmetic === true ? normalised(unit, sets, keys % 2) : unit);
    if (isNew) packets.push({ bytes, key: type === nalType.key });
    else last.bytes = Buffer.concat([last.bytes, bytes]);
  }
  return { config, packets };
}

/** Two keyframes in a row must have different numbers; x264 counts 0, 1, 0, 1, and so does each segment. */
function normalised(unit: Uint8Array, { sequence, set }: Sets, number: number): Uint8Array {
  const own = Uint8Array.from(typeOf(unit) === nalType.key ? withKeyNumber(unit, sequence, set, number) : unit);
  own[own.length - 1]! |= 1;
  return own;
}

interface Sets {
  readonly sequence: Sequence;
  readonly set: PictureSet;
}

/** The parameter sets; undefined if they are not as x264 writes them with these options. */
function setsOf(config: Uint8Array): Sets | undefined {
  const [sps, pps] = parameterSets(config);
  const sequence = sps === undefined ? undefined : sequenceOf(sps);
  const set = pps === undefined ? undefined : pictureSetOf(pps);
  return sequence === undefined || set === undefined ? undefined : { sequence, set };
}

function unchanged(config: Uint8Array, number: number): Packet {
  const sets = setsOf(config);
  if (sets === undefined) throw new Bug('a picture is repeated only if `canRepeat` allows it');
  return { bytes: withLength(unchangedPicture(sets.sequence, sets.set, number)), key: false };
}

function withLength(unit: Uint8Array): Uint8Array {
  const bytes = Buffer.allocUnsafe(4 + unit.length);
  bytes.writeUInt32BE(unit.length, 0);
  bytes.set(unit, 4);
  return bytes;
}

/** The AVCDecoderConfigurationRecord (ISO/IEC 14496-15, 5.3.3.1) of one sequence and one picture parameter set. */
function configOf(sps: Uint8Array, pps: Uint8Array): Uint8Array {
  const profile = sps[1] ?? 0;
  return Buffer.concat([
    Buffer.of(1, profile, sps[2] ?? 0, sps[3] ?? 0, 0xff, 0xe1, sps.length >> 8, sps.length & 255),
    sps,
    Buffer.of(1, pps.length >> 8, pps.length & 255),
    pps,
    // For the high profiles: 4:2:0, eight bits, no extensions.
    profile >= 100 ? Buffer.of(0xfd, 0xf8, 0xf8, 0) : Buffer.of(),
  ]);
}

function parameterSets(config: Uint8Array): readonly [Uint8Array | undefined, Uint8Array | undefined] {
  if (config.length < 8) return [undefined, undefined];
  const spsLength = (config[6]! << 8) | config[7]!;
  const at = 8 + spsLength;
  const ppsLength = (config[at + 1]! << 8) | config[at + 2]!;
  return [config.subarray(8, at), config.subarray(at + 3, at + 3 + ppsLength)];
}
