/**
 * ZIP archives, read from memory and written entry by entry: the part of PKWARE's APPNOTE 6.3 that an Office Open XML
 * package needs (ECMA-376 Part 2, annex B). No entry has a timestamp, so that the same parts give the same bytes.
 */
import type { FileHandle } from 'node:fs/promises';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { Bug } from '../../grid/bug.ts';

export interface ZipEntry {
  readonly name: string;
  readonly bytes: () => Buffer;
}

/** The files of an archive, in its order; entries for folders are left out. */
export function zipEntries(archive: Buffer): ZipEntry[] {
  const end = archive.lastIndexOf(Buffer.from('PK\u0005\u0006', 'latin1'));
  if (end < 0) throw new Bug('a ZIP archive has a central directory');
  const count = archive.readUInt16LE(end + 10);
  const entries: ZipEntry[] = [];
  let at = archive.readUInt32LE(end + 16);
  for (let index = 0; index < count; index++) {
    const method = archive.readUInt16LE(at + 10);
    const packedSize = archive.readUInt32LE(at + 20);
    const [nameLength, extraLength, noteLength] = [28, 30, 32].map((field) => archive.readUInt16LE(at + field));
    const local = archive.readUInt32LE(at + 42);
    const name = archive.toString('utf8', at + 46, at + 46 + nameLength!);
    at += 46 + nameLength! + extraLength! + noteLength!;
    if (name.endsWith('/')) continue;
    const start = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
    const packed = archive.subarray(start, start + packedSize);
    entries.push({ name, bytes: () => (method === 0 ? packed : inflateRawSync(packed)) });
  }
  return entries;
}

export interface ZipWriter {
  /** `stored`: uncompressed, for what is already compressed. */
  add(name: string, bytes: Uint8Array, stored?: 'stored'): Promise<void>;
  /** Writes the central directory; nothing may be added afterwards. */
  finish(): Promise<void>;
}

/** An archive on an empty file that is open for writing. */
export function zipWriter(file: FileHandle): ZipWriter {
  const directory: Buffer[] = [];
  let position = 0;
  const put = async (bytes: Uint8Array): Promise<void> => {
    await file.writeFile(bytes);
    position += bytes.length;
  };
  return {
    async add(name, bytes, stored) {
      const packed = stored === undefined ? deflateRawSync(bytes, { level: 9 }) : bytes;
      const fields = Buffer.alloc(26);
      fields.writeUInt16LE(20, 0); // needs version 2.0
      fields.writeUInt16LE(0x0800, 2); // names are UTF-8
      fields.writeUInt16LE(stored === undefined ? 8 : 0, 4);
      fields.writeUInt32LE(firstDay, 6);
      fields.writeUInt32LE(crc32(bytes), 10);
      fields.writeUInt32LE(packed.length, 14);
      fields.writeUInt32LE(bytes.length, 18);
      const encoded = Buffer.from(name, 'utf8');
      fields.writeUInt16LE(encoded.length, 22);
      const rest = Buffer.alloc(14);
      rest.writeUInt32LE(position, 10);
      const made = Buffer.from([20, 0]);
      directory.push(Buffer.concat([signature(1, 2), made, fields, rest, encoded]));
      await put(Buffer.concat([signature(3, 4), fields, encoded]));
      await put(packed);
    },
    async finish() {
      const start = position;
      for (const entry of directory) await put(entry);
      const end = Buffer.alloc(18);
      end.writeUInt16LE(directory.length, 4);
      end.writeUInt16LE(directory.length, 6);
      end.writeUInt32LE(position - start, 8);
      end.writeUInt32LE(start, 12);
      await put(Buffer.concat([signature(5, 6), end]));
    },
  };
}

/** 1 January 1980, 0:00, the earliest MS-DOS time: time in the lower half, date in the upper. */
const firstDay = ((1 << 5) | 1) << 16;

function signature(a: number, b: number): Buffer {
  return Buffer.from([0x50, 0x4b, a, b]);
}

const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The checksum of ISO-HDLC (polynomial 0x04c11db7, reflected), see APPNOTE 4.4.7. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = crcTable[(crc ^ byte) & 255]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
