/** ZIP archives read by another hand (jszip), and WOFF files taken apart by their specification. */
import { readFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import JSZip from 'jszip';
import { afterAll, describe, expect, it } from 'vitest';
import { fontFiles } from '../../src/output/pixels/canvas.ts';
import { asWoff } from '../../src/output/slides/woff.ts';
import { crc32, zipEntries, zipWriter } from '../../src/output/slides/zip.ts';
import { scratchFolder } from './outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const parts: readonly (readonly [name: string, text: string])[] = [
  ['[Content_Types].xml', '<a/>'],
  ['ppt/media/empty.bin', ''],
  ['größe/ü.txt', 'abc '.repeat(5000)],
];

async function written(name: string): Promise<Buffer> {
  const file = await open(scratch.at(name), 'w');
  const zip = zipWriter(file);
  for (const [index, [part, text]] of parts.entries())
    await zip.add(part, Buffer.from(text), index === 1 ? 'stored' : undefined);
  await zip.finish();
  await file.close();
  return readFileSync(scratch.at(name));
}

describe('an archive', () => {
  it('is read by another hand, checksums and all', async () => {
    const read = await JSZip.loadAsync(await written('a.zip'), { checkCRC32: true });
    expect(Object.keys(read.files)).toEqual(parts.map(([name]) => name));
    for (const [name, text] of parts) expect(await read.file(name)!.async('string')).toBe(text);
  });

  it('is the same each time', async () => {
    expect(await written('b.zip')).toEqual(await written('c.zip'));
  });

  it('of another hand is read', async () => {
    const zip = new JSZip();
    for (const [name, text] of parts) zip.file(name, text);
    zip.folder('folder');
    for (const compression of ['STORE', 'DEFLATE'] as const) {
      const entries = zipEntries(await zip.generateAsync({ type: 'nodebuffer', compression }));
      expect(entries.map(({ name, bytes }) => [name, bytes().toString()])).toEqual(expect.arrayContaining([...parts]));
      expect(entries.some(({ name }) => name.endsWith('/'))).toBe(false);
    }
  });

  it('has the checksum of the catalogue of parametrised CRC algorithms for "123456789"', () => {
    // CRC-32/ISO-HDLC: check 0xcbf43926 (G. Cook, Catalogue of parametrised CRC algorithms).
    expect(crc32(Buffer.from('123456789'))).toBe(0xcbf43926);
  });
});

describe('a font as WOFF', () => {
  it.each(fontFiles())('keeps every table: $path', ({ path }) => {
    const font = readFileSync(path);
    const woff = asWoff(font);
    // Section 4 of the specification.
    expect(woff.toString('latin1', 0, 4)).toBe('wOFF');
    expect(woff.readUInt32BE(4)).toBe(font.readUInt32BE(0));
    expect(woff.readUInt32BE(8)).toBe(woff.length);
    const count = woff.readUInt16BE(12);
    expect(count).toBe(font.readUInt16BE(4));
    const padded = (length: number) => Math.ceil(length / 4) * 4;
    let size = 12 + 16 * count;
    for (let index = 0; index < count; index++) {
      const [entry, record] = [44 + 20 * index, 12 + 16 * index];
      const tag = woff.toString('latin1', entry, entry + 4);
      expect(tag).toBe(font.toString('latin1', record, record + 4));
      const [offset, packed, length] = [4, 8, 12].map((at) => woff.readUInt32BE(entry + at)) as [
        number,
        number,
        number,
      ];
      expect(offset % 4).toBe(0);
      const data = woff.subarray(offset, offset + packed);
      const start = font.readUInt32BE(record + 8);
      expect((packed < length ? inflateSync(data) : data).equals(font.subarray(start, start + length)), tag).toBe(true);
      size += padded(length);
    }
    expect(woff.readUInt32BE(16)).toBe(size);
    expect(woff.length).toBeLessThan(font.length * 0.65);
  });
});
