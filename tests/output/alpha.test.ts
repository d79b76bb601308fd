/**
 * Transparency comes out straight: laid over any ground, a frame looks as if it had been drawn on that ground.
 *
 * Source of the composite: Porter & Duff, "Compositing Digital Images" (1984), over, with straight alpha:
 * `colour * alpha + ground * (1 - alpha)`. Decoders: ffmpeg's, and pngjs for PNG.
 */
import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../src/output/render.ts';
import { writeStill } from '../../src/output/still.ts';
import { decodeFrames, probeVideo, scratchFolder } from './outside.ts';
import { type Square, squarePainter } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const [width, height, frameCount] = [96, 64, 3];

/** Colours of the tool's usual looks, opaque and not, on odd edges, thin and thick, one over another. */
const squaresOf = (frame: number): readonly Square[] => [
  { left: 5 + frame, top: 5, width: 31, height: 21, colour: [220, 40, 40, 128] },
  { left: 47, top: 3, width: 1, height: 50, colour: [0, 177, 64, 255] },
  { left: 53, top: 7, width: 3, height: 45, colour: [0, 114, 178, 255] },
  { left: 61, top: 9, width: 2, height: 40, colour: [255, 255, 255, 255] },
  { left: 66, top: 8, width: 25, height: 25, colour: [230, 159, 0, 204] },
  { left: 72, top: 14, width: 8, height: 8, colour: [86, 180, 233, 255] },
  { left: 9, top: 35, width: 27, height: 22, colour: [240, 228, 66, 26] },
];

const overlay = squarePainter({ width, height, frameCount, squares: squaresOf });
const grounds = [
  { name: 'white', level: 255 },
  { name: 'black', level: 0 },
  { name: 'grey', level: 119 },
];

/**
 * `most`: what may be lost, in levels of 255 over what can be seen: on average, and the share of samples that are off
 * by more than `clear`. The canvas itself loses up to two levels, for it keeps colours multiplied by alpha.
 */
const outputs = [
  { name: 'frames/', most: { average: 0.4, clear: 2, share: 0 } },
  { name: 'marks.mov', most: { average: 0.7, clear: 6, share: 0 } },
  { name: 'whole.mov', lossless: true, most: { average: 0.4, clear: 2, share: 0 } },
  { name: 'pictures.mov', png: true, most: { average: 0.4, clear: 2, share: 0 } },
  // 4:2:0: where two colours meet within two pixels they share their chroma, whatever the encoder.
  { name: 'marks.webm', most: { average: 1.7, clear: 8, share: 0.03 } },
];

describe.each(outputs)('$name', ({ name, lossless = false, png = false, most }) => {
  let pixels: Uint8Array;
  beforeAll(async () => {
    await renderFilm(overlay, scratch.at(name), { lossless, png });
    pixels = name.endsWith('/') ? decodePngs(scratch.at(name)) : decodeFrames(scratch.at(name)).pixels;
  });

  it.each(grounds)('over $name looks as if it had been drawn there', ({ level }) => {
    const found = differences(pixels, (frame, x, y) => over(squaresOf(frame), x, y, level), level, most.clear);
    expect(found.average).toBeLessThanOrEqual(most.average);
    expect(found.share).toBeLessThanOrEqual(most.share);
  });

  it('gives a half-transparent colour back, not one darkened by its alpha', () => {
    const at = (15 * width + 20) * 4; // Within the red square, with nothing over it.
    const [r, g, b, a] = pixels.subarray(at, at + 4);
    for (const [found, drawn] of [
      [r, 220],
      [g, 40],
      [b, 40],
      [a, 128],
    ] as const) {
      expect(Math.abs(found! - drawn)).toBeLessThanOrEqual(3);
    }
  });

  it('is empty where nothing was drawn', () => {
    expect(pixels[3]).toBe(0);
    expect(pixels[(60 * width + 90) * 4 + 3]).toBe(0);
  });
});

describe('the check itself', () => {
  it('would notice alpha multiplied into the colours', () => {
    const premultiplied = new Uint8Array(width * height * frameCount * 4);
    eachPixel((frame, x, y, at) => {
      const colour = straight(squaresOf(frame), x, y);
      for (let channel = 0; channel < 3; channel++) premultiplied[at + channel] = (colour[channel]! * colour[3]) / 255;
      premultiplied[at + 3] = colour[3];
    });
    const found = differences(premultiplied, (frame, x, y) => over(squaresOf(frame), x, y, 255), 255, 8);
    expect(found.share).toBeGreaterThan(0.3);
    expect(found.average).toBeGreaterThan(10);
  });
});

