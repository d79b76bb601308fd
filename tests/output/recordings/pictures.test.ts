import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { greyPictures, rgbPictures, type Sampling } from '../../../src/output/recordings/pictures.ts';
import { openRecording, type Recording } from '../../../src/output/recordings/recording.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'proofreel-pictures-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A film whose picture n is grey of level 16 + 4 n (in limited range), at 30000/1001 frames a second. */
function film(name: string, filter = 'null'): string {
  const file = join(folder, name);
  const source = `color=black:s=64x48:r=30000/1001:d=2,geq=lum='16+4*mod(N\\,50)':cb=128:cr=128,${filter}`;
  const encoder = ['-c:v', 'libx264', '-qp', '0', '-g', '12', '-pix_fmt', 'yuv420p', '-vsync', 'vfr'];
  execFileSync('ffmpeg', ['-v', 'error', '-f', 'lavfi', '-i', source, ...encoder, '-y', file]);
  return file;
}

async function opened(file: string): Promise<Recording> {
  const found = await openRecording(file);
  if (found.kind === 'refused') throw new Error(found.message);
  return found.recording;
}

async function read(recording: Recording, sampling: Sampling) {
  const all: { readonly seconds: number; readonly level: number }[] = [];
  for await (const { seconds, picture } of greyPictures(recording, sampling))
    all.push({ seconds, level: picture.levels[picture.width * 10 + 10]! });
  return all;
}

it('every picture has its own time, to the tick', async () => {
  const all = await read(await opened(film('even.mp4')), {});
  expect(all.length).toBe(60);
  for (const [index, { seconds }] of all.entries()) expect(seconds).toBeCloseTo((index * 1001) / 30000, 9);
  expect(all[1]!.level).toBeGreaterThan(all[0]!.level);
});

it('times and pictures are the same wherever reading begins', async () => {
  const recording = await opened(film('even.mp4'));
  const all = await read(recording, {});
  for (const first of [0, 1, 13, 59]) {
    const from = all[first]!.seconds;
    expect(await read(recording, { from, until: from + 0.1 })).toEqual(
      all.filter(({ seconds }) => seconds >= from && seconds < from + 0.1),
    );
  }
});

it('pictures at no fixed rate keep their times', async () => {
  const all = await read(await opened(film('uneven.mkv', "select='not(between(n,5,30))*not(eq(n,40))'")), {});
  expect(all.map(({ seconds }) => Math.round((seconds * 30000) / 1001)).slice(3, 16)).toEqual([
    3, 4, 31, 32, 33, 34, 35, 36, 37, 38, 39, 41, 42,
  ]);
});

it('now and then a picture, and smaller', async () => {
  const recording = await opened(film('even.mp4'));
  const all = await read(recording, { every: 0.5, size: { width: 32, height: 24 } });
  expect(all.map(({ seconds }) => Math.round((seconds * 30000) / 1001))).toEqual([0, 15, 30, 45]);
});

it('colours, and one picture for a still', async () => {
  const file = join(folder, 'red.png');
  execFileSync('ffmpeg', ['-v', 'error', '-f', 'lavfi', '-i', 'color=0xc02040:s=40x30', '-frames:v', '1', '-y', file]);
  const recording = await opened(file);
  expect(recording.isStill).toBe(true);
  const pixels: number[][] = [];
  for await (const { picture } of rgbPictures(recording, {})) pixels.push([...picture.rgb.slice(300, 303)]);
  expect(pixels).toHaveLength(1);
  for (const [index, level] of [0xc0, 0x20, 0x40].entries())
    expect(Math.abs(pixels[0]![index]! - level)).toBeLessThan(3);
});

it('ends the reading when nobody asks for more, or at a signal', async () => {
  const recording = await opened(film('even.mp4'));
  for await (const { seconds } of greyPictures(recording, {})) if (seconds > 0.3) break;
  const controller = new AbortController();
  const reading = async () => {
    for await (const { seconds } of greyPictures(recording, {}, controller.signal))
      if (seconds > 0.3) controller.abort(new Error('stopped'));
  };
  await expect(reading()).rejects.toThrow('stopped');
});

it.each([
  ['tone.wav', ['-f', 'lavfi', '-i', 'sine=d=1'], 'tone.wav holds sound alone; name a recording that shows the board'],
  [
    'bright.mp4',
    [
      '-f',
      'lavfi',
      '-i',
      'color=gray:s=64x48:d=1',
      '-c:v',
      'libx264',
      '-color_trc',
      'smpte2084',
      '-pix_fmt',
      'yuv420p',
    ],
    'bright.mp4 has a high dynamic range (PQ), in which levels mean something else; convert it to BT.709 first',
  ],
] as const)('%s is refused', async (name, words, message) => {
  const file = join(folder, name);
  execFileSync('ffmpeg', ['-v', 'error', ...words, '-y', file]);
  expect(await openRecording(file)).toEqual({ kind: 'refused', message });
});
