/**
 * The boxes that .mp4 and .mov files are made of (ISO/IEC 14496-12, 4.2): a length, a name of four letters, content.
 */

export function box(name: string, ...content: readonly Uint8Array[]): Buffer {
  const length = content.reduce((sum, part) => sum + part.length, 8);
  return Buffer.concat([u32be([length]), text(name), ...content], length);
}

/** Numbers of four bytes, highest first. */
export function u32be(values: ArrayLike<number>): Buffer {
  const bytes = Buffer.allocUnsafe(4 * values.length);
  for (let index = 0; index < values.length; index++) bytes.writeUInt32BE(values[index]! >>> 0, 4 * index);
  return bytes;
}

/** Numbers of two bytes, highest first. */
export function u16be(values: readonly number[]): Buffer {
  const bytes = Buffer.allocUnsafe(2 * values.length);
  values.forEach((value, index) => {
    bytes.writeUInt16BE(value & 0xffff, 2 * index);
  });
  return bytes;
}

export function text(letters: string): Buffer {
  return Buffer.from(letters, 'latin1');
}
