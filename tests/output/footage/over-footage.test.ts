/**
 * A film over a recording: which moment of it is shown on which frame, where the film lies on it and where it does not,
 * and which recordings are refused. Recordings are made by ffmpeg's own sources; its decoders look at the result.
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../../src/output/render.ts';
import { fraction, zero } from '../../../src/scene/fraction.ts';
import { decodeFrames, ffmpeg, probeVideo, scratchFolder } from '../outside.ts';
import { type Square, squarePainter } from '../square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const [width, height] = [96, 64];
const size = `${width}x${height}`;
const rate = fraction(25n);

describe('a recording of no fixed rate', () => {
  /** When its pictures come, in milliseconds; picture n has luma 20 + 20 n. For four seconds nothing happens. */
  const times = [0, 90, 130, 500, 2000, 6000, 6033, 6700];
  beforeAll(() => {
    const at = times.map((time, index) => `eq(N,${index})*${time}`).join('+');
    const source = `color=black:s=${size}:r=25,format=yuv420p,geq=lum='20+20*N':cb=128:cr=128,settb=1/1000,setpts='${at}'`;
    const words = ['-f', 'lavfi', '-i', source, '-frames:v', String(times.length), '-colorspace', 'bt709'];
    ffmpeg([...words, '-c:v', 'libx264', '-qp', '4', '-g', '4', '-enc_time_base', '1/1000', scratch.at('screen.mkv')]);
    // By itself ffmpeg 4 gives such an .mp4 an edit list that ends before its last picture.
    ffmpeg(['-i', scratch.at('screen.mkv'), '-c', 'copy', scratch.at('screen.mp4')]);
  });

  it.each([
    { name: 'screen.mp4', start: 0, frameCount: 175 },
    { name: 'screen.mkv', start: 4, frameCount: 60 },
    { name: 'screen.mp4', start: 5, frameCount: 30 },
    { name: 'screen.mp4', start: 2, frameCount: 60 }, // To its end nothing happens.
  ])('is shown by its times: $name from $start s', async ({ name, start, frameCount }) => {
    const painter = squarePainter({ width, height, rate, frameCount });
    const footage = { file: scratch.at(name), start: fraction(BigInt(start)) };
    await renderFilm(painter, scratch.at('shown.mp4'), { footage });
    const shown = levels(scratch.at('shown.mp4'), 4, 4);
    // The nearest frame to a picture's time is its first, halves up: as everywhere.
    const firsts = times.map((time) => Math.round(((time - start * 1000) * 25) / 1000));
    for (let frame = 0; frame < frameCount; frame++) {
      const picture = firsts.findLastIndex((first) => first <= frame);
      expect(Math.abs(shown[frame]! - greyOf(20 + 20 * picture)), `frame ${frame}`).toBeLessThan(3);
    }
  });
});

describe('where nothing is drawn', () => {
  beforeAll(() => {
    const source = ['-f', 'lavfi', '-i', `testsrc2=s=240x136:r=25:d=2,noise=alls=12:allf=t`, '-pix_fmt', 'yuv420p'];
    ffmpeg([...source, '-colorspace', 'bt709', '-c:v', 'libx264', '-crf', '12', scratch.at('busy.mp4')]);
    // What a plain transcode by the same encoder makes of it.
    const plain = ['-c:v', 'libx264', '-preset', 'veryfast', '-crf', '16', '-g', '50'];
    ffmpeg(['-i', scratch.at('busy.mp4'), ...plain, scratch.at('plain.mp4')]);
  });
  const footage = { file: scratch.at('busy.mp4'), start: zero };

  it('in the whole film, each picture is that of the transcode', async () => {
    const painter = squarePainter({ width: 240, height: 136, rate, frameCount: 50 });
    await renderFilm(painter, scratch.at('bare.mp4'), { footage });
    expect(md5OfFrames(scratch.at('bare.mp4'))).toEqual(md5OfFrames(scratch.at('plain.mp4')));
  });

  it('on a part of the frame, the picture is as near to the recording as that of the transcode', async () => {
    const squares = (frame: number): readonly Square[] => [
      { left: 20 + (frame % 50), top: 40, width: 60, height: 60, colour: [220, 40, 40, 160] },
    ];
    const painter = squarePainter({ width: 240, height: 136, rate, frameCount: 50, squares });
    await renderFilm(painter, scratch.at('marked.mp4'), { footage });
    const right = 'crop=80:136:160:0';
    const [ours, plain] = ['marked.mp4', 'plain.mp4'].map((name) =>
      noiseAgainst(scratch.at(name), footage.file, right),
    );
    expect(plain).toBeGreaterThan(30); // Both are good copies ...
    expect(Math.abs(ours! - plain!)).toBeLessThan(0.4); // ... and equally good, in decibels.
  });
});

