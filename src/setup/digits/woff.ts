/**
 * A WOFF file as the TrueType or OpenType font within it, which is what the canvas can register.
 *
 * W3C Recommendation "WOFF File Format 1.0" (2012): a header of 44 bytes, a directory of 20 bytes a table, and the tables,
 * each deflated where that makes it shorter. The font within: OpenType specification 1.9, "Font file structure".
 */
import { inflateSync } from 'node:zlib';

const woffHeader = 44;
const woffEntry = 20;
const fontHeader = 12;
const fontEntry = 16;

/** @throws Error where the bytes are not a WOFF file */
export function fontWithin(woff: Buffer): Buffer {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('this is not a WOFF file');
  const flavour = woff.readUInt32BE(4);
  const count = woff.readUInt16BE(12);
  const entries = Array.from({ length: count }, (_, index) => {
    const at = woffHeader + index * woffEntry;
    const [offset, kept, length] = [woff.readUInt32BE(at + 4), woff.readUInt32BE(at + 8), woff.readUInt32BE(at + 12)];
    const bytes = woff.subarray(offset, offset + kept);
    return {
      tag: woff.readUInt32BE(at),
      checksum: woff.readUInt32BE(at + 16),
      table: kept < length ? inflateSync(bytes) : bytes,
    };
  });
  const head = Buffer.alloc(fontHeader + count * fontEntry);
  const power = 2 ** Math.floor(Math.log2(count));
  head.writeUInt32BE(flavour, 0);
  for (const [index, value] of [count, power * 16, Math.log2(power), (count - power) * 16].entries())
    head.writeUInt16BE(value, 4 + index * 2);
  const parts: Buffer[] = [head];
  let offset = head.length;
  for (const [index, { tag, checksum, table }] of entries.entries()) {
    for (const [word, value] of [tag, checksum, offset, table.length].entries())
      head.writeUInt32BE(value, fontHeader + index * fontEntry + word * 4);
    const padding = (4 - (table.length % 4)) % 4;
    parts.push(table, Buffer.alloc(padding));
    offset += table.length + padding;
  }
  return Buffer.concat(parts);
}
