/**
 * The numbers of H.264 keyframes (ITU-T H.264, sections in brackets): idr_pic_id, by which a decoder distinguishes two
 * in a row, is the only thing in a picture that depends on how many came before it. It is in the slice header, and the
 * arithmetic-coded data after it begins at a whole byte, so it can be set without decoding anything.
 */
import { BitReader, BitWriter } from './bits.ts';
import { escaped, type PictureSet, type Sequence, unescaped } from './h264-syntax.ts';

/** The unit of a keyframe's slice with that idr_pic_id. `set` must use arithmetic coding. */
export function withKeyNumber(unit: Uint8Array, sequence: Sequence, set: PictureSet, number: number): Uint8Array {
  const plain = unescaped(unit.subarray(1));
  const reader = new BitReader(plain);
  const writer = new BitWriter();
  const copyBits = (count: number): void => writer.bits(reader.bits(count), count);
  const copyUnsigned = (): number => {
    const value = reader.unsigned();
    writer.unsigned(value);
    return value;
  };
  const copySigned = (): void => writer.signed(reader.signed());
  // Slice header (7.3.3).
  copyUnsigned(); // first_mb_in_slice
  copyUnsigned(); // slice_type: I, the only type in a keyframe (7.4.3)
  copyUnsigned(); // pic_parameter_set_id
  copyBits(sequence.frameNumBits);
  if (reader.unsigned() === number) return unit;
  writer.unsigned(number); // idr_pic_id
  if (sequence.orderBits !== undefined) copyBits(sequence.orderBits);
  copyBits(2); // no_output_of_prior_pics_flag, long_term_reference_flag (7.3.3.3)
  copySigned(); // slice_qp_delta
  // disable_deblocking_filter_idc
  if (set.deblockingIsSaid && copyUnsigned() !== 1) {
    copySigned();
    copySigned();
  }
  writer.align(1); // cabac_alignment_one_bit
  const data = plain.subarray(Math.ceil(reader.position / 8));
  return Buffer.concat([unit.subarray(0, 1), escaped(Buffer.concat([writer.done(), data]))]);
}