describe('the film', () => {
  beforeAll(() => {
    const grey = `color=0x808080:s=${size}:r=25:d=8`;
    ffmpeg(['-f', 'lavfi', '-i', grey, '-pix_fmt', 'yuv420p', '-c:v', 'libx264', scratch.at('grey.mp4')]);
  });
  const footage = { file: scratch.at('grey.mp4'), start: zero };
  const mark: Square = { left: 16, top: 16, width: 16, height: 16, colour: [255, 255, 255, 255] };

  it('lies on its own frames and on no others', async () => {
    const isOn = (frame: number): boolean => (frame >= 37 && frame < 61) || frame === 120 || frame >= 190;
    const painter = squarePainter({
      width,
      height,
      rate,
      frameCount: 200,
      squares: (frame) => (isOn(frame) ? [mark] : []),
    });
    const result = await renderFilm(painter, scratch.at('on.mp4'), { footage });
    expect(result).toMatchObject({ kind: 'written', frameCount: 200, drawn: 6 });
    const shown = levels(scratch.at('on.mp4'), 24, 24);
    expect(shown.map((level) => level > 200)).toEqual(Array.from({ length: 200 }, (_, frame) => isOn(frame)));
  });

  it('is drawn whole where it reaches for a moment beyond what was looked at', async () => {
    // Eight pictures that each stand for one frame: the fourth alone is far away.
    const squares = (frame: number): readonly Square[] =>
      frame < 40 || frame >= 48 ? [] : [{ ...mark, left: frame === 43 ? 70 : 8 + (frame - 40) }];
    const painter = squarePainter({ width, height, rate, frameCount: 60, squares });
    await renderFilm(painter, scratch.at('far.mp4'), { footage });
    expect(levels(scratch.at('far.mp4'), 78, 24).findIndex((level) => level > 200)).toBe(43);
    expect(probeVideo(scratch.at('far.mp4')).nb_read_frames).toBe('60');
  });

  it('that stands for long goes down the pipe once', async () => {
    const painter = squarePainter({
      width,
      height,
      rate: fraction(10000n, 1001n),
      frameCount: 1000,
      squares: () => [mark],
    });
    await renderFilm(painter, scratch.at('long.mp4'), { footage });
    expect(painter.painted.length).toBeLessThanOrEqual(2); // Once to see where it lies, once to draw it.
    const shown = levels(scratch.at('long.mp4'), 24, 24);
    expect(shown).toHaveLength(1000);
    expect(Math.min(...shown)).toBeGreaterThan(245);
  });
});

