/**
 * What is read from files of footage and sound. The files are made by ffmpeg from its own sources.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { countFrames, probeMedia } from '../../../src/output/ffmpeg/media.ts';
import { fraction } from '../../../src/scene/fraction.ts';
import { ffmpeg, scratchFolder } from '../outside.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const picture = (rate: string, size = '64x48') => ['-f', 'lavfi', '-i', `testsrc2=s=${size}:r=${rate}`];
const tone = ['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=44100:duration=1.5'];
const h264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

const files = [
  {
    name: 'ntsc.mp4',
    words: [...picture('30000/1001'), '-frames:v', '45', ...h264, '-colorspace', 'bt709'],
    media: {
      durationSeconds: fraction(45n * 1001n, 30000n),
      picture: { width: 64, height: 48, rate: fraction(30000n, 1001n), matrix: 'bt709' },
      hasAudio: false,
    },
  },
  {
    name: 'sound.mov',
    words: [...picture('25'), ...tone, '-frames:v', '30', ...h264],
    media: {
      durationSeconds: fraction(30n, 25n),
      picture: { width: 64, height: 48, rate: fraction(25n), matrix: undefined },
      hasAudio: true,
    },
  },
  {
    name: 'wide-pixels.mp4',
    words: [...picture('25'), '-frames:v', '5', '-vf', 'setsar=4/3', ...h264],
    media: { picture: { width: 85, height: 48 } },
  },
  {
    name: 'web.webm',
    words: [...picture('24'), '-frames:v', '12', '-c:v', 'libvpx-vp9', '-deadline', 'realtime', '-cpu-used', '8'],
    media: {
      durationSeconds: fraction(1n, 2n),
      picture: { width: 64, height: 48, rate: fraction(24n) },
      hasAudio: false,
    },
  },
  { name: 'tone.wav', words: tone, media: { durationSeconds: fraction(3n, 2n), picture: undefined, hasAudio: true } },
  { name: 'tone.flac', words: tone, media: { durationSeconds: fraction(3n, 2n), picture: undefined, hasAudio: true } },
];

it.each(files)('$name', async ({ name, words, media }) => {
  ffmpeg([...words, scratch.at(name)]);
  expect(await probeMedia(scratch.at(name))).toMatchObject({ kind: 'media', ...media });
});

it('a recording that is to be turned is as large as it is seen', async () => {
  ffmpeg([...picture('25'), '-frames:v', '5', ...h264, scratch.at('flat.mp4')]);
  // ISO/IEC 14496-12, 8.3.2: the matrix of a track header is 36 bytes before its end, behind the width and the height.
  const bytes = readFileSync(scratch.at('flat.mp4'));
  const header = bytes.indexOf('tkhd') - 4;
  const matrix = header + bytes.readUInt32BE(header) - 8 - 36;
  [0, 0x10000, 0, -0x10000, 0, 0, 0, 0, 0x40000000].forEach((number, at) => {
    bytes.writeInt32BE(number, matrix + 4 * at);
  });
  writeFileSync(scratch.at('turned.mp4'), bytes);
  expect(await probeMedia(scratch.at('turned.mp4'))).toMatchObject({ picture: { width: 48, height: 64 } });
});

it('a cover picture is not footage', async () => {
  ffmpeg([...picture('25', '32x32'), '-frames:v', '1', scratch.at('cover.png')]);
  const words = ['-i', scratch.at('cover.png'), '-map', '0:a', '-map', '1:v', '-disposition:v:0', 'attached_pic'];
  ffmpeg([...tone, ...words, '-c:a', 'aac', '-c:v', 'copy', scratch.at('song.m4a')]);
  expect(await probeMedia(scratch.at('song.m4a'))).toMatchObject({ picture: undefined, hasAudio: true });
});

describe('what cannot be read', () => {
  it('is said with the name', async () => {
    writeFileSync(scratch.at('words.mp4'), 'words');
    expect(await probeMedia(scratch.at('words.mp4'))).toEqual({
      kind: 'unreadable',
      message: 'words.mp4 cannot be read as a video or a sound',
    });
    expect(await probeMedia('no/such.mp4')).toEqual({ kind: 'unreadable', message: 'there is no file no/such.mp4' });
  });

  it('holds no frames', async () => {
    expect(await countFrames(scratch.at('words.mp4'))).toBe(0);
  });
});
