/**
 * Bits as ITU-T H.264 writes them (sections 7.2 and 9.1): the highest bit of a byte first, and numbers of variable size
 * in Exp-Golomb codes.
 */

export class BitReader {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  /** An unsigned number of `count` bits; u(n). Past the end, all bits are 0. */
  bits(count: number): number {
    let value = 0;
    for (let bit = 0; bit < count; bit++, this.#at++) {
      value = value * 2 + (((this.#bytes[this.#at >> 3] ?? 0) >> (7 - (this.#at & 7))) & 1);
    }
    return value;
  }

  /** How many bits have been read. */
  get position(): number {
    return this.#at;
  }

  flag(): boolean {
    return this.bits(1) === 1;
  }

  /** ue(v). */
  unsigned(): number {
    let zeros = 0;
    while (zeros < 32 && !this.flag()) zeros += 1;
    return 2 ** zeros - 1 + this.bits(zeros);
  }

  /** se(v). */
  signed(): number {
    const code = this.unsigned();
    return code % 2 === 1 ? (code + 1) / 2 : -code / 2;
  }
}

export class BitWriter {
  readonly #bytes: number[] = [];
  #count = 0;

  bits(value: number, count: number): void {
    for (let bit = count - 1; bit >= 0; bit--) this.bit((value >>> bit) & 1);
  }

  bit(value: number): void {
    if (this.#count % 8 === 0) this.#bytes.push(0);
    if (value !== 0) this.#bytes[this.#bytes.length - 1]! |= 0x80 >> (this.#count % 8);
    this.#count += 1;
  }

  /** ue(v). */
  unsigned(value: number): void {
    const length = Math.floor(Math.log2(value + 1));
    this.bits(0, length);
    this.bits(value + 1, length + 1);
  }

  /** se(v). */
  signed(value: number): void {
    this.unsigned(value > 0 ? 2 * value - 1 : -2 * value);
  }

  /** Up to the next whole byte. */
  align(value: 0 | 1): void {
    while (this.#count % 8 !== 0) this.bit(value);
  }

  done(): Uint8Array {
    return Uint8Array.from(this.#bytes);
  }
}
