/**
 * Footage under the frames and sound under the video, made by ffmpeg's own sources and looked at through its decoders.
 *
 * The footage is a clock: its frame n is a grey of its own, so that a decoded level says which moment is shown.
 */
import { writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../../src/output/render.ts';
import { type Fraction, fraction } from '../../../src/scene/fraction.ts';
import { decodeFrames, decodeSound, ffmpeg, probeSound, probeVideo, scratchFolder, soundRate } from '../outside.ts';
import { squarePainter } from '../square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const [width, height] = [64, 48];
const rate = fraction(30000n, 1001n);
const footageFrames = 75;

/** The luma of footage frame n: 20, 22, 24, ... */
const lumaAt = (frame: number): number => 20 + 2 * frame;
/** As BT.709-6 gives it back in full range: (Y - 16) * 255 / 219. */
const greyAt = (frame: number): number => ((lumaAt(frame) - 16) * 255) / 219;

/** ffmpeg 4 tells an encoder by an option alone, and 7 converts what is not tagged as the option says. */
const tagged = 'setparams=colorspace=bt709';

beforeAll(() => {
  const clock = `color=black:s=${width}x${height}:r=30000/1001:d=3,format=yuv420p,geq=lum='20+2*N':cb=128:cr=128,${tagged}`;
  const tone = 'sine=frequency=440:sample_rate=48000:duration=3';
  const words = ['-f', 'lavfi', '-i', clock, '-f', 'lavfi', '-i', tone, '-t', '2.5025', '-colorspace', 'bt709'];
  ffmpeg([...words, '-c:v', 'libx264', '-qp', '4', '-g', '12', '-c:a', 'aac', scratch.at('clock.mp4')]);
  ffmpeg(['-i', scratch.at('clock.mp4'), '-an', '-c:v', 'copy', scratch.at('silent.mp4')]);
  ffmpeg(['-f', 'lavfi', '-i', 'sine=frequency=1000:sample_rate=44100:duration=4', scratch.at('long.flac')]);
  ffmpeg(['-f', 'lavfi', '-i', 'sine=frequency=1000:sample_rate=44100:duration=0.4', scratch.at('short.wav')]);
});

const overlay = (frameCount: number) =>
  squarePainter({
    width,
    height,
    rate,
    frameCount,
    squares: () => [{ left: 0, top: 0, width: 16, height: 16, colour: [0, 177, 64, 255] }],
  });

describe('footage', () => {
  const starts: readonly { name: string; start: Fraction; first: number }[] = [
    { name: 'from its beginning', start: fraction(0n), first: 0 },
    { name: 'from frame 7, at 7 * 1001/30000 s', start: fraction(7n * 1001n, 30000n), first: 7 },
    { name: 'from 1.5 s, between frames 44 and 45 and nearer to 45', start: fraction(3n, 2n), first: 45 },
    { name: 'from frame 68, past two seconds', start: fraction(68n * 1001n, 30000n), first: 68 },
  ];
  it.each(starts)('$name', async ({ start, first }) => {
    const file = scratch.at('under.mp4');
    const frameCount = 12;
    const result = await renderFilm(overlay(frameCount), file, { footage: { file: scratch.at('clock.mp4'), start } });
    expect(result).toMatchObject({ kind: 'written', frameCount });
    expect(probeVideo(file)).toMatchObject({ nb_read_frames: '12', r_frame_rate: '30000/1001', color_space: 'bt709' });
    const { pixels } = decodeFrames(file);
    for (let frame = 0; frame < frameCount; frame++) {
      // Where it ends, its last picture is held.
      const shown = Math.min(first + frame, footageFrames - 1);
      expect(Math.abs(levelAt(pixels, frame, 40, 30) - greyAt(shown)), `frame ${frame}`).toBeLessThan(1.2);
    }
    // And the mark lies over it, in its own colour.
    expect(Math.abs(pixels[(8 * width + 8) * 4 + 1]! - 177)).toBeLessThan(6);
  });

  it('says that its last picture is held', async () => {
    const footage = { file: scratch.at('clock.mp4'), start: fraction(2n) };
    expect(await renderFilm(overlay(30), scratch.at('held.mp4'), { footage })).toMatchObject({
      notices: ['the footage clock.mp4 ends before the video does: its last picture is held'],
    });
  });

  it("of another rate is shown at the video's: frame n at n/rate", async () => {
    const painter = squarePainter({ width, height, rate: fraction(60n), frameCount: 30 });
    await renderFilm(painter, scratch.at('sixty.mp4'), {
      footage: { file: scratch.at('clock.mp4'), start: fraction(0n) },
    });
    const { pixels, count } = decodeFrames(scratch.at('sixty.mp4'));
    expect(count).toBe(30);
    for (const frame of [0, 10, 20, 28]) {
      expect(Math.abs(levelAt(pixels, frame, 40, 30) - greyAt(frame / 2))).toBeLessThan(3.6); // Within a frame of it.
    }
  });

  it('of another size is scaled to the frame', async () => {
    const painter = squarePainter({ width: 32, height: 24, rate, frameCount: 2 });
    const footage = { file: scratch.at('silent.mp4'), start: fraction(1001n, 30000n) };
    expect(await renderFilm(painter, scratch.at('scaled.mp4'), { footage })).toMatchObject({ notices: [] });
    expect(probeVideo(scratch.at('scaled.mp4'))).toMatchObject({ width: 32, height: 24 });
    expect(Math.abs(decodeFrames(scratch.at('scaled.mp4')).pixels[0]! - greyAt(1))).toBeLessThan(2);
  });

  it('of a different shape keeps its shape between black bars, and says so', async () => {
    const painter = squarePainter({ width: 96, height: 48, rate, frameCount: 2 });
    const footage = { file: scratch.at('silent.mp4'), start: fraction(2n) };
    expect(await renderFilm(painter, scratch.at('bars.mp4'), { footage })).toMatchObject({
      notices: [
        "the footage silent.mp4 is 64x48, a different shape from the frame's 96x48: the rest of the frame is black",
      ],
    });
    const { pixels } = decodeFrames(scratch.at('bars.mp4'));
    const row = (x: number): number => pixels[(24 * 96 + x) * 4]!;
    expect([row(2), row(13), row(82), row(93)].every((level) => level < 12)).toBe(true);
    expect([row(19), row(48), row(76)].every((level) => Math.abs(level - greyAt(60)) < 8)).toBe(true);
  });

  it('is not touched where nothing is drawn', async () => {
    // BT.709 in, BT.709 out: a level that the encoder could keep exactly is kept.
    const painter = squarePainter({ width, height, rate, frameCount: 5 });
    await renderFilm(painter, scratch.at('bare.mp4'), {
      footage: { file: scratch.at('silent.mp4'), start: fraction(0n) },
    });
    expect(planesOf(scratch.at('bare.mp4')).map(([luma]) => luma)).toEqual([0, 1, 2, 3, 4].map(lumaAt));
  });

  // #00b140 by ITU-R BT.601-7, 2.5.1 (Y = 0.299 R + 0.587 G + 0.114 B; divisors 1.772 and 1.402), and what it is in BT.709.
  const green = [129, 96, 55];
  it.each([
    { name: 'BT.601, tagged', words: ['smpte170m', 'tv', 'yuv420p'], tag: 'smpte170m', size: '64x48' },
    { name: 'BT.601, untagged and small', words: ['smpte170m', 'tv', 'yuv420p'], tag: undefined, size: '64x48' },
    { name: 'BT.709, untagged and large', words: ['bt709', 'tv', 'yuv420p'], tag: undefined, size: '1280x720' },
    { name: 'BT.709, full range', words: ['bt709', 'pc', 'yuvj420p'], tag: 'bt709', size: '64x48' },
  ])('in other colours is converted: $name', async ({ words: [matrix, range, format], tag, size }) => {
    const source = ['-f', 'lavfi', '-i', `color=0x00b140:s=${size}:d=0.1:r=25,format=rgb24`];
    const tags = tag === undefined ? [] : ['-colorspace', tag];
    const filter = `scale=out_color_matrix=${matrix}:out_range=${range},format=${format},setparams=colorspace=${tag ?? 'unknown'}`;
    ffmpeg([...source, '-vf', filter, ...tags, '-c:v', 'libx264', '-qp', '2', scratch.at('colour.mp4')]);
    const [wide, high] = size.split('x').map(Number);
    const painter = squarePainter({ width: wide!, height: high!, frameCount: 2 });
    await renderFilm(painter, scratch.at('converted.mp4'), {
      footage: { file: scratch.at('colour.mp4'), start: fraction(0n) },
    });
    const found = planesOf(scratch.at('converted.mp4'))[1]!;
    expect(
      Math.max(...found.map((value, plane) => Math.abs(value - green[plane]!))),
      String(found),
    ).toBeLessThanOrEqual(1);
  });

  it('is left out where the file carries transparency, and the result says so', async () => {
    const footage = { file: scratch.at('clock.mp4'), start: fraction(0n) };
    const result = await renderFilm(overlay(2), scratch.at('kept.mov'), { footage });
    expect(result).toMatchObject({ notices: ['a .mov keeps its transparency: the footage is not in it'] });
    expect(decodeFrames(scratch.at('kept.mov')).pixels[(30 * width + 40) * 4 + 3]).toBe(0);
  });

  it('under opaque frames gives its sound', async () => {
    const painter = squarePainter({ width, height, rate, frameCount: 15, ground: [200, 200, 200] });
    await renderFilm(painter, scratch.at('board.mp4'), {
      footage: { file: scratch.at('clock.mp4'), start: fraction(0n) },
    });
    expect(probeSound(scratch.at('board.mp4'))).toMatchObject({ codec: 'aac' });
    expect(Math.abs(levelAt(decodeFrames(scratch.at('board.mp4')).pixels, 0, 40, 30) - 200)).toBeLessThan(2);
  });
});

describe('sound', () => {
  const seconds = (30 * 1001) / 30000;
  /** AAC and Opus come in packets of 1024 and 960 samples; the last may reach over the end (ISO/IEC 14496-3, RFC 6716). */
  const packet = 1024 / 44100;

  it.each([
    ['film.mp4', 'aac'],
    ['film.mov', 'pcm_s16le'],
    ['film.webm', 'opus'],
  ])('longer than the video is cut at its end: %s', async (name, codec) => {
    const painter = squarePainter({ width, height, rate, frameCount: 30, ground: [0, 0, 0] });
    await renderFilm(painter, scratch.at(name), { audio: scratch.at('long.flac') });
    const sound = probeSound(scratch.at(name));
    expect(sound?.codec).toBe(codec);
    expect(sound?.seconds).toBeGreaterThan(seconds - 0.01);
    expect(sound?.seconds).toBeLessThan(seconds + packet);
    expect(probeVideo(scratch.at(name)).nb_read_frames).toBe('30');
  });

  it('shorter than the video leaves every frame in it', async () => {
    const painter = squarePainter({ width, height, rate, frameCount: 30, ground: [0, 0, 0] });
    await renderFilm(painter, scratch.at('quiet.mp4'), { audio: scratch.at('short.wav') });
    expect(probeVideo(scratch.at('quiet.mp4')).nb_read_frames).toBe('30');
    expect(probeSound(scratch.at('quiet.mp4'))?.seconds).toBeLessThan(0.4 + 2 * packet);
  });

  it('of the footage is kept, from its start on', async () => {
    const footage = { file: scratch.at('clock.mp4'), start: fraction(2n) };
    await renderFilm(overlay(30), scratch.at('own.mp4'), { footage });
    const sound = decodeSound(scratch.at('own.mp4'));
    expect(pitch(sound)).toBeCloseTo(440, -1);
    // Half a second of it is left after two.
    expect(sound.length / soundRate).toBeGreaterThan(0.45);
    expect(sound.length / soundRate).toBeLessThan(0.55 + packet);
  });

  it.each([
    { name: 'from the beginning', start: fraction(0n), moment: 1.5 },
    { name: 'from 1.2 s', start: fraction(6n, 5n), moment: 0.3 },
  ])('of the footage stays with its picture: $name', async ({ start, moment }) => {
    // A clap: at 1.5 s the picture turns white and a tone begins.
    const clap = `color=black:s=${width}x${height}:r=30000/1001:d=2,format=yuv420p,geq=lum='if(gte(T,1.5),235,16)':cb=128:cr=128`;
    const tone = "aevalsrc='if(gte(t,1.5),0.5*sin(2*PI*440*t),0)':s=48000:d=2";
    const words = ['-f', 'lavfi', '-i', clap, '-f', 'lavfi', '-i', tone, '-c:v', 'libx264', '-pix_fmt', 'yuv420p'];
    ffmpeg([...words, '-g', '250', '-c:a', 'aac', scratch.at('clap.mp4')]);
    const painter = squarePainter({ width, height, rate, frameCount: Math.ceil((moment + 0.3) * 30) });
    await renderFilm(painter, scratch.at('clapped.mp4'), { footage: { file: scratch.at('clap.mp4'), start } });
    const { pixels, count } = decodeFrames(scratch.at('clapped.mp4'));
    const levels = Array.from({ length: count }, (_, frame) => levelAt(pixels, frame, 40, 30));
    const loud = decodeSound(scratch.at('clapped.mp4')).findIndex((sample) => Math.abs(sample) > 0.2);
    const frameSeconds = 1001 / 30000;
    expect(Math.abs(levels.findIndex((level) => level > 128) * frameSeconds - moment)).toBeLessThan(frameSeconds);
    expect(Math.abs(loud / soundRate - moment)).toBeLessThan(0.005);
  });

  it("of the audio takes the place of the footage's", async () => {
    const footage = { file: scratch.at('clock.mp4'), start: fraction(0n) };
    await renderFilm(overlay(30), scratch.at('other.mp4'), { footage, audio: scratch.at('long.flac') });
    expect(pitch(decodeSound(scratch.at('other.mp4')))).toBeCloseTo(1000, -1);
  });

  it('is not there where neither has one', async () => {
    const footage = { file: scratch.at('silent.mp4'), start: fraction(0n) };
    await renderFilm(overlay(3), scratch.at('none.mp4'), { footage });
    expect(probeSound(scratch.at('none.mp4'))).toBeUndefined();
  });
});

describe('a file that cannot be used is refused, and nothing is written', () => {
  beforeAll(() => writeFileSync(scratch.at('script.txt'), 'words'));
  const start = fraction(0n);
  const wrong = [
    {
      options: { footage: { file: scratch.at('gone.mp4'), start } },
      message: `the footage: there is no file ${scratch.at('gone.mp4')}`,
    },
    {
      options: { footage: { file: scratch.at('script.txt'), start } },
      message: 'the footage: script.txt cannot be read as a video or a sound',
    },
    {
      options: { footage: { file: scratch.at('long.flac'), start } },
      message: 'the footage long.flac contains a sound but no picture',
    },
    {
      options: { footage: { file: scratch.at('clock.mp4'), start: fraction(9n) } },
      message: 'the footage clock.mp4 ends before the moment at which the video begins',
    },
    { options: { key: '#00b140', audio: scratch.at('silent.mp4') }, message: 'the audio silent.mp4 contains no sound' },
  ];
  it.each(wrong)('$message', async ({ options, message }) => {
    expect(await renderFilm(overlay(3), scratch.at('refused.mp4'), options)).toEqual({ kind: 'refused', message });
    expect(scratch.list()).not.toContain('refused.mp4');
  });
});

/** Y, Cb, Cr of the first pixel of each frame, as they are in the file. */
function planesOf(file: string): readonly (readonly number[])[] {
  const { width: wide, height: high } = probeVideo(file);
  const bytes = ffmpeg(['-i', file, '-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-']);
  const area = wide * high;
  const frameBytes = (area * 3) / 2;
  return Array.from({ length: bytes.length / frameBytes }, (_, frame) =>
    [0, area, area + area / 4].map((plane) => bytes[frame * frameBytes + plane]!),
  );
}

/** The mean of the three colours of a pixel. */
function levelAt(pixels: Uint8Array, frame: number, x: number, y: number): number {
  const at = ((frame * height + y) * width + x) * 4;
  return (pixels[at]! + pixels[at + 1]! + pixels[at + 2]!) / 3;
}

/** By the number of times that the wave goes up through zero, away from both ends. */
function pitch(sound: Float32Array): number {
  const middle = sound.subarray(4800, Math.min(sound.length, 4800 + soundRate / 2) - 2400);
  let count = 0;
  for (let index = 1; index < middle.length; index++) if (middle[index - 1]! < 0 && middle[index]! >= 0) count += 1;
  return (count * soundRate) / middle.length;
}
