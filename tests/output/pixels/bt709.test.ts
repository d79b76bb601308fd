/**
 * The conversion to Y'CbCr against the numbers of ITU-R BT.709-6, worked out here from its formulas, and what becomes
 * of alpha on the way.
 */
import { describe, expect, it } from 'vitest';
import { opaqueToPlanar, straightToPlanar } from '../../../src/output/pixels/bt709.ts';
import { straighten } from '../../../src/output/pixels/straight-alpha.ts';
import { ffmpeg } from '../outside.ts';

const rgba = { red: 0, green: 1, blue: 2, alpha: 3 };

/** BT.709-6: 3.2 (E'Y = 0.2126 R + 0.7152 G + 0.0722 B), 3.3 (divisors 1.8556 and 1.5748), 4.6 (8 bits, limited). */
const known = [
  { name: 'black', colour: [0, 0, 0], yCbCr: [16, 128, 128] },
  { name: 'white', colour: [255, 255, 255], yCbCr: [235, 128, 128] },
  { name: 'red', colour: [255, 0, 0], yCbCr: [63, 102, 240] },
  { name: 'green', colour: [0, 255, 0], yCbCr: [173, 42, 26] },
  { name: 'blue', colour: [0, 0, 255], yCbCr: [32, 240, 118] },
  { name: 'the usual key colour #00b140', colour: [0, 177, 64], yCbCr: [129, 96, 55] },
  { name: 'a middle grey', colour: [119, 119, 119], yCbCr: [118, 128, 128] },
] as const;

describe.each(known)('$name', ({ colour, yCbCr }) => {
  it('has the values of the standard', () => {
    expect([
      ...opaqueToPlanar(
        frame(2, 2, () => [...colour, 255]),
        2,
        2,
        rgba,
      ),
    ]).toEqual([...[yCbCr[0], yCbCr[0], yCbCr[0], yCbCr[0]], yCbCr[1], yCbCr[2]]);
  });

  it('keeps them under any alpha', () => {
    for (const alpha of [1, 128, 255]) {
      const planes = straightToPlanar(
        frame(2, 2, () => [...colour, alpha]),
        2,
        2,
      );
      expect([...planes.subarray(0, 6)]).toEqual([yCbCr[0], yCbCr[0], yCbCr[0], yCbCr[0], yCbCr[1], yCbCr[2]]);
      expect([...planes.subarray(6)]).toEqual([alpha, alpha, alpha, alpha]);
    }
  });
});

describe('every colour', () => {
  it('is within one level of what ffmpeg makes of it', () => {
    // 16 x 16 x 16 colours, one for each block of four pixels, so that chroma is not mixed.
    const side = 128;
    const pixels = frame(side, side, (x, y) => {
      const block = (x >> 1) + (y >> 1) * 64;
      return [17 * (block & 15), 17 * ((block >> 4) & 15), 17 * (block >> 8), 255];
    });
    const filter = 'scale=out_color_matrix=bt709:out_range=tv:flags=accurate_rnd+full_chroma_inp+area,format=yuv420p';
    const words = [
      '-f',
      'rawvideo',
      '-pix_fmt',
      'rgba',
      '-s',
      `${side}x${side}`,
      '-i',
      '-',
      '-vf',
      filter,
      '-f',
      'rawvideo',
      '-',
    ];
    const theirs = ffmpeg(words, pixels);
    const ours = opaqueToPlanar(pixels, side, side, rgba);
    expect(ours.length).toBe(theirs.length);
    expect(Math.max(...ours.map((value, index) => Math.abs(value - theirs[index]!)))).toBeLessThanOrEqual(1);
  });
});

describe('chroma shared by four pixels', () => {
  const [green, clear] = [[0, 177, 64, 255] as const, [0, 0, 0, 0] as const];

  it('is that of the one that can be seen', () => {
    const planes = straightToPlanar(
      frame(2, 2, (x, y) => (x === 0 && y === 0 ? green : clear)),
      2,
      2,
    );
    expect([...planes.subarray(4, 6)]).toEqual([96, 55]);
    expect([...planes.subarray(6)]).toEqual([255, 0, 0, 0]);
  });

  it('counts each by its alpha', () => {
    // Cr of red is 240, of blue 118; three parts to one: (3 * 240 + 118) / 4 = 209.5 before rounding of the parts.
    const planes = straightToPlanar(
      frame(2, 1, (x) => (x === 0 ? [255, 0, 0, 255] : [0, 0, 255, 85])),
      2,
      1,
    );
    expect(planes[3]).toBe(209);
  });

  it("is carried over a stroke's edge, and no further than the next block", () => {
    const planes = straightToPlanar(
      frame(6, 2, (x) => (x < 2 ? green : clear)),
      6,
      2,
    );
    expect([...planes.subarray(0, 6)]).toEqual([129, 129, 129, 129, 16, 16]);
    expect([...planes.subarray(12, 18)]).toEqual([96, 96, 128, 55, 55, 128]);
    expect([...planes.subarray(18, 24)]).toEqual([255, 255, 0, 0, 0, 0]);
  });
});

describe('odd sizes', () => {
  it.each([
    [1, 1],
    [3, 1],
    [5, 3],
  ])('%i x %i has chroma for the last column and row', (width, height) => {
    const chroma = Math.ceil(width / 2) * Math.ceil(height / 2);
    const pixels = frame(width, height, () => [0, 177, 64, 255]);
    const wanted = [...Array(width * height).fill(129), ...Array(chroma).fill(96), ...Array(chroma).fill(55)];
    expect([...opaqueToPlanar(pixels, width, height, rgba)]).toEqual(wanted);
    expect([...straightToPlanar(pixels, width, height)]).toEqual([...wanted, ...Array(width * height).fill(255)]);
  });
});

describe('straight alpha', () => {
  it('divides to the nearest', () => {
    // Porter & Duff 1984: a stored colour is colour * alpha; 110 / (128 / 255) = 219.1, 20 / (128 / 255) = 39.8.
    expect([...straighten(Uint8Array.from([20, 20, 110, 128]), { red: 2, green: 1, blue: 0, alpha: 3 })]).toEqual([
      219, 40, 40, 128,
    ]);
  });

  it('leaves what is opaque and what is empty as it is, in every order of bytes', () => {
    const pixels = Uint8Array.from([255, 1, 2, 3, 0, 0, 0, 0]);
    expect([...straighten(pixels, { red: 1, green: 2, blue: 3, alpha: 0 })]).toEqual([1, 2, 3, 255, 0, 0, 0, 0]);
  });
});

function frame(width: number, height: number, colour: (x: number, y: number) => readonly number[]): Uint8Array {
  const pixels = new Uint8Array(width * height * 4);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) pixels.set(colour(x, y), (y * width + x) * 4);
  }
  return pixels;
}
