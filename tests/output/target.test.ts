/**
 * What a name asks for, and what is refused before any work: whole messages, for they are what a user has to act on.
 */
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { renderFilm } from '../../src/output/render.ts';
import { type TargetWishes, targetOf } from '../../src/output/target.ts';
import { zero } from '../../src/scene/fraction.ts';
import { scratchFolder } from './outside.ts';
import { squarePainter } from './square-painter.ts';

const scratch = scratchFolder();
afterAll(scratch.remove);

const overlay = squarePainter({});
const opaque = squarePainter({ ground: [0, 0, 0] });
const plain = { lossless: false, png: false, key: undefined, footage: false };

describe('a name', () => {
  it.each([
    ['/v/lesson.mp4', { kind: 'video', file: '/v/lesson.mp4', container: 'mp4', codec: 'h264' }],
    ['/v/LESSON.MP4', { kind: 'video', file: '/v/LESSON.MP4', container: 'mp4', codec: 'h264' }],
    ['/v/lesson.mov', { kind: 'video', file: '/v/lesson.mov', container: 'mov', codec: 'prores' }],
    ['/v/lesson.webm', { kind: 'video', file: '/v/lesson.webm', container: 'webm', codec: 'vp9' }],
    ['/v/frames/', { kind: 'frames', folder: '/v/frames' }],
    ['/v/frames', { kind: 'frames', folder: '/v/frames' }],
    ['/v/take.2/', { kind: 'frames', folder: '/v/take.2' }],
  ])('%s', (name, target) => {
    expect(targetOf(name, opaque, plain)).toEqual(target);
  });

  it('is a lossless .mov where that is wished', () => {
    expect(targetOf('/v/a.mov', overlay, { ...plain, lossless: true })).toMatchObject({ codec: 'qtrle' });
    expect(targetOf('/v/a.mov', overlay, { ...plain, png: true })).toMatchObject({ codec: 'png' });
    expect(targetOf('/v/a.mov', overlay, { ...plain, png: true, lossless: true })).toMatchObject({ codec: 'png' });
    expect(targetOf('/v/a/', overlay, { ...plain, png: true })).toMatchObject({ kind: 'frames' });
  });

  it('holds the codec that is asked for', () => {
    expect(targetOf('/v/a.mp4', opaque, { ...plain, codec: 'av1' })).toMatchObject({ container: 'mp4', codec: 'av1' });
    expect(targetOf('/v/a.webm', opaque, { ...plain, codec: 'av1' })).toMatchObject({
      container: 'webm',
      codec: 'av1',
    });
    expect(targetOf('/v/a.mov', overlay, { ...plain, codec: 'hevc', key: '#00b140' })).toMatchObject({ codec: 'hevc' });
  });

  it('of a folder that is there may have a dot in it', () => {
    mkdirSync(scratch.at('take.3'));
    expect(targetOf(scratch.at('take.3'), overlay, plain)).toEqual({ kind: 'frames', folder: scratch.at('take.3') });
  });
});

