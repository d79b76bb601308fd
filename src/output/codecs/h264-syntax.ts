/**
 * The part of the syntax of ITU-T H.264 (sections in brackets) needed to cut a stream into pictures and to continue it
 * with unchanged pictures.
 */
import { BitReader } from './bits.ts';

/** nal_unit_type (table 7-1). */
export const nalType = { slice: 1, key: 5, sps: 7, pps: 8 } as const;

/** The NAL units of a stream with start codes (annex B), each without its start code. */
export function nalUnits(stream: Uint8Array): Uint8Array[] {
  const units: Uint8Array[] = [];
  const buffer = Buffer.from(stream.buffer, stream.byteOffset, stream.length);
  const startCode = Buffer.from([0, 0, 1]);
  let at = buffer.indexOf(startCode);
  while (at >= 0) {
    const next = buffer.indexOf(startCode, at + 3);
    let end = next < 0 ? buffer.length : next;
    while (end > at + 3 && buffer[end - 1] === 0) end -= 1;
    units.push(stream.subarray(at + 3, end));
    at = next;
  }
  return units;
}

export function typeOf(unit: Uint8Array): number {
  return (unit[0] ?? 0) & 31;
}

/** Whether a slice is the first of its picture: first_mb_in_slice, the header's first number, is 0 (7.3.3). */
export function beginsPicture(slice: Uint8Array): boolean {
  return ((slice[1] ?? 0) & 0x80) !== 0;
}

/** The parts of a sequence parameter set (7.3.2.1.1) that slices depend on. */
export interface Sequence {
  readonly id: number;
  readonly frameNumBits: number;
  /** Of pic_order_cnt_lsb; undefined if output order is decoding order (type 2). */
  readonly orderBits: number | undefined;
  readonly macroblocks: number;
}

/** Undefined if it contains what we do not write: fields, or output order of type 1. */
export function sequenceOf(unit: Uint8Array): Sequence | undefined {
  const reader = new BitReader(unescaped(unit.subarray(1)));
  const profile = reader.bits(8);
  reader.bits(16);
  const id = reader.unsigned();
  if (highProfiles.has(profile)) {
    if (reader.unsigned() === 3) reader.bits(1);
    reader.unsigned();
    reader.unsigned();
    reader.bits(1);
    if (reader.flag()) return undefined; // Scaling matrices.
  }
  const frameNumBits = reader.unsigned() + 4;
  const orderType = reader.unsigned();
  const orderBits = orderType === 0 ? reader.unsigned() + 4 : undefined;
  if (orderType === 1) return undefined;
  reader.unsigned();
  reader.bits(1);
  const columns = reader.unsigned() + 1;
  const rows = reader.unsigned() + 1;
  const framesOnly = reader.flag();
  return framesOnly ? { id, frameNumBits, orderBits, macroblocks: columns * rows } : undefined;
}

/** The parts of a picture parameter set (7.3.2.2) that an unchanged slice depends on. */
export interface PictureSet {
  readonly id: number;
  readonly arithmetic: boolean;
  /** Whether a slice names fewer references than the set does. */
  readonly manyReferences: boolean;
  readonly startQuantizer: number;
  readonly deblockingIsSaid: boolean;
}

/** Undefined if it contains what we do not write: slice groups, weighted prediction, redundant pictures. */
export function pictureSetOf(unit: Uint8Array): PictureSet | undefined {
  const reader = new BitReader(unescaped(unit.subarray(1)));
  const id = reader.unsigned();
  reader.unsigned();
  const arithmetic = reader.flag();
  const orderIsSaid = reader.flag();
  if (orderIsSaid || reader.unsigned() !== 0) return undefined;
  const manyReferences = reader.unsigned() > 0;
  reader.unsigned();
  const weighted = reader.flag();
  reader.bits(2);
  const startQuantizer = 26 + reader.signed();
  reader.signed();
  reader.signed();
  const deblockingIsSaid = reader.flag();
  reader.bits(1);
  const redundant = reader.flag();
  if (weighted || redundant) return undefined;
  return { id, arithmetic, manyReferences, startQuantizer, deblockingIsSaid };
}

/** Without the emulation prevention bytes (value 3) that keep a start code from appearing within a unit (7.4.1). */
export function unescaped(bytes: Uint8Array): Uint8Array {
  const plain = new Uint8Array(bytes.length);
  let [zeros, length] = [0, 0];
  for (const byte of bytes) {
    if (zeros >= 2 && byte === 3) {
      zeros = 0;
      continue;
    }
    zeros = byte === 0 ? zeros + 1 : 0;
    plain[length++] = byte;
  }
  return plain.subarray(0, length);
}

export function escaped(bytes: Uint8Array): Uint8Array {
  const safe = new Uint8Array(Math.ceil(bytes.length * 1.5));
  let [zeros, length] = [0, 0];
  for (const byte of bytes) {
    if (zeros >= 2 && byte <= 3) {
      safe[length++] = 3;
      zeros = 0;
    }
    zeros = byte === 0 ? zeros + 1 : 0;
    safe[length++] = byte;
  }
  return safe.subarray(0, length);
}

/** profile_idc of the profiles whose sequence parameter set gives the chroma sampling (7.3.2.1.1). */
const highProfiles: ReadonlySet<number> = new Set([100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135]);