describe('a recording that is refused', () => {
  const painter = squarePainter({ width, height, rate, frameCount: 250 });
  const tone = ['-f', 'lavfi', '-i', 'sine=duration=12'];
  const picture = ['-f', 'lavfi', '-i', 'testsrc2=s=160x90:r=25:d=12'];
  const h264 = ['-pix_fmt', 'yuv420p', '-c:v', 'libx264', '-preset', 'ultrafast', '-c:a', 'aac'];
  beforeAll(() => {
    ffmpeg([...picture, ...tone, ...h264, '-movflags', '+faststart', scratch.at('head-first.mp4')]);
    ffmpeg(['-i', scratch.at('head-first.mp4'), '-c', 'copy', scratch.at('head-last.mp4')]);
    ffmpeg(['-i', scratch.at('head-first.mp4'), '-c', 'copy', scratch.at('stream.mkv')]);
    for (const [from, to] of [
      ['head-first.mp4', 'cut-first.mp4'],
      ['head-last.mp4', 'cut-last.mp4'],
      ['stream.mkv', 'cut.mkv'],
    ] as const) {
      const whole = readFileSync(scratch.at(from));
      writeFileSync(scratch.at(to), whole.subarray(0, Math.floor(statSync(scratch.at(from)).size * 0.6)));
    }
    for (const transfer of ['smpte2084', 'arib-std-b67']) {
      // ffmpeg 4 goes by the options, 7.1 by the filter.
      const tags = ['-color_trc', transfer, '-color_primaries', 'bt2020', '-colorspace', 'bt2020nc'];
      const filter = ['-vf', `setparams=color_trc=${transfer}:color_primaries=bt2020:colorspace=bt2020nc`];
      ffmpeg([...picture, '-t', '0.2', ...filter, ...h264, ...tags, scratch.at(`${transfer}.mp4`)]);
    }
  });

  it.each([
    [
      'cut-first.mp4',
      /^the footage cut-first\.mp4 is cut off: it should last 0:12\.\d\d, and ends at 0:0[67]\.\d\d; copy or record it again, or give the video a `length` that ends before$/,
    ],
    [
      'cut.mkv',
      /^the footage cut\.mkv is cut off: it should last 0:12\.\d\d, and ends at 0:0[67]\.\d\d; copy or record it again, /,
    ],
    [
      'cut-last.mp4',
      /^the footage: cut-last\.mp4 is cut off: its end is missing, and with it the list of its pictures; copy or record it again$/,
    ],
    [
      'smpte2084.mp4',
      /^the footage smpte2084\.mp4 has a high dynamic range \(PQ\), and the video is BT\.709, which does not: convert the footage to BT\.709 first$/,
    ],
    ['arib-std-b67.mp4', /has a high dynamic range \(HLG\)/],
  ])('%s', async (name, message) => {
    const result = await renderFilm(painter, scratch.at('refused.mp4'), {
      footage: { file: scratch.at(name), start: zero },
    });
    expect(result.kind).toBe('refused');
    expect(result.kind === 'refused' && result.message).toMatch(message);
    expect(scratch.list()).not.toContain('refused.mp4');
  });

  it('but not if what is missing is not needed', async () => {
    const short = squarePainter({ width, height, rate, frameCount: 100 });
    const footage = { file: scratch.at('cut-first.mp4'), start: fraction(1n) };
    expect(await renderFilm(short, scratch.at('enough.mp4'), { footage })).toMatchObject({ kind: 'written' });
  });
});

/** As BT.709-6 gives a luma back in full range. */
function greyOf(luma: number): number {
  return ((luma - 16) * 255) / 219;
}

/** The grey of one pixel in every frame. */
function levels(file: string, x: number, y: number): readonly number[] {
  const { pixels, width: wide, height: high, count } = decodeFrames(file);
  return Array.from({ length: count }, (_, frame) => {
    const at = ((frame * high + y) * wide + x) * 4;
    return (pixels[at]! + pixels[at + 1]! + pixels[at + 2]!) / 3;
  });
}

function md5OfFrames(file: string): readonly string[] {
  const lines = ffmpeg(['-i', file, '-map', '0:v', '-f', 'framemd5', '-']).toString().split('\n');
  return lines.filter((line) => /^\d/.test(line)).map((line) => line.split(',').at(-1)!.trim());
}

/** The peak signal-to-noise ratio of a part of both pictures, in decibels, by ffmpeg's own `psnr`. */
function noiseAgainst(file: string, original: string, part: string): number {
  const graph = `[0:v]${part}[a];[1:v]${part}[b];[a][b]psnr`;
  const words = ['-hide_banner', '-i', file, '-i', original, '-filter_complex', graph, '-f', 'null', '-'];
  const said = execFileSync('sh', ['-c', 'exec ffmpeg "$@" 2>&1', 'sh', ...words], { encoding: 'utf8' });
  return Number(/average:([\d.]+)/.exec(said)?.[1]);
}
