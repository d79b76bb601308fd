/**
 * Colours come back as they were drawn, and each file says how it is to be read.
 *
 * The tags by ffprobe; the values by ffmpeg's decoder told to read BT.709 in limited range (ITU-R BT.709-6).
 */
import { afterAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../src/output/render.ts';
import { decodeFrames, probeVideo, scratchFolder } from './outside.ts';
import { type SquareFilm, squarePainter } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

/** Patches of 16 x 16, in a row: the key colour, some of Okabe & Ito (2008), and the ends of the scale. */
const patches = [
  [0, 177, 64],
  [230, 159, 0],
  [86, 180, 233],
  [0, 158, 115],
  [0, 114, 178],
  [213, 94, 0],
  [255, 255, 255],
  [0, 0, 0],
] as const;
const [patchSide, height] = [16, 16];
const width = patchSide * patches.length;

const squares: NonNullable<SquareFilm['squares']> = () =>
  patches.map(([r, g, b], index) => ({
    left: index * patchSide,
    top: 0,
    width: patchSide,
    height,
    colour: [r, g, b, 255],
  }));

/** One step of Y'CbCr in 8 bits is up to 1.86 * 255/224 of blue, and the encoders add a little of their own. */
const files = [
  { name: 'opaque.mp4', ground: [9, 9, 9], most: 4 },
  { name: 'opaque.webm', ground: [9, 9, 9], most: 4 },
  { name: 'opaque.mov', ground: [9, 9, 9], most: 2 },
  { name: 'overlay.webm', ground: undefined, most: 4 },
  { name: 'overlay.mov', ground: undefined, most: 2 },
  { name: 'av1.mp4', ground: [9, 9, 9], most: 4, codec: 'av1' },
  { name: 'av1.webm', ground: [9, 9, 9], most: 4, codec: 'av1' },
  { name: 'hevc.mov', ground: [9, 9, 9], most: 4, codec: 'hevc' },
] as const;

describe.each(files)('$name', ({ name, ground, most, ...options }) => {
  it('has the colours that were drawn, and the tags of BT.709', async () => {
    const painter = squarePainter({
      width,
      height,
      frameCount: 2,
      squares,
      ...(ground === undefined ? {} : { ground }),
    });
    await renderFilm(painter, scratch.at(name), options);
    const { color_range, ...others } = probeVideo(scratch.at(name));
    expect(others).toMatchObject({ color_space: 'bt709', color_transfer: 'bt709', color_primaries: 'bt709' });
    // ProRes has no place for it (SMPTE RDD 36; the QuickTime File Format's nclc): ffprobe up to 5 says what it is, later ones nothing.
    if (probeVideo(scratch.at(name)).codec_name !== 'prores') expect(color_range).toBe('tv');
    const { pixels, count } = decodeFrames(scratch.at(name));
    expect(count).toBe(2);
    patches.forEach((patch, index) => {
      // The middle of the patch, in the last frame: the encoder's blocks reach over the edges.
      const at = ((height + 8) * width + index * patchSide + 8) * 4;
      const off = patch.map((level, channel) => Math.abs(level - pixels[at + channel]!));
      expect(Math.max(...off), `${patch} came back as ${pixels.subarray(at, at + 3)}`).toBeLessThanOrEqual(most);
    });
  });
});

describe('a key colour', () => {
  it('lies under every frame, and an overlay becomes an .mp4', async () => {
    const painter = squarePainter({
      width: 64,
      height: 32,
      squares: () => [{ left: 32, top: 0, width: 32, height: 32, colour: [255, 255, 255, 128] }],
    });
    await renderFilm(painter, scratch.at('keyed.mp4'), { key: '#00b140' });
    const { pixels } = decodeFrames(scratch.at('keyed.mp4'));
    const at = (x: number): readonly number[] => [...pixels.subarray((16 * 64 + x) * 4, (16 * 64 + x) * 4 + 3)];
    near(at(8), [0, 177, 64]);
    near(at(56), [128, 216, 160]); // Half white, half the key.
  });
});

describe.each([
  { name: 'lossless.mov', lossless: true },
  { name: 'png.mov', png: true },
])('$name', ({ name, ...options }) => {
  it('keeps RGB as it is, to the last bit', async () => {
    const painter = squarePainter({ width, height, frameCount: 2, squares });
    await renderFilm(painter, scratch.at(name), options);
    const { pixels } = decodeFrames(scratch.at(name));
    patches.forEach((patch, index) => {
      const at = index * patchSide * 4;
      expect([...pixels.subarray(at, at + 4)]).toEqual([...patch, 255]);
    });
  });
});

function near(found: readonly number[], wanted: readonly number[]): void {
  const off = wanted.map((level, channel) => Math.abs(level - found[channel]!));
  expect(Math.max(...off), `${found} in place of ${wanted}`).toBeLessThanOrEqual(4);
}
