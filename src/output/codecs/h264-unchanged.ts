/**
 * A picture of H.264 in which nothing changes: a P slice whose macroblocks are all skipped, so that each is taken
 * unchanged from the previous picture. Written here from the standard, ITU-T H.264 (sections in brackets), and not cut
 * out of an encoder's stream: so it does not depend on any encoder's choices. A test checks it against a decoder.
 *
 * A skipped macroblock moves as its neighbours do (8.4.1.1); if all are skipped, none moves. There is no deblocking
 * between macroblocks that reference the same picture with the same motion and have no coefficients (8.7.2.1). So the
 * quantizer is free; it is 51, because "skipped" is then the more probable value from the first macroblock on.
 */
import { BitWriter } from './bits.ts';
import { escaped, type PictureSet, type Sequence } from './h264-syntax.ts';

/** The NAL unit of the picture `number` frames after a keyframe (1: the next). */
export function unchangedPicture(sequence: Sequence, set: PictureSet, number: number): Uint8Array {
  const writer = new BitWriter();
  // Slice header (7.3.3).
  writer.unsigned(0); // first_mb_in_slice
  writer.unsigned(5); // slice_type: P, like all slices of the picture
  writer.unsigned(set.id);
  writer.bits(number % 2 ** sequence.frameNumBits, sequence.frameNumBits);
  if (sequence.orderBits !== undefined) writer.bits((2 * number) % 2 ** sequence.orderBits, sequence.orderBits);
  writer.bit(set.manyReferences ? 1 : 0); // num_ref_idx_active_override_flag
  if (set.manyReferences) writer.unsigned(0);
  writer.bit(0); // ref_pic_list_modification_flag_l0
  writer.bit(0); // adaptive_ref_pic_marking_mode_flag
  if (set.arithmetic) writer.unsigned(0); // cabac_init_idc
  writer.signed(quantizer - set.startQuantizer);
  if (set.deblockingIsSaid) writer.unsigned(1); // disable_deblocking_filter_idc
  if (set.arithmetic) writeSkippedArithmetic(writer, sequence.macroblocks);
  else {
    writer.unsigned(sequence.macroblocks); // mb_skip_run
    writer.bit(1); // rbsp_stop_one_bit
  }
  writer.align(0);
  return Buffer.concat([Buffer.of(header), escaped(writer.done())]);
}

/** nal_ref_idc 2, nal_unit_type 1: a picture that the next one refers to. */
const header = 0x41;
const quantizer = 51;

/**
 * Slice data in arithmetic coding (7.3.4, 9.3.4): for each macroblock mb_skip_flag, then end_of_slice_flag. With all
 * neighbours skipped, mb_skip_flag has one context, number 11, initialised (table 9-13, cabac_init_idc 0; 9.3.1.1) with
 * `m = 23, n = 33`; at quantizer 51 that is state 42 with 1 as the more probable value, and nothing else is ever coded.
 */
function writeSkippedArithmetic(writer: BitWriter, macroblocks: number): void {
  writer.align(1); // cabac_alignment_one_bit
  const coder = new ArithmeticCoder(writer);
  let state = ((23 * quantizer) >> 4) + 33 - 64;
  for (let macroblock = 1; macroblock <= macroblocks; macroblock++) {
    coder.moreProbable(state);
    state = Math.min(62, state + 1);
    coder.end(macroblock === macroblocks);
  }
}

/** The encoder of 9.3.4, reduced to the more probable value and the end of a slice. */
class ArithmeticCoder {
  readonly #writer: BitWriter;
  #low = 0;
  #range = 510;
  #outstanding = 0;
  #isFirst = true;

  constructor(writer: BitWriter) {
    this.#writer = writer;
  }

  moreProbable(state: number): void {
    const part = (this.#range >> 6) & 3;
    this.#range -= rangeOfLessProbable[state - firstState]![part]!;
    this.#renormalize();
  }

  /** end_of_slice_flag; with the last one, the remaining bits are flushed together with rbsp_stop_one_bit (9.3.4.5). */
  end(isLast: boolean): void {
    this.#range -= 2;
    if (isLast) {
      this.#low += this.#range;
      this.#range = 2;
    }
    this.#renormalize();
    if (!isLast) return;
    this.#put((this.#low >> 9) & 1);
    this.#writer.bits(((this.#low >> 7) & 3) | 1, 2);
  }

  #renormalize(): void {
    while (this.#range < 256) {
      if (this.#low < 256) this.#put(0);
      else if (this.#low >= 512) {
        this.#low -= 512;
        this.#put(1);
      } else {
        this.#low -= 256;
        this.#outstanding += 1;
      }
      this.#range <<= 1;
      this.#low <<= 1;
    }
  }

  #put(bit: number): void {
    if (this.#isFirst) this.#isFirst = false;
    else this.#writer.bit(bit);
    for (; this.#outstanding > 0; this.#outstanding--) this.#writer.bit(1 - bit);
  }
}

const firstState = 42;
/** rangeTabLPS (table 9-44) from state 42 to 62. */
const rangeOfLessProbable: readonly (readonly [number, number, number, number])[] = [
  [16, 20, 23, 27],
  [15, 19, 22, 25],
  [14, 18, 21, 24],
  [14, 17, 20, 23],
  [13, 16, 19, 22],
  [12, 15, 18, 21],
  [12, 14, 17, 20],
  [11, 14, 16, 19],
  [11, 13, 15, 18],
  [10, 12, 15, 17],
  [10, 12, 14, 16],
  [9, 11, 13, 15],
  [9, 11, 12, 14],
  [8, 10, 12, 14],
  [8, 9, 11, 13],
  [7, 9, 11, 12],
  [7, 9, 10, 12],
  [7, 8, 10, 11],
  [6, 8, 9, 11],
  [6, 7, 9, 10],
  [6, 7, 8, 9],
];