describe('a file says that it carries alpha', () => {
  it('ProRes 4444 by its pixel format, WebM by its alpha mode (WebM container guidelines, AlphaMode)', () => {
    expect(probeVideo(scratch.at('marks.mov'))).toMatchObject({
      codec_name: 'prores',
      pix_fmt: expect.stringMatching(/^yuva444p/),
    });
    expect(probeVideo(scratch.at('whole.mov'))).toMatchObject({ codec_name: 'qtrle', pix_fmt: 'argb' });
    expect(probeVideo(scratch.at('pictures.mov'))).toMatchObject({ codec_name: 'png', pix_fmt: 'rgba' });
    expect(probeVideo(scratch.at('marks.webm')).tags).toMatchObject({ alpha_mode: '1' });
  });

  it('and an opaque film does not', async () => {
    const painter = squarePainter({ ground: [20, 40, 60] });
    await renderFilm(painter, scratch.at('opaque.mov'));
    await renderFilm(painter, scratch.at('opaque.webm'));
    expect(probeVideo(scratch.at('opaque.mov')).pix_fmt).toMatch(/^yuv444p/);
    expect(probeVideo(scratch.at('opaque.webm')).tags).not.toHaveProperty('alpha_mode');
  });
});

describe('a still', () => {
  it('is the frame of the folder', async () => {
    await writeStill(overlay, 2, scratch.at('still.png'));
    expect(readFileSync(scratch.at('still.png'))).toEqual(readFileSync(scratch.at('frames/000002.png')));
  });

  it('has the key colour under it where one is given', async () => {
    await writeStill(overlay, 0, scratch.at('keyed.png'), { key: '#00b140' });
    const { data } = PNG.sync.read(readFileSync(scratch.at('keyed.png')));
    expect([...data.subarray(0, 4)]).toEqual([0, 0xb1, 0x40, 255]);
  });

  it('must be named .png', async () => {
    expect(await writeStill(overlay, 0, scratch.at('still.jpg'))).toEqual({
      kind: 'refused',
      message: "a still is a PNG: name it with .png, not 'still.jpg'",
    });
  });
});

function decodePngs(folder: string): Uint8Array {
  const frames = Array.from(
    { length: frameCount },
    (_, frame) => PNG.sync.read(readFileSync(`${folder}00000${frame}.png`)).data,
  );
  return Buffer.concat(frames);
}

/** The squares over one another, straight alpha; worked out here, without a canvas. */
function straight(squares: readonly Square[], x: number, y: number): readonly [number, number, number, number] {
  let [r, g, b, a] = [0, 0, 0, 0];
  for (const { left, top, width: wide, height: high, colour } of squares) {
    if (x < left || y < top || x >= left + wide || y >= top + high) continue;
    const alpha = colour[3] / 255;
    const under = a * (1 - alpha);
    const all = alpha + under;
    const mix = (above: number, below: number): number => (above * alpha + below * under) / all;
    [r, g, b, a] = [mix(colour[0], r), mix(colour[1], g), mix(colour[2], b), all];
  }
  return [r, g, b, a * 255];
}

function over(squares: readonly Square[], x: number, y: number, level: number): readonly [number, number, number] {
  const [r, g, b, a] = straight(squares, x, y);
  const mix = (colour: number): number => (colour * a + level * (255 - a)) / 255;
  return [mix(r), mix(g), mix(b)];
}

/** Between decoded frames laid over a grey of `level` and what they should look like there. */
function differences(
  pixels: Uint8Array,
  wanted: (frame: number, x: number, y: number) => readonly [number, number, number],
  level: number,
  clear: number,
): { readonly average: number; readonly share: number } {
  let [sum, clearCount, count] = [0, 0, 0];
  eachPixel((frame, x, y, at) => {
    const alpha = pixels[at + 3]!;
    const target = wanted(frame, x, y);
    for (let channel = 0; channel < 3; channel++) {
      const found = (pixels[at + channel]! * alpha + level * (255 - alpha)) / 255;
      const difference = Math.abs(found - target[channel]!);
      if (alpha === 0 && difference === 0) continue;
      sum += difference;
      clearCount += difference > clear ? 1 : 0;
      count += 1;
    }
  });
  return { average: sum / count, share: clearCount / count };
}

function eachPixel(visit: (frame: number, x: number, y: number, at: number) => void): void {
  for (let frame = 0; frame < frameCount; frame++) {
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) visit(frame, x, y, ((frame * height + y) * width + x) * 4);
    }
  }
}
