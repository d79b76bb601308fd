/**
 * A picture of few colours as a small PNG: a palette and the best compression (PNG, third edition, W3C
 * 2025, sections 5.6, 10 and 11.2).
 */
import { crc32, deflateSync } from 'node:zlib';
import { PNG } from 'pngjs';

/** How many colours the palette has; rarer ones, on the edges of strokes, become the nearest of these. */
const colourCount = 160;

type Colour = readonly [red: number, green: number, blue: number];

/** The opaque picture again, in its most frequent colours. */
export function smallPng(file: Buffer): Buffer {
  const { width, height, data } = PNG.sync.read(file);
  const colourAt = (pixel: number) => data.readUIntBE(pixel * 4, 3);
  const counts = new Map<number, number>();
  for (let pixel = 0; pixel < width * height; pixel++) {
    counts.set(colourAt(pixel), (counts.get(colourAt(pixel)) ?? 0) + 1);
  }
  const frequent = [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0]).slice(0, colourCount);
  const palette = frequent.map(([colour]) => partsOf(colour));
  const indices = new Map([...counts.keys()].map((colour) => [colour, nearest(palette, partsOf(colour))]));
  const rows = Buffer.alloc((width + 1) * height); // a row begins with its filter, 0: none
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = indices.get(colourAt(y * width + x))!;
  }
  return indexedPng(width, height, { palette, rows });
}

function partsOf(colour: number): Colour {
  return [colour >> 16, (colour >> 8) & 255, colour & 255];
}

function nearest(palette: readonly Colour[], colour: Colour): number {
  const distances = palette.map((each) => each.reduce((sum, part, index) => sum + (part - colour[index]!) ** 2, 0));
  return distances.indexOf(Math.min(...distances));
}

function indexedPng(
  width: number,
  height: number,
  { palette, rows }: { readonly palette: readonly Colour[]; readonly rows: Buffer },
): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  const colours = Buffer.from(palette.flat());
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('PLTE', colours),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const typed = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(typed));
  return Buffer.concat([length, typed, check]);
}
