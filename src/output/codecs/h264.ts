/**
 * H.264 by x264. Pictures are compressed at one quantizer and without a look ahead, so that what a segment becomes hangs
 * on its own pictures alone; a picture that stands is followed by pictures without a change.
 */
import type { Fraction } from '../../scene/fraction.ts';
import { encodePictures } from '../segments/encode-pictures.ts';
import { keyFrameEvery } from '../segments/key-frames.ts';
import { CannotHold, type Codec, type Encoded, type Packet } from './codec.ts';
import { colourOptions } from './colour.ts';
import { withKeyNumber } from './h264-key-number.ts';
import { beginsPicture, nalType, nalUnits, pictureSetOf, sequenceOf, typeOf } from './h264-syntax.ts';
import { unchangedPicture } from './h264-unchanged.ts';

/**
 * A quantizer of 18, key pictures (`ipratio` 1.4) of 15: a lesson's frames come out at 57 dB, those of a constant rate
 * factor of 16 at 54 dB and a seventh larger. Motion is not followed by parts of a pixel (`subme`): marks grow and fade,
 * they do not slide, and of the encoder's time that is a third for a twenty-fifth of the size. One thread, for x264 searches less far with more: with two runs at once no core is idle.
 */
const options = [
  ...colourOptions,
  ...['-preset', 'veryfast', '-qp', '18', '-bf', '0', '-pix_fmt', 'yuv420p', '-threads', '1', '-forced-idr', '1'],
  ...['-x264-params', 'keyint=infinite:scenecut=0:open-gop=0:ref=1:weightp=0:slices=1:rc-lookahead=0:subme=0'],
];

/** `compatible`: what stands is a group of pictures by the encoder itself, repeated, and not pictures written by us. */
export function h264(width: number, height: number, rate: Fraction, compatible: boolean): Codec {
  const held = new Map<number, Packet>();
  let heldFor: string | undefined;
  return {
    encoder: 'libx264',
    format: 'yuv420p',
    recipe: JSON.stringify([
      'h264 2',
      compatible,
      options,
      width,
      height,
      String(rate.numerator),
      String(rate.denominator),
    ]),
    stillPictures: compatible ? keyFrameEvery(rate) + 1 : 1,
    keyEvery: keyFrameEvery(rate),
    bytesPerPixel: 0.25,
    takesSeveral: true,
    secondsPerMegapixel: 0.013,
    async encode(work) {
      const stream = await encodePictures(work, { width, height, rate, format: 'yuv420p' }, [
        ...['-c:v', 'libx264', ...options, '-f', 'h264'],
      ]);
      return encodedOf(stream, new Set(work.starts));
    },
    hold(config, number) {
      const key = Buffer.from(config).toString('latin1');
      if (key !== heldFor) held.clear();
      heldFor = key;
      const packet = held.get(number) ?? unchanged(config, number);
      held.set(number, packet);
      return packet;
    },
  };
}

/**
 * Packets as ISO/IEC 14496-15 stores them: each NAL unit after its length in four bytes, parameter sets apart.
 *
 * What hangs on how many pictures x264 compressed before is made the same for all: the numbers of key pictures, and the
 * last bit of a slice. That lies behind the end of what is decoded, and x264 sets it for about every second picture
 * by its number (from memory of its `cabac.c`; a test holds segments made together against the same made alone).
 */
function encodedOf(stream: Uint8Array, starts: ReadonlySet<number>): Encoded {
  const packets: { bytes: Uint8Array; key: boolean }[] = [];
  let sps: Uint8Array | undefined;
  let pps: Uint8Array | undefined;
  let keys = 0;
  for (const unit of nalUnits(stream)) {
    const type = typeOf(unit);
    if (type === nalType.sps) sps ??= unit;
    if (type === nalType.pps) pps ??= unit;
    if (type !== nalType.slice && type !== nalType.key) continue;
    const last = packets.at(-1);
    const isNew = beginsPicture(unit) || last === undefined;
    if (isNew && starts.has(packets.length)) keys = 0;
    else if (isNew && type === nalType.key) keys += 1;
    // Two key pictures in a row must bear different numbers; x264 counts 0, 1, 0, 1, and so does each segment.
    const own = type === nalType.key ? renumbered(unit, sps, pps, keys % 2) : unit;
    const bytes = measured(own);
    bytes[bytes.length - 1]! |= 1;
    if (isNew) packets.push({ bytes, key: type === nalType.key });
    else last.bytes = Buffer.concat([last.bytes, bytes]);
  }
  return { config: sps === undefined || pps === undefined ? new Uint8Array() : configOf(sps, pps), packets };
}

function renumbered(
  unit: Uint8Array,
  sps: Uint8Array | undefined,
  pps: Uint8Array | undefined,
  number: number,
): Uint8Array {
  const sequence = sps === undefined ? undefined : sequenceOf(sps);
  const set = pps === undefined ? undefined : pictureSetOf(pps);
  const numbered = sequence === undefined || set === undefined ? undefined : withKeyNumber(unit, sequence, set, number);
  if (numbered === undefined) throw new CannotHold(notOurs);
  return numbered;
}

const notOurs = 'this x264 writes its pictures in a way that cannot be continued without it';

function unchanged(config: Uint8Array, number: number): Packet {
  const [sps, pps] = parameterSets(config);
  const sequence = sps === undefined ? undefined : sequenceOf(sps);
  const set = pps === undefined ? undefined : pictureSetOf(pps);
  if (sequence === undefined || set === undefined) {
    throw new CannotHold(notOurs);
  }
  return { bytes: measured(unchangedPicture(sequence, set, number)), key: false };
}

function measured(unit: Uint8Array): Uint8Array {
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
    // Of the high profiles: 4:2:0, eight bits, no extensions.
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