describe('refused', () => {
  const refusals = [
    {
      name: 'a.mp4',
      painter: overlay,
      wishes: plain,
      message:
        "an .mp4 carries no transparency, and these frames are an overlay: give the footage that it lies over, or a key colour (--key '#00b140'), " +
        'or write a .mov, a .webm or a folder of PNG frames (a/), which carry it',
    },
    {
      name: 'a.avi',
      painter: opaque,
      wishes: plain,
      message:
        "'a.avi' ends in .avi, which cannot be written; name a .mp4, .mov or .webm, or a folder for PNG frames (frames/)",
    },
    {
      name: '',
      painter: opaque,
      wishes: plain,
      message: 'an empty name; name a .mp4, .mov or .webm, or a folder for PNG frames (frames/)',
    },
    {
      name: 'a.mp4',
      painter: overlay,
      wishes: { ...plain, key: 'green' },
      message: "the key colour 'green' is not a colour of six hexadecimal digits, such as '#00b140'",
    },
    {
      name: 'a.webm',
      painter: overlay,
      wishes: { ...plain, lossless: true },
      message:
        'a .webm loses a little of each frame; for a lossless picture write a .mov, or a folder of PNG frames (a/)',
    },
    {
      name: 'a.mp4',
      painter: opaque,
      wishes: { ...plain, png: true },
      message:
        '--png is for a .mov, and a .mp4 cannot contain PNG pictures; write a .mov, or a folder of PNG frames (a/)',
    },
    {
      name: 'a.mp4',
      painter: squarePainter({ ground: [0, 0, 0], width: 65, height: 48 }),
      wishes: plain,
      message:
        'an .mp4 needs an even width and height, and the frames are 65x48: make them 66x48, or write a .mov, a .webm or a folder of PNG frames',
    },
    {
      name: 'a.mp4',
      painter: opaque,
      wishes: { ...plain, codec: 'hevc' },
      message: 'a .mp4 is not written with HEVC; name a .mov',
    },
    {
      name: 'a.mov',
      painter: opaque,
      wishes: { ...plain, codec: 'av1' },
      message: 'a .mov is not written with AV1; name a .mp4 or .webm',
    },
    {
      name: 'a/',
      painter: opaque,
      wishes: { ...plain, codec: 'av1' },
      message: 'AV1 is for a video, and this is a folder of PNG frames; name a .mp4 or .webm',
    },
    {
      name: 'a.webm',
      painter: overlay,
      wishes: { ...plain, codec: 'av1' },
      message:
        "AV1 carries no transparency, and these frames are an overlay: give a key colour (--key '#00b140'), or leave out --codec av1",
    },
    {
      name: 'a.mp4',
      painter: overlay,
      wishes: { ...plain, codec: 'av1', footage: true },
      message: 'a video over footage is made only with H.264; leave out --codec av1',
    },
    {
      name: 'a.mov',
      painter: squarePainter({ ground: [0, 0, 0], width: 65, height: 48 }),
      wishes: { ...plain, codec: 'hevc' },
      message:
        'HEVC needs an even width and height, and the frames are 65x48: make them 66x48, or leave out --codec hevc',
    },
    {
      name: 'a.mov',
      painter: opaque,
      wishes: { ...plain, codec: 'hevc', png: true },
      message: '--codec hevc and --png ask for two picture formats; give only one of them',
    },
  ] satisfies readonly { name: string; painter: typeof opaque; wishes: TargetWishes; message: string }[];
  it.each(refusals)('$message', ({ name, painter, wishes, message }) => {
    expect(targetOf(name, painter, wishes)).toEqual({ kind: 'refused', message });
  });

  it('what lies where no file can be', () => {
    writeFileSync(scratch.at('words'), '');
    mkdirSync(scratch.at('folder.mp4'));
    expect(targetOf(scratch.at('words/deep/a.mp4'), opaque, plain)).toEqual({
      kind: 'refused',
      message: "'words' is a file, so nothing can be written into it",
    });
    expect(targetOf(scratch.at('folder.mp4'), opaque, plain)).toEqual({
      kind: 'refused',
      message: "'folder.mp4' is a folder; give the name of a file",
    });
  });

  it('not: an overlay as .mp4 over footage or a key colour', () => {
    expect(targetOf('a.mp4', overlay, { ...plain, footage: true }).kind).toBe('video');
    expect(targetOf('a.mp4', overlay, { ...plain, key: '#00B140' }).kind).toBe('video');
  });
});

describe('a folder of frames', () => {
  it('takes the place of older frames as a whole', async () => {
    await renderFilm(squarePainter({ frameCount: 9 }), scratch.at('again'));
    expect(await renderFilm(squarePainter({ frameCount: 2 }), scratch.at('again'))).toMatchObject({ kind: 'written' });
    expect(scratch.list('again')).toEqual(['000000.png', '000001.png']);
  });

  it('does not take the place of anything else', async () => {
    mkdirSync(scratch.at('notes'));
    writeFileSync(scratch.at('notes/script.txt'), 'words');
    expect(await renderFilm(overlay, scratch.at('notes'))).toEqual({
      kind: 'refused',
      message:
        "the folder 'notes' contains 'script.txt', which is not a frame; frames replace a folder as a whole, so give a new or an empty one",
    });
    expect(scratch.list('notes')).toEqual(['script.txt']);
  });

  it('does not take the place of a file', async () => {
    writeFileSync(scratch.at('file'), 'words');
    expect(await renderFilm(overlay, scratch.at('file'))).toEqual({
      kind: 'refused',
      message: "'file' is a file; give the name of a new folder, or a name that ends in .mp4, .mov or .webm",
    });
  });
});

describe('what the video is made from', () => {
  const recording = scratch.at('recording.mp4');
  const talk = scratch.at('talk.mov');
  const link = scratch.at('link.mp4');
  writeFileSync(recording, 'a recording');
  writeFileSync(talk, 'a talk');
  symlinkSync(recording, link);

  it.each([
    [recording, 'footage', { footage: { file: recording, start: zero } }],
    [link, 'footage', { footage: { file: recording, start: zero } }],
    [talk, 'audio', { audio: talk }],
  ])('is never written over: %s', async (name, what, options) => {
    expect(await renderFilm(opaque, name, options)).toEqual({
      kind: 'refused',
      message: `'${basename(name)}' is the scene's own ${what}, which would be overwritten; give another name`,
    });
    expect(readFileSync(recording, 'utf8')).toBe('a recording');
    expect(readFileSync(talk, 'utf8')).toBe('a talk');
  });
});
